import { isSheet } from "./from-tape/is-sheet.ts";
import { isSurvey } from "./survey/is-survey.ts";

/** What a file of this program can be. */
export type FileKind = "car" | "survey" | "from-tape" | "readings";

interface Known {
  readonly is: (text: string) => boolean;
  readonly what: string;
  /** What it is good for instead. */
  readonly use: string;
}

const known: Readonly<Record<FileKind, Known>> = {
  car: {
    is: (text) => /^front *:/m.test(text),
    what: "a car file",
    use: "rackwright, and this file's name, opens it; rackwright --help lists what else is done with a car",
  },
  survey: {
    is: isSurvey,
    what: "a tape sheet of readings between points",
    use: "rackwright tape, and this file's name, finds the points; with --out my-car it writes the car. On a terminal rackwright, and its name, opens it in a form",
  },
  "from-tape": {
    is: isSheet,
    what: "a sheet of readings with a tape",
    use: "rackwright new my-car --from-tape, and this file's name, makes a car of it; rackwright tape, and its name, takes it for a survey of points",
  },
  readings: {
    is: (text) =>
      /^(turn-plates|bump-gauge|toe|camber|caster|rods|straight-ahead|lengths|built-to) *:/m.test(text) &&
      !/^(wheelbase|hub-height|over-tyres|linkage|mechanism) *:/m.test(text),
    what: "a file of readings on a built car",
    use: "rackwright match CAR, and this file's name, says what of that car is off",
  },
};

const kinds = ["car", "survey", "from-tape", "readings"] as const satisfies readonly FileKind[];

/** What a text is, by the keys at its left edge that no other kind has; null where they do not tell. */
export function kindOf(text: string): FileKind | null {
  return kinds.find((kind) => known[kind].is(text)) ?? null;
}

/** "this is a car file, not a tape sheet …", with what to do with it; null where a text is not another kind than is wanted. */
export function otherKind(text: string, wanted: FileKind): string | null {
  const kind = kindOf(text);
  if (kind === null || kind === wanted) return null;
  return `this is ${known[kind].what}, not ${known[wanted].what}: ${known[kind].use}`;
}
