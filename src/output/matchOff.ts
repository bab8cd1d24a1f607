import type { Matched, PartRow, ReadingRow } from "../solve/match/matched.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { borne, onTheTape, withDoubt } from "./borne.ts";
import { foundWords, movedWords, type ReadIn, unknownWords } from "./matchWords.ts";
import { wrap } from "./table.ts";
import { isOffMiddle, undecidedOf } from "./undecided.ts";
import type { Length } from "./words.ts";

/** More parts than so many, each moved so many times further than it is built to: it is no car of this file. */
const FOREIGN = { parts: 2, times: 8 };
/** From this share of the readings on that go with nothing else, and at least so many of them. */
const ADRIFT = { share: 0.25, readings: 4 };

/** Whether a part has moved so far that it is hardly that part that is off. */
export function isHardlySo({ unknown, moved }: PartRow): boolean {
  return Math.abs(moved) > FOREIGN.times * unknown.tolerance;
}

/** Said before all else where readings and file can hardly be of the same car: a list of what is off would mislead. */
export function foreignLines({ parts, readings }: Matched, width: number): readonly string[] {
  const far = parts.filter(isHardlySo);
  const adrift = readings.filter(({ wrong }) => wrong !== null);
  const isAdrift = adrift.length >= ADRIFT.readings && adrift.length >= ADRIFT.share * readings.length;
  if (far.length <= FOREIGN.parts && !isAdrift) return [];
  return [
    ...wrap(
      "SO MUCH IS OFF that these readings are probably not of this car, or left and right are swapped in some of them. Look at that first: what follows says little until then.",
      width,
    ),
    "",
  ];
}

/** What is most likely off: where the steering stands, places, and readings. */
export function offLines(
  matched: Matched,
  unit: LengthUnit,
  length: Length,
  width: number,
  readIn: ReadIn,
): readonly string[] {
  const { inputKind } = matched.onFile;
  const isWhich = undecidedOf(matched) === "which";
  const said = [
    ...flippedWords(matched, length, readIn),
    ...(isWhich ? [] : [straightWords(matched, unit)].filter((words) => words !== "")),
    ...matched.parts.flatMap((part) =>
      part.off === null || part.off.or.length > 0
        ? []
        : [`${unknownWords(part.unknown)}: ${movedWords(part, unit)} than on file.`],
    ),
    ...matched.readings.flatMap((row) => {
      if (row.wrong === null || row.wrong.or.length > 0) return [];
      const name = foundWords(row.prediction, inputKind, length, readIn);
      return [`Read again: ${name} reads ${wrongWords(row, unit)} beside all else. It was left out.`];
    }),
  ];
  if (isWhich && said.length === 0) return [];
  return [
    isWhich ? "MOST LIKELY OFF BESIDE THAT" : "MOST LIKELY OFF",
    ...(said.length === 0
      ? matched.parts.some(({ beyond }) => beyond)
        ? ["  Nothing surely; but see below what has moved further than the car is built to."]
        : ["  Nothing: car and readings agree within their tolerances."]
      : said.flatMap((words) => wrap(words, width, "  "))),
    "",
  ];
}

/** Angles that fit with the other sign. */
function flippedWords({ onFile, readings }: Matched, length: Length, readIn: ReadIn): readonly string[] {
  const flipped = readings.filter((each) => each.flipped);
  if (flipped.length === 0) return [];
  const names = flipped.map(({ prediction }) => foundWords(prediction, onFile.inputKind, length, readIn));
  return [
    `Signs, likely a slip: ${names.join(", ")}. With the sign the other way ${flipped.length === 1 ? "it agrees" : "they agree"} with the file, as written not. Toe-in, camber out at the top and caster back at the top are positive: look again, and correct the readings first.`,
  ];
}

/** The rack off its middle with the wheels straight, where that is more than its doubt and than can be measured. */
export function straightWords(matched: Matched, unit: LengthUnit): string {
  const { onFile, zero } = matched;
  if (zero === null || !isOffMiddle(matched)) return "";
  const { inputKind } = onFile;
  const doubt = 2 * zero.deviation;
  const kind = inputKind === "rack" ? "length" : "angle";
  const tape = kind === "length" ? onTheTape(zero.value, doubt, unit) : "";
  const way = zero.value > 0 ? "left" : "right";
  return `With the wheels straight the ${inputKind} stands ${withDoubt(Math.abs(zero.value), doubt, kind, unit)}${tape} ${way} of its middle${onFile.zero === null ? "" : ` (on file ${borne(onFile.zero, doubt, kind, unit)})`}: the rods are cut or set so. Unequal locks come mostly from there.`;
}

/** "8.2 +- 1.2 deg too much". */
export function wrongWords({ prediction, wrong }: ReadingRow, unit: LengthUnit): string {
  if (wrong === null) return "as all else says";
  const by = withDoubt(Math.abs(wrong.by), 2 * wrong.deviation, prediction.kind, unit);
  return `${by} too ${wrong.by > 0 ? "much" : "little"}`;
}
