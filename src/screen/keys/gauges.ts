import { whyNoMatched } from "../why.ts";
import type { BindingGroup, FocusName } from "./binding.ts";
import { clear, leaveForm, paging, silent, upAndDownTyping } from "./common.ts";

/** The keys of the form for readings on the built car, and of what the match to them says. */
export const gaugeKeys = {
  gauges: [
    {
      heading: "WHILE TYPING READINGS ON THE BUILT CAR",
      bindings: [
        {
          keys: ["enter"],
          shown: "Enter",
          command: "accept",
          footer: "Enter next",
          help: "take the reading and go on; on the last lines, match the car, write the readings or open a file of them",
        },
        ...silent([...upAndDownTyping, clear]),
        { keys: ["pageDown"], shown: "PgDn", command: "listDown", footer: "PgDn further", help: "ten lines down" },
        { keys: ["pageUp"], shown: "PgUp", command: "listUp", footer: null, help: "ten lines up" },
        { keys: ["home"], shown: "Home", command: "listUp", footer: null, help: "to the first line" },
        {
          keys: ["end"],
          shown: "End",
          command: "listDown",
          footer: "End match, file",
          help: "to the lines that match the car to the readings, and keep them in a file",
        },
        {
          keys: ["ctrl+r"],
          shown: "Ctrl-R",
          command: "otherGauges",
          footer: null,
          help: "throw these readings away, for another car; once more brings them back",
        },
        leaveForm("bench, kept", "to the bench; the readings typed so far are kept, also for next time"),
      ],
    },
  ],
  matched: [
    {
      heading: "ON THE PAGE OF WHAT IS OFF ON THE BUILT CAR",
      bindings: [
        ...paging,
        {
          keys: ["t"],
          shown: "t",
          command: "takeMatched",
          footer: "t take this car",
          help: "put the car as it most likely is on the bench, rods as cut; u takes it back",
          off: whyNoMatched,
        },
        {
          keys: ["escape", "q", "enter", "ctrl+c"],
          shown: "Esc",
          command: "cancel",
          footer: (model) => (model.work?.state === "running" ? "Esc stop" : "Esc readings"),
          help: "stop the match while it is under way; else back to the readings",
        },
      ],
    },
  ],
} as const satisfies Partial<Readonly<Record<FocusName, readonly BindingGroup[]>>>;
