import type { Model } from "../model.ts";
import { settledOf } from "../sheetState.ts";
import { whyNoPoints, whyNothingNext } from "../why.ts";
import type { BindingGroup, FocusName } from "./binding.ts";
import { clear, leaveForm, paging, silent, upAndDownTyping } from "./common.ts";

function isOneWrong({ sheet }: Model): boolean {
  return sheet !== null && (settledOf(sheet)?.surveyed.blunders.length ?? 0) > 0;
}

/** The keys of the form for readings between all points, and of what they come to. */
export const surveyKeys = {
  survey: [
    {
      heading: "WHILE TYPING READINGS BETWEEN POINTS",
      bindings: [
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter next",
          help: "take the reading and go on; on the last lines, write the sheet or make the car",
        },
        ...silent([...upAndDownTyping, clear]),
        {
          keys: ["pageDown"],
          shown: "PgDn",
          command: "listDown",
          footer: null,
          help: "ten lines down",
        },
        { keys: ["pageUp"], shown: "PgUp", command: "listUp", footer: null, help: "ten lines up" },
        { keys: ["home"], shown: "Home", command: "listUp", footer: null, help: "to the first line" },
        {
          keys: ["ctrl+n"],
          shown: "Ctrl-N",
          command: "lookNext",
          footer: (model) => (isOneWrong(model) ? "Ctrl-N wrong one" : "Ctrl-N read next"),
          help: "to a reading that does not fit; where all fit, to the one that would settle most",
          off: whyNothingNext,
        },
        {
          keys: ["ctrl+p"],
          shown: "Ctrl-P",
          command: "showPoints",
          footer: "Ctrl-P points",
          help: "what the readings come to: every point, and how near it is known",
          off: whyNoPoints,
        },
        {
          keys: ["end"],
          shown: "End",
          command: "listDown",
          footer: "End make it",
          help: "to the lines that write the sheet and make the car",
        },
        {
          keys: ["ctrl+r"],
          shown: "Ctrl-R",
          command: "otherSheet",
          footer: null,
          help: "throw these readings away, for another car; once more brings them back",
        },
        leaveForm("bench, kept", "to the bench; the readings typed so far are kept, also for next time"),
      ],
    },
  ],
  points: [
    {
      heading: "ON THE PAGE OF POINTS",
      bindings: [
        ...paging,
        {
          keys: ["escape", "q", "enter", "ctrl+c"],
          shown: "Esc",
          command: "cancel",
          footer: "Esc back",
          help: "back to the form; so do q and Enter",
        },
      ],
    },
  ],
} as const satisfies Partial<Readonly<Record<FocusName, readonly BindingGroup[]>>>;
