/** The left wheel, and what its tie-rod hole is measured from: for a sheet, a form and a help, in ASCII and at most 70 columns. */
export const kingPinSketch: readonly string[] = [
  "Left wheel FROM BEHIND               FROM ABOVE, at the hole's height",
  "  ____      o upper joint              ____         front",
  " |    |    /                          |    |          ^",
  " |tyre|   /                           |tyre|    X     |",
  " |    |  X-----o tie-rod hole         |    |    |",
  " |    | /                             |    |    | hole behind the line",
  " |____|o lower joint                  |____|    +---o tie-rod hole",
  "",
  "X: the line through both joints, at the height of the hole; X to o",
  "across is hole inboard of the line. Both joints on a straight edge.",
];
