import type { Matched, PartRow, ReadingRow, Suspect } from "../solve/match/matched.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { borne } from "./borne.ts";
import { isHardlySo, straightWords, wrongWords } from "./matchOff.ts";
import { foundWords, movedWords, type ReadIn, unknownWords } from "./matchWords.ts";
import { unitName } from "./numbers.ts";
import { wrap } from "./table.ts";
import { countWords, isOffMiddle, notRead, undecidedOf } from "./undecided.ts";
import type { Length } from "./words.ts";

/** More candidates than so many are counted, not named. */
const NAMED = 8;

/** What has no second reading to be told by, such as a wheel's camber, the builder tells himself. */
const orElse = {
  file: "Or write what you know to be off into the car's file, and match again.",
  form: "Or set on the bench what you know to be off, and match again.",
} as const satisfies Record<ReadIn, string>;

/** What could be off in each other's place. */
interface Doubt {
  readonly words: readonly string[];
  readonly of: readonly Suspect[];
}

/** Names a reading as it is found again. */
type Found = (row: ReadingRow) => string;

/** That the readings cannot tell what is off, what to read next, and what it could be; said before anything is named. */
export function undecidedLines(
  matched: Matched,
  unit: LengthUnit,
  length: Length,
  width: number,
  readIn: ReadIn,
): readonly string[] {
  const found: Found = ({ prediction }) => foundWords(prediction, matched.onFile.inputKind, length, readIn);
  switch (undecidedOf(matched)) {
    case "few":
      return fewLines(matched, unit, width, found, readIn);
    case "which":
      return whichLines(matched, unit, width, found, readIn);
    case null:
      return [];
  }
}

const item = (words: string, width: number) =>
  wrap(words, width - 2, "  ").map((line, i) => `${i === 0 ? "  - " : "    "}${line.trimStart()}`);

function listed(items: readonly string[], width: number): readonly string[] {
  const more = items.length - NAMED;
  return [...items.slice(0, NAMED), ...(more > 0 ? [`${more} more`] : [])].flatMap((words) => item(words, width));
}

function fewLines(matched: Matched, unit: LengthUnit, width: number, found: Found, readIn: ReadIn): readonly string[] {
  const { readings, parts, onFile } = matched;
  const far = readings.filter(isFar);
  const doubted = far.length > 0 ? far : readings;
  const suspects = [
    ...parts.flatMap(({ unknown, off }): readonly Suspect[] => (off === null ? [] : [{ unknown }, ...off.or])),
    ...readings.flatMap(({ wrong }) => wrong?.or ?? []),
  ];
  const count = countWords(readings.length);
  const one = readings.length === 1;
  return [
    ...wrap(
      `${count.toUpperCase()} CANNOT TELL WHAT IS OFF: ${one ? "it may be a slip, and so may" : "any of them may be a slip, or"} more than one part be off. DO NOT BUILD ON THIS YET. Read ${one ? "it" : "them"} once more, and then more of the car: ${notRead(matched).join("; ")}. ${orElse[readIn]}`,
      width,
    ),
    "",
    "WHAT COULD BE OFF",
    ...listed(
      [
        ...doubted.map(
          (row) =>
            `${found(row)}: read ${valueWords(row, row.prediction.read, unit)}, on file ${valueWords(row, row.onFile, unit)}`,
        ),
        ...(isOffMiddle(matched) ? [`the tie rods: cut or set with the ${onFile.inputKind} off its middle`] : []),
        ...partNames(suspects),
      ],
      width,
    ),
    "",
  ];
}

/** Whether a reading is further from the file than its gauge is off by. */
function isFar({ prediction: { read, tolerance }, onFile }: ReadingRow): boolean {
  return Math.abs(read - onFile) > tolerance;
}

function valueWords({ prediction: { kind, tolerance } }: ReadingRow, value: number, unit: LengthUnit): string {
  return `${borne(value, tolerance, kind, unit)} ${unitName(kind, unit)}`;
}

function whichLines(
  matched: Matched,
  unit: LengthUnit,
  width: number,
  found: Found,
  readIn: ReadIn,
): readonly string[] {
  const { readings, parts } = matched;
  const rowOf = (suspect: Suspect) =>
    "prediction" in suspect ? readings.filter(({ prediction }) => prediction === suspect.prediction) : [];
  // A reading that nothing checks cannot be called wrong, and for that very reason it may be.
  const unchecked = readings.filter((row) => !row.checked && isFar(row));
  const partGroup = (part: PartRow): readonly Doubt[] => {
    if (part.off === null || part.off.or.length === 0) return [];
    const words = `${unknownWords(part.unknown)}: then ${movedWords(part, unit)} than on file${isHardlySo(part) ? ", which is hardly so" : ""}`;
    const rows = [...new Set([...unchecked, ...part.off.or.flatMap(rowOf)])];
    return [{ words: [words, ...rows.map(found), ...partNames(part.off.or)], of: part.off.or }];
  };
  const readingGroup = (row: ReadingRow): readonly Doubt[] => {
    if (row.wrong === null || row.wrong.or.length === 0) return [];
    const words = `${found(row)}: it then reads ${wrongWords(row, unit)}`;
    const { or } = row.wrong;
    return [{ words: [words, ...or.flatMap(rowOf).map(found), ...partNames(or)], of: or }];
  };
  const doubts = [...readings.flatMap(readingGroup), ...parts.flatMap(partGroup)];
  const straight = straightWords(matched, unit);
  const isPlace = doubts.some(({ of }) =>
    of.some((each) => "unknown" in each && each.unknown.quantities[0].kind === "length"),
  );
  const apart = isPlace
    ? "; a length from a point that is named to one that is surely right mostly tells them apart"
    : "";
  return [
    ...wrap(
      `${countWords(readings.length).toUpperCase()} CANNOT TELL WHAT IS OFF: one of ${doubts.length === 1 ? "those" : "each list"} below. DO NOT BUILD ON THIS YET. Read again what is named${apart}. ${orElse[readIn]}`,
      width,
    ),
    "",
    ...doubts.flatMap(({ words }) => ["ONE OF THESE IS OFF", ...listed(words, width), ""]),
    ...(straight === ""
      ? []
      : [...wrap(`Taking the first for it: ${straight.charAt(0).toLowerCase()}${straight.slice(1)}`, width), ""]),
  ];
}

/** The parts among suspects, both sides of one in one: "Tie-rod tab, ahead, left or right". */
function partNames(suspects: readonly Suspect[]): readonly string[] {
  const names = new Set(suspects.flatMap((each) => ("unknown" in each ? [unknownWords(each.unknown)] : [])));
  return [...names].flatMap((name) => {
    if (name.endsWith(", left") && names.has(name.replace(/left$/, "right"))) return [`${name} or right`];
    return name.endsWith(", right") && names.has(name.replace(/right$/, "left")) ? [] : [name];
  });
}
