import type { BindingGroup, FocusName } from "./binding.ts";
import { cancel, clear } from "./common.ts";

/** The keys while a line is typed below the screen. */
export const fieldKeys = {
  entry: [
    {
      heading: "WHILE TYPING A VALUE",
      bindings: [
        { keys: ["enter"], shown: "Enter", command: "accept", footer: "Enter take it", help: "take the value" },
        clear,
        cancel("leave it as it was", "leave the value as it was"),
      ],
    },
  ],
  saveAs: [
    {
      heading: "WHILE TYPING A FILE NAME",
      bindings: [
        { keys: ["enter"], shown: "Enter", command: "accept", footer: "Enter save", help: "save under this name" },
        clear,
        cancel("do not save", "do not save"),
      ],
    },
  ],
  line: [
    {
      heading: "WHILE TYPING A LINE",
      bindings: [
        { keys: ["enter"], shown: "Enter", command: "accept", footer: "Enter take it", help: "take the line" },
        clear,
        cancel("leave it", "leave it as it was"),
      ],
    },
  ],
} as const satisfies Partial<Readonly<Record<FocusName, readonly BindingGroup[]>>>;
