import { isTyping } from "../typing.ts";
import type { Binding } from "./binding.ts";

/** Leaves what is in front of the bench. */
export const cancel = (footer: string, help: string): Binding => ({
  keys: ["escape", "ctrl+c"],
  shown: "Esc",
  command: "cancel",
  footer: `Esc ${footer}`,
  help,
});

/** Leaves a form; the first Esc of a line that is being typed in only stops that. */
export const leaveForm = (footer: string, help: string): Binding => ({
  ...cancel(footer, `${help}; the first in a line that is being typed in only stops there`),
  footer: (model) => (isTyping(model) ? "Esc stop typing" : `Esc ${footer}`),
});

/** Empties the field. */
export const clear: Binding = {
  keys: ["ctrl+u"],
  shown: "Ctrl-U",
  command: "clear",
  footer: "Ctrl-U clear",
  help: "empty the field",
};

/** Up and down a list to choose from. */
export const upAndDown: readonly Binding[] = [
  { keys: ["up"], shown: "↑", command: "listUp", footer: null, help: "up the list" },
  { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ choose", help: "down the list" },
];

/** Up and down a list that is typed beside; Tab goes on as well. */
export const upAndDownTyping: readonly Binding[] = [
  { keys: ["up"], shown: "↑", command: "listUp", footer: "↑↓ choose", help: "up the list" },
  { keys: ["down", "tab"], shown: "↓", command: "listDown", footer: null, help: "down the list; Tab too" },
];

/** Bindings that the footer has no room for: they are in help. */
export function silent(bindings: readonly Binding[]): readonly Binding[] {
  return bindings.map((each) => ({ ...each, footer: null }));
}

/** Up and down a page that is longer than the window. */
export const paging: readonly Binding[] = [
  { keys: ["up", "pageUp"], shown: "↑", command: "listUp", footer: null, help: "up; PgUp by a page" },
  { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ move", help: "down" },
  {
    keys: ["space", "pageDown"],
    shown: "Space",
    command: "listDown",
    footer: "Space next page",
    help: "down by a page; PgDn too",
  },
];
