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
  "X: where the line through both joints passes, at the hole's height.",
  "X to o across the car is how far the hole is inboard of the line.",
];
