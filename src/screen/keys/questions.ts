import { whyNoOtherOffer } from "../why.ts";
import type { BindingGroup, FocusName } from "./binding.ts";
import { cancel } from "./common.ts";

/** The keys that answer a question, or wait. */
export const questionKeys = {
  opening: [
    {
      heading: "WHILE A CAR IS BEING OPENED",
      bindings: [{ keys: ["q", "ctrl+c"], shown: "q", command: "quit", footer: "q quit", help: "leave without it" }],
    },
  ],
  unsaved: [
    {
      heading: "WHEN CHANGES ARE NOT SAVED",
      bindings: [
        { keys: ["s"], shown: "s", command: "saveFirst", footer: "s save first", help: "save, then go on" },
        {
          keys: ["d"],
          shown: "d",
          command: "goOn",
          footer: "d drop the changes",
          help: "go on without saving: the changes are gone",
        },
        { keys: ["escape"], shown: "Esc", command: "cancel", footer: "Esc stay", help: "stay with this car" },
        {
          keys: ["ctrl+c"],
          shown: "Ctrl-C",
          command: "leave",
          footer: "Ctrl-C leave, keep for next time",
          help: "leave; the changes are kept, and offered when this car is opened next",
        },
      ],
    },
  ],
  exists: [
    {
      heading: "WHEN A FILE OF THAT NAME EXISTS",
      bindings: [
        {
          keys: ["o"],
          shown: "o",
          command: "overwrite",
          footer: "o overwrite it",
          help: "write this car over that file",
        },
        cancel("choose another name", "choose another name"),
      ],
    },
  ],
  changed: [
    {
      heading: "WHEN THE FILE WAS CHANGED ELSEWHERE",
      bindings: [
        {
          keys: ["o"],
          shown: "o",
          command: "overwrite",
          footer: "o overwrite it",
          help: "write this car over the changed file",
        },
        {
          keys: ["r"],
          shown: "r",
          command: "readAgain",
          footer: "r read it again",
          help: "read the changed file in the place of the changes made here; u brings them back",
        },
        {
          keys: ["S"],
          shown: "S",
          command: "saveAs",
          footer: "S another name",
          help: "save this car under another name",
        },
        cancel("do not save", "do not save"),
      ],
    },
  ],
  recover: [
    {
      heading: "WHEN UNSAVED CHANGES ARE FOUND",
      bindings: [
        {
          keys: ["r"],
          shown: "r",
          command: "restore",
          footer: "r restore them",
          help: "restore the unsaved changes: the car on the bench becomes what it was with them",
        },
        {
          keys: ["d"],
          shown: "d",
          command: "throwAway",
          footer: "d throw them away",
          help: "throw the unsaved changes away for good",
        },
        {
          keys: ["n"],
          shown: "n",
          command: "nextOffer",
          footer: null,
          help: "the next of several that were found",
          off: whyNoOtherOffer,
        },
        cancel("decide next time", "leave them where they are and ask again next time"),
      ],
    },
  ],
} as const satisfies Partial<Readonly<Record<FocusName, readonly BindingGroup[]>>>;
