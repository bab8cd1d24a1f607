import type { Focus } from "../model.ts";
import type { Act } from "../turn.ts";
import type { KeyWords } from "../views/view.ts";

/** What a key does; update.ts has one act for each. */
export type Command =
  | "previous"
  | "next"
  | "less"
  | "more"
  | "type"
  | "sides"
  | "smallerStep"
  | "largerStep"
  | "rods"
  | "parts"
  | "upright"
  | "starting"
  | "rightAsItIs"
  | "pin"
  | "swap"
  | "undo"
  | "redo"
  | "wheelLeft"
  | "wheelRight"
  | "fullLeft"
  | "fullRight"
  | "up"
  | "down"
  | "fullBump"
  | "fullDroop"
  | "rideHeight"
  | "moving"
  | "unit"
  | "fraction"
  | "save"
  | "saveAs"
  | "open"
  | "fromTape"
  | "emptyTape"
  | "otherSheet"
  | "lookNext"
  | "showPoints"
  | "gauges"
  | "otherGauges"
  | "takeMatched"
  | "help"
  | "guide"
  | "endGuide"
  | "quit"
  | "accept"
  | "clear"
  | "cancel"
  | "saveFirst"
  | "goOn"
  | "leave"
  | "overwrite"
  | "readAgain"
  | "restore"
  | "nextOffer"
  | "throwAway"
  | "aims"
  | "removeAim"
  | "undoAim"
  | "listUp"
  | "listDown";

/** One binding of keys, with all that is said about it, and what it does: a command, or an act of a view's own. */
export type Binding = KeyWords & ({ readonly command: Command } | { readonly act: Act });

/** Bindings that belong together, with a heading for help. */
export interface BindingGroup {
  readonly heading: string;
  readonly bindings: readonly Binding[];
}

/** What can have the keyboard, each question apart. */
export type FocusName = Exclude<Focus["on"], "question"> | "unsaved" | "exists" | "changed" | "recover";
