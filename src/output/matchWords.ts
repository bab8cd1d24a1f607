import type { Matched, PartRow, Suspect } from "../solve/match/matched.ts";
import type { Prediction } from "../solve/match/predictions.ts";
import type { Unknown } from "../solve/match/unknowns.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { onTheTape, withDoubt } from "./borne.ts";
import { waysOf } from "./ways.ts";
import { degrees, type Length } from "./words.ts";

/** What every ± rests on. */
export const premise =
  "Every ± holds 19 times of 20 if whatever is not named as off really is within what the car is built to, and gauges are as good as said.";

/** Where two causes fit as well: which one is taken to be it, and which it may be instead. */
export function ambiguousWords({ onFile, parts, readings }: Matched, unit: LengthUnit, length: Length): string[] {
  const { inputKind } = onFile;
  const or = (taken: string, others: readonly Suspect[]) =>
    others.length === 0
      ? []
      : [
          `${taken}, but it fits as well that instead ${others.map((each) => suspectWords(each, inputKind, length)).join(", or ")} is wrong: these readings cannot tell which`,
        ];
  return [
    ...parts.flatMap((part) =>
      part.off === null
        ? []
        : or(`this takes ${unknownWords(part.unknown)} to be ${movedWords(part, unit)} than on file`, part.off.or),
    ),
    ...readings.flatMap(({ prediction, wrong }) =>
      wrong === null
        ? []
        : or(
            `this leaves out ${readingWords(prediction, inputKind, length)} (line ${prediction.reading.line})`,
            wrong.or,
          ),
    ),
  ];
}

/** A place with its way: "1/2 in left", "10.0° right", "middle". */
function stood(at: number, isRack: boolean, length: Length): string {
  const size = isRack ? length(Math.abs(at)) : degrees(Math.abs(at));
  return at === 0 ? "middle" : `${size} ${at > 0 ? "left" : "right"}`;
}

/** What a number was read of: "left turn, rack 1/2 in right, left wheel". */
export function readingWords({ reading, wheel }: Prediction, input: "rack" | "column", length: Length): string {
  switch (reading.kind) {
    case "turn": {
      const { turn, left } = reading;
      const at =
        reading.stood === "lock"
          ? "at lock"
          : reading.stood === null
            ? `left wheel at ${degrees(left ?? 0)}`
            : `${input} ${stood(reading.stood, input === "rack", length)}`;
      return `${turn} turn, ${at}: ${wheel} wheel`;
    }
    case "bump":
      return `bump gauge, ${length(Math.abs(reading.travel))} ${reading.travel < 0 ? "droop" : "bump"}: ${reading.wheel}`;
    case "toe":
      return "toe, each wheel";
    case "camber":
    case "caster":
      return `${reading.kind}: ${reading.wheel}`;
    case "rod":
      return `tie rod, eye to eye: ${reading.wheel}`;
    case "straight":
      return `${input}, wheels straight`;
    case "between":
      return `${reading.from} to ${reading.to}`;
  }
}

/** A part's name with its side: "Tie-rod tab, ahead, left". */
export function unknownWords({ quantities: [first, second] }: Unknown): string {
  const side = second === undefined && first.wheel !== null ? `, ${first.wheel}` : "";
  return `${first.label}${side}`;
}

/** "0.19 ± 0.06 in (3/16 in) farther back". */
export function movedWords({ unknown, moved, deviation }: PartRow, unit: LengthUnit): string {
  const [quantity] = unknown.quantities;
  const kind = quantity.kind === "length" ? "length" : "angle";
  const [more, less] = waysOf(quantity.pair) ?? ["more", "less"];
  const tape = kind === "length" ? onTheTape(moved, 2 * deviation, unit) : "";
  return `${withDoubt(Math.abs(moved), 2 * deviation, kind, unit)}${tape} ${moved < 0 ? less : more}`;
}

export function suspectWords(suspect: Suspect, input: "rack" | "column", length: Length): string {
  return "unknown" in suspect
    ? `${unknownWords(suspect.unknown)} as on file`
    : `${readingWords(suspect.prediction, input, length)} (line ${suspect.prediction.reading.line})`;
}
