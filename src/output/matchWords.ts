import type { Matched, PartRow, Suspect } from "../solve/match/matched.ts";
import type { Prediction } from "../solve/match/predictions.ts";
import type { Unknown } from "../solve/match/unknowns.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { degree } from "../vehicle/value.ts";
import { onTheTape, withDoubt } from "./borne.ts";
import { countWords, undecidedOf } from "./undecided.ts";
import { waysOf } from "./ways.ts";
import type { Length } from "./words.ts";

/** What every +- rests on. */
export const premise =
  "Every +- holds 19 times of 20 if whatever is not named as off really is within what the car is built to, and gauges are as good as said.";

/** Where two causes fit as well: which one is taken to be it, and which it may be instead. */
export function ambiguousWords(matched: Matched, unit: LengthUnit, length: Length): string[] {
  const { onFile, parts, readings } = matched;
  const { inputKind } = onFile;
  const or = (taken: string, others: readonly Suspect[]) =>
    others.length === 0
      ? []
      : [
          `${taken}, but it fits as well that instead ${others.map((each) => suspectWords(each, inputKind, length)).join(", or ")} is wrong: these readings cannot tell which`,
        ];
  return [
    ...(undecidedOf(matched) === "few"
      ? [`${countWords(readings.length)} cannot tell what is off: any one of them may be a slip`]
      : []),
    ...parts.flatMap((part) =>
      part.off === null
        ? []
        : or(`this takes ${unknownWords(part.unknown)} to be ${movedWords(part, unit)} than on file`, part.off.or),
    ),
    ...readings.flatMap(({ prediction, wrong }) =>
      wrong === null ? [] : or(`this leaves out ${foundWords(prediction, inputKind, length, "file")}`, wrong.or),
    ),
  ];
}

const letter = { left: "L", right: "R" } as const;

/** A point's name in few words: "L tab", "R lower joint". */
const shortPoint = (id: string) =>
  id
    .replace("left.", "L ")
    .replace("right.", "R ")
    .replace("tie-rod.outer", "tab")
    .replace("tie-rod.inner", "inner eye")
    .replace("-arm.", " ")
    .replaceAll("-", " ")
    .replaceAll(".", " ");

/** A place with its way: "rack 1/2 in L", "column 10° R", "rack on its middle". */
function stood(at: number, input: "rack" | "column", length: Length): string {
  if (at === 0) return `${input} on its middle`;
  return `${input} ${input === "rack" ? length(Math.abs(at)) : brief(at)} ${letter[at > 0 ? "left" : "right"]}`;
}

const brief = (rad: number) => `${Number((Math.abs(rad) / degree).toFixed(1))}°`;

/** What a number was read of, as the form and the report of a match name it: "turn left, rack 1/2 in R: left". */
export function readingWords(
  { reading, wheel }: Pick<Prediction, "reading" | "wheel">,
  input: "rack" | "column",
  length: Length,
): string {
  switch (reading.kind) {
    case "turn": {
      const beside = () => `L wheel ${brief(reading.left ?? 0)}`;
      const at =
        reading.stood === "lock" ? "lock" : reading.stood === null ? beside() : stood(reading.stood, input, length);
      return `turn ${reading.turn}, ${at}: ${wheel}`;
    }
    case "bump":
      return `bump gauge, ${length(Math.abs(reading.travel))} ${reading.travel < 0 ? "droop" : "bump"}: ${reading.wheel}`;
    case "toe":
      return "toe a wheel, straight ahead";
    case "camber":
    case "caster":
      return `${reading.kind}: ${reading.wheel}`;
    case "rod":
      return `tie rod, eye to eye: ${reading.wheel}`;
    case "straight":
      return `${input}, wheels straight`;
    case "between":
      return `${shortPoint(reading.from)} to ${shortPoint(reading.to)}`;
  }
}

/** A part's name with its side: "Tie-rod tab, ahead, left". */
export function unknownWords({ quantities: [first, second] }: Unknown): string {
  const side = second === undefined && first.wheel !== null ? `, ${first.wheel}` : "";
  return `${first.label}${side}`;
}

/** "0.19 +- 0.06 in (3/16 in) farther back". */
export function movedWords({ unknown, moved, deviation }: PartRow, unit: LengthUnit): string {
  const [quantity] = unknown.quantities;
  const kind = quantity.kind === "length" ? "length" : "angle";
  const [more, less] = waysOf(quantity.pair) ?? ["more", "less"];
  const tape = kind === "length" ? onTheTape(moved, 2 * deviation, unit) : "";
  return `${withDoubt(Math.abs(moved), 2 * deviation, kind, unit)}${tape} ${moved < 0 ? less : more}`;
}

/** Where readings were typed: those of a file are found by their line, which a form has not. */
export type ReadIn = "file" | "form";

/** A reading's name with where to find it. */
export function foundWords(
  prediction: Pick<Prediction, "reading" | "wheel">,
  input: "rack" | "column",
  length: Length,
  readIn: ReadIn,
): string {
  const name = readingWords(prediction, input, length);
  return readIn === "file" ? `${name} (line ${prediction.reading.line})` : name;
}

export function suspectWords(
  suspect: Suspect,
  input: "rack" | "column",
  length: Length,
  readIn: ReadIn = "file",
): string {
  return "unknown" in suspect
    ? `${unknownWords(suspect.unknown)} as on file`
    : foundWords(suspect.prediction, input, length, readIn);
}
