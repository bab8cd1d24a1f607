import type { Focus, Model } from "./model.ts";
import { type Act, turn } from "./turn.ts";
import type { KeyWords } from "./views/view.ts";
import { viewOf, views } from "./views/views.ts";
import {
  whyFirstPage,
  whyLastPage,
  whyNoFractions,
  whyNoGuide,
  whyNoneStarting,
  whyNoOtherOffer,
  whyNoPlace,
  whyNoRedo,
  whyNoSwap,
  whyNoTravel,
  whyNotAdjusted,
  whyNotOnBench,
  whyNotSaved,
  whyNotStarting,
  whyNotTyped,
  whyNoUndo,
  whyRodsStay,
} from "./why.ts";

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

const adjusting: readonly Binding[] = [
  { keys: ["["], shown: "[", command: "previous", footer: null, help: "choose what to adjust, up the list" },
  { keys: ["]"], shown: "]", command: "next", footer: null, help: "choose what to adjust, down the list" },
  { keys: ["-"], shown: "-", command: "less", footer: null, help: "less of it, by one step", off: whyNotAdjusted },
  { keys: ["+", "="], shown: "+", command: "more", footer: null, help: "more of it, by one step", off: whyNotAdjusted },
  {
    keys: ["enter"],
    shown: "Enter",
    command: "type",
    footer: "Enter type",
    help: "type the value: 14 3/8 in or 365 mm; +1/16 in adds, -=1/16 in takes away",
    off: whyNotTyped,
  },
  { keys: [",", "<"], shown: ",", command: "smallerStep", footer: null, help: "smaller steps" },
  {
    keys: [".", ">"],
    shown: ".",
    command: "largerStep",
    footer: null,
    help: "larger steps: 1/32, 1/16, 1/8, 1/4, 1 in, or 0.5, 1, 2, 5, 10 mm",
  },
  {
    keys: ["tab"],
    shown: "Tab",
    command: "sides",
    footer: null,
    help: "change both sides, or the left or the right alone",
  },
  {
    keys: ["c"],
    shown: "c",
    command: "rods",
    footer: null,
    help: "rods: cut to fit (length follows) or as cut (length stays)",
    off: whyRodsStay,
  },
  {
    keys: ["p"],
    shown: "p",
    command: "parts",
    footer: null,
    help: "parts: another front end (strut, beam, ...) or steering (rack, relay, ...)",
  },
  {
    keys: ["U"],
    shown: "U",
    command: "upright",
    footer: null,
    help: "the upright as a part on the bench: measure it, and hang it at a wanted camber and caster",
    off: whyNotOnBench,
  },
  {
    keys: ["x"],
    shown: "x",
    command: "rightAsItIs",
    footer: null,
    help: "a starting value (marked ~) is right as it is",
    off: whyNotStarting,
  },
  {
    keys: ["X"],
    shown: "X",
    command: "starting",
    footer: null,
    help: "list the starting values that are still to be checked",
    off: whyNoneStarting,
  },
  {
    keys: ["b"],
    shown: "b",
    command: "pin",
    footer: null,
    help: "this car is the one before: every number shows its change from it; b again lets go",
  },
  {
    keys: ["v"],
    shown: "v",
    command: "swap",
    footer: null,
    help: "swap the car with the one before, and back",
    off: whyNoSwap,
  },
  { keys: ["u"], shown: "u", command: "undo", footer: "u undo", help: "take back the last change", off: whyNoUndo },
  { keys: ["r"], shown: "r", command: "redo", footer: null, help: "do it again after all", off: whyNoRedo },
];

const moving: readonly Binding[] = [
  {
    keys: ["j"],
    shown: "j",
    command: "wheelLeft",
    footer: null,
    help: "turn the steering wheel left",
    off: whyNoPlace,
  },
  {
    keys: ["l"],
    shown: "l",
    command: "wheelRight",
    footer: "jl steer",
    help: "turn the steering wheel right",
    off: whyNoPlace,
  },
  {
    keys: ["J"],
    shown: "J",
    command: "fullLeft",
    footer: null,
    help: "steering wheel to full left lock",
    off: whyNoPlace,
  },
  {
    keys: ["L"],
    shown: "L",
    command: "fullRight",
    footer: null,
    help: "steering wheel to full right lock",
    off: whyNoPlace,
  },
  {
    keys: ["i", "pageUp"],
    shown: "i",
    command: "up",
    footer: null,
    help: "wheels up (bump); PgUp too",
    off: whyNoTravel,
  },
  {
    keys: ["k", "pageDown"],
    shown: "k",
    command: "down",
    footer: "ik travel",
    help: "wheels down (droop); PgDn too",
    off: whyNoTravel,
  },
  { keys: ["I"], shown: "I", command: "fullBump", footer: null, help: "wheels to full bump", off: whyNoTravel },
  { keys: ["K"], shown: "K", command: "fullDroop", footer: null, help: "wheels to full droop", off: whyNoTravel },
  {
    keys: ["h", "home"],
    shown: "h",
    command: "rideHeight",
    footer: null,
    help: "straight ahead at ride height; Home too",
    off: whyNoPlace,
  },
  { keys: ["e"], shown: "e", command: "moving", footer: null, help: "which wheels go up and down: both, left, right" },
];

const car: readonly Binding[] = [
  { keys: ["s"], shown: "s", command: "save", footer: null, help: "save the car to its file", off: whyNotSaved },
  { keys: ["S"], shown: "S", command: "saveAs", footer: null, help: "save the car under another name" },
  { keys: ["o"], shown: "o", command: "open", footer: null, help: "open another car or an example" },
  {
    keys: ["T"],
    shown: "T",
    command: "fromTape",
    footer: null,
    help: "a new car from fifteen readings with a tape: a form that says what to measure",
  },
  {
    keys: ["m"],
    shown: "m",
    command: "unit",
    footer: null,
    help: "show inches or millimetres (the file keeps its own)",
  },
  {
    keys: ["f"],
    shown: "f",
    command: "fraction",
    footer: null,
    help: "show inches to 1/32, to 1/16 or in decimals",
    off: whyNoFractions,
  },
  {
    keys: ["g"],
    shown: "g",
    command: "guide",
    footer: null,
    help: "a guided first run, on a car whose rods are cut wrong",
  },
  { keys: ["escape"], shown: "Esc", command: "endGuide", footer: null, help: "end the guide", off: whyNoGuide },
  { keys: ["?"], shown: "?", command: "help", footer: "? help", help: "this page" },
  {
    keys: ["q", "ctrl+c"],
    shown: "q",
    command: "quit",
    footer: "q quit",
    help: "leave; asks first when something is not saved",
  },
];

const cancel = (footer: string, help: string): Binding => ({
  keys: ["escape", "ctrl+c"],
  shown: "Esc",
  command: "cancel",
  footer: `Esc ${footer}`,
  help,
});

const clear: Binding = {
  keys: ["ctrl+u"],
  shown: "Ctrl-U",
  command: "clear",
  footer: "Ctrl-U clear",
  help: "empty the field",
};

/** A key for each view, from the list of views. */
const looking: readonly Binding[] = views.map(({ name, key, help }) => ({
  keys: [key],
  shown: key,
  footer: null,
  help: `${name}: ${help}`,
  act: (model) => turn({ ...model, view: name }),
}));

/** The one list of keys: what each does while something has the keyboard, and all that is said about it. */
export const keys: Readonly<Record<FocusName, readonly BindingGroup[]>> = {
  bench: [
    { heading: "VIEWS", bindings: looking },
    { heading: "ADJUST, IN EVERY VIEW", bindings: adjusting },
    { heading: "WHEEL AND SUSPENSION", bindings: moving },
    { heading: "CAR AND SCREEN", bindings: car },
  ],
  opening: [
    {
      heading: "WHILE A CAR IS BEING OPENED",
      bindings: [{ keys: ["q", "ctrl+c"], shown: "q", command: "quit", footer: "q quit", help: "leave without it" }],
    },
  ],
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
  open: [
    {
      heading: "WHILE CHOOSING A CAR",
      bindings: [
        { keys: ["up"], shown: "↑", command: "listUp", footer: null, help: "up the list" },
        { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ choose", help: "down the list" },
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
        { keys: ["up"], shown: "↑", command: "listUp", footer: "↑↓ choose", help: "up the list" },
        { keys: ["down", "tab"], shown: "↓", command: "listDown", footer: null, help: "down the list; Tab too" },
        {
          keys: ["pageDown"],
          shown: "PgDn",
          command: "listDown",
          footer: "PgDn page 2",
          help: "to page 2, arms and travel, for bump steer",
          off: whyLastPage,
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
        cancel("bench, readings kept", "to the bench; the readings typed so far are kept, also for next time"),
      ],
    },
  ],
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
        { keys: ["up"], shown: "↑", command: "listUp", footer: "↑↓ choose", help: "up the list" },
        { keys: ["down", "tab"], shown: "↓", command: "listDown", footer: null, help: "down the list; Tab too" },
        clear,
        cancel("back, nothing changed", "back to the bench, nothing changed"),
      ],
    },
  ],
  aims: [
    {
      heading: "ON THE LIST OF WHAT TO LOOK FOR AND WHAT MAY MOVE",
      bindings: [
        { keys: ["up"], shown: "↑", command: "listUp", footer: null, help: "up the list" },
        { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ choose", help: "down the list" },
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
        { keys: ["up"], shown: "↑", command: "listUp", footer: "↑↓ choose", help: "up the list" },
        { keys: ["down", "tab"], shown: "↓", command: "listDown", footer: null, help: "down the list; Tab too" },
        clear,
        cancel("back, nothing changed", "back to the list, nothing changed"),
      ],
    },
  ],
  parts: [
    {
      heading: "WHILE CHOOSING A FRONT END OR STEERING",
      bindings: [
        { keys: ["up"], shown: "↑", command: "listUp", footer: null, help: "up the list" },
        { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ choose", help: "down the list" },
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
        { keys: ["up"], shown: "↑", command: "listUp", footer: null, help: "up the list" },
        { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ choose", help: "down the list" },
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
        { keys: ["up", "pageUp"], shown: "↑", command: "listUp", footer: null, help: "up; PgUp by a page" },
        { keys: ["down"], shown: "↓", command: "listDown", footer: "↑↓ move", help: "down" },
        {
          keys: ["space", "pageDown"],
          shown: "Space",
          command: "listDown",
          footer: "Space next page",
          help: "down by a page; PgDn too",
        },
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
          help: "read the changed file and drop the changes made here",
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
};

/** The part of the list that works just now. */
export function focusName(focus: Focus): FocusName {
  return focus.on === "question" ? focus.question.about : focus.on;
}

/** The keys of a view's own, which come before all others while it is seen. */
function ownKeys(model: Model): readonly Binding[] {
  return model.focus.on === "bench" ? viewOf(model.view).keys : [];
}

/** The bindings that work just now, those of the view first. */
export function bindingsNow(model: Model): readonly Binding[] {
  return [...ownKeys(model), ...keys[focusName(model.focus)].flatMap((group) => group.bindings)];
}

/** Every key there is, under headings: those of the view that is seen first, those of the other views last. */
export function allKeys(model: Pick<Model, "view">): readonly BindingGroup[] {
  const groupOf = ({ name, keys: bindings }: (typeof views)[number]) => ({
    heading: `IN THE VIEW "${name.toUpperCase()}"`,
    bindings,
  });
  const seen = viewOf(model.view);
  const others = views.filter((each) => each !== seen && each.keys.length > 0);
  return [groupOf(seen), ...Object.values(keys).flat(), ...others.map(groupOf)];
}

/** What a chord means just now; a view's own key that is off lets the common one through. Undefined where it means nothing. */
export function bindingOf(model: Model, chord: string): Binding | undefined {
  const meant = bindingsNow(model).filter((binding) => binding.keys.includes(chord));
  return meant.find((binding) => !binding.off?.(model)) ?? meant[0];
}
