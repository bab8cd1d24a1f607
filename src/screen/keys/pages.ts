import type { Model } from "../model.ts";
import { tapeRows } from "../tape.ts";
import { whyFirstPage, whyNoUndo } from "../why.ts";
import type { BindingGroup, FocusName } from "./binding.ts";
import { cancel, clear, leaveForm, paging, silent, upAndDown, upAndDownTyping } from "./common.ts";
import { gaugeKeys } from "./gauges.ts";
import { surveyKeys } from "./survey.ts";

function isOnPage2({ focus }: Model): boolean {
  return focus.on === "tape" && tapeRows[focus.cursor]?.page === 2;
}

/** The keys of what stands in the place of the bench: lists and forms. */
export const pageKeys = {
  open: [
    {
      heading: "WHILE CHOOSING A CAR",
      bindings: [
        ...upAndDown,
        { keys: ["enter"], shown: "Enter", command: "accept", footer: "Enter open", help: "open this car" },
        {
          keys: ["T"],
          shown: "T",
          command: "fromTape",
          footer: "T new from a tape",
          help: "a new car from readings with a tape",
        },
        cancel("back", "back to the bench"),
      ],
    },
  ],
  tape: [
    {
      heading: "WHILE TYPING READINGS WITH A TAPE",
      bindings: [
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter next",
          help: "take the reading and go on; at the end of a page, make the car",
        },
        ...silent(upAndDownTyping),
        {
          keys: ["pageDown"],
          shown: "PgDn",
          command: "listDown",
          footer: (model) => (isOnPage2(model) ? "PgDn page 3" : "PgDn page 2"),
          help: "to page 2, arms and travel, for bump steer; from there to page 3, readings between all points",
        },
        {
          keys: ["pageUp"],
          shown: "PgUp",
          command: "listUp",
          footer: "PgUp page 1",
          help: "to page 1",
          off: whyFirstPage,
        },
        {
          keys: ["end"],
          shown: "End",
          command: "listDown",
          footer: "End make it",
          help: "to the line that makes the car",
        },
        {
          keys: ["ctrl+r"],
          shown: "Ctrl-R",
          command: "emptyTape",
          footer: null,
          help: "throw all these readings away, for another car",
        },
        clear,
        leaveForm("bench, readings kept", "to the bench; the readings typed so far are kept, also for next time"),
      ],
    },
  ],
  ...surveyKeys,
  ...gaugeKeys,
  upright: [
    {
      heading: "WHILE MEASURING AN UPRIGHT ON THE BENCH",
      bindings: [
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter next",
          help: "take the measure and go on; on the last line, hang the upright so",
        },
        ...upAndDownTyping,
        clear,
        leaveForm("back, nothing changed", "back to the bench, nothing changed"),
      ],
    },
  ],
  aims: [
    {
      heading: "ON THE LIST OF WHAT TO LOOK FOR AND WHAT MAY MOVE",
      bindings: [
        ...upAndDown,
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter change or add",
          help: "change this line; on a line with +, add another goal or another part that may move",
        },
        {
          keys: ["d", "delete"],
          shown: "d",
          command: "removeAim",
          footer: "d remove",
          help: "remove this goal, or let this part stay where it is",
        },
        {
          keys: ["u"],
          shown: "u",
          command: "undoAim",
          footer: "u undo",
          help: "take back the last change",
          off: whyNoUndo,
        },
        cancel("to the places found", "back to the places that are found"),
      ],
    },
  ],
  aim: [
    {
      heading: "WHILE SAYING WHAT TO LOOK FOR OR WHAT MAY MOVE",
      bindings: [
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter take it",
          help: "take what was typed or chosen, and go on",
        },
        ...upAndDownTyping,
        clear,
        cancel("back, nothing changed", "back to the list, nothing changed"),
      ],
    },
  ],
  parts: [
    {
      heading: "WHILE CHOOSING A FRONT END OR STEERING",
      bindings: [
        ...upAndDown,
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter change to it",
          help: "change the car to it",
        },
        cancel("back", "back to the bench, nothing changed"),
      ],
    },
  ],
  starting: [
    {
      heading: "ON THE LIST OF STARTING VALUES",
      bindings: [
        ...upAndDown,
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter go to it",
          help: "go to this value on the bench, to change it",
        },
        {
          keys: ["x"],
          shown: "x",
          command: "rightAsItIs",
          footer: "x right as it is",
          help: "it is right as it is: take its mark off",
        },
        {
          keys: ["u"],
          shown: "u",
          command: "undo",
          footer: "u undo",
          help: "take back the last change",
          off: whyNoUndo,
        },
        cancel("to the bench", "to the bench; X lists them again"),
      ],
    },
  ],
  help: [
    {
      heading: "ON THE HELP PAGE",
      bindings: [
        ...paging,
        {
          keys: ["escape", "?", "q", "enter", "ctrl+c"],
          shown: "Esc",
          command: "cancel",
          footer: "Esc back",
          help: "back to the bench; so do ?, q and Enter",
        },
      ],
    },
  ],
} as const satisfies Partial<Readonly<Record<FocusName, readonly BindingGroup[]>>>;
