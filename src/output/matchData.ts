import type { Matched, ReadingRow, Suspect } from "../solve/match/matched.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { Column } from "./column.ts";
import { csv } from "./csv.ts";
import type { Json } from "./json.ts";
import { premise, readingWords, suspectWords, unknownWords } from "./matchWords.ts";
import { inUnits, unitName, unitsOf } from "./numbers.ts";
import { undecidedOf } from "./undecided.ts";
import type { Length } from "./words.ts";

const columns = (inputKind: "rack" | "column", unit: LengthUnit, length: Length): readonly Column<ReadingRow>[] => {
  const word = (name: string, read: (row: ReadingRow) => string | number): Column<ReadingRow> => ({
    path: [name],
    kind: "word",
    sign: "",
    read,
  });
  const number = (name: string, read: (row: ReadingRow) => number) =>
    word(name, (row) => inUnits(read(row), row.prediction.kind, unit));
  return [
    word("reading", ({ prediction }) => readingWords(prediction, inputKind, length)),
    word("line", ({ prediction }) => prediction.reading.line),
    word("unit", ({ prediction }) => unitName(prediction.kind, unit)),
    number("read", ({ prediction }) => prediction.read),
    number("tolerance", ({ prediction }) => prediction.tolerance),
    number("onFile", ({ onFile }) => onFile),
    number("matched", ({ matched }) => matched),
    word("remark", ({ wrong, checked }) => (wrong !== null ? "read again" : checked ? "" : "unchecked")),
  ];
};

/** What was read, as rows; a line's numbers are in the unit that it names. */
export function matchCsv({ onFile, readings }: Matched, unit: LengthUnit, length: Length): string {
  return csv(columns(onFile.inputKind, unit, length), readings, unit);
}

/** The same as JSON, numbers not rounded; every doubt is one standard deviation. */
export function matchJson(matched: Matched, title: string | null, unit: LengthUnit, length: Length): Json {
  const { onFile, after, zero } = matched;
  const { inputKind } = onFile;
  const input = inputKind === "rack" ? "length" : "angle";
  const suspects = (or: readonly Suspect[]) => or.map((each) => suspectWords(each, inputKind, length));
  return {
    units: unitsOf(unit),
    premise,
    title: onFile.car.title,
    readingsTitle: title,
    chance: matched.chance,
    converged: matched.converged,
    undecided: undecidedOf(matched),
    straightAhead: {
      input: inputKind,
      onFile: onFile.zero === null ? null : inUnits(onFile.zero, input, unit),
      matched: zero === null ? null : inUnits(zero.value, input, unit),
      deviation: zero === null ? null : inUnits(zero.deviation, input, unit),
    },
    rods: {
      left: inUnits(after.rodLengths.left, "length", unit),
      right: inUnits(after.rodLengths.right, "length", unit),
    },
    readings: matched.readings.map(({ prediction, onFile: before, matched: now, wrong, checked, flipped }) => ({
      name: readingWords(prediction, inputKind, length),
      line: prediction.reading.line,
      unit: unitName(prediction.kind, unit),
      read: inUnits(prediction.read, prediction.kind, unit),
      tolerance: inUnits(prediction.tolerance, prediction.kind, unit),
      onFile: inUnits(before, prediction.kind, unit),
      matched: inUnits(now, prediction.kind, unit),
      checked,
      flipped,
      wrong:
        wrong === null
          ? null
          : {
              by: inUnits(wrong.by, prediction.kind, unit),
              deviation: inUnits(wrong.deviation, prediction.kind, unit),
              or: suspects(wrong.or),
            },
    })),
    parts: matched.parts.map(({ unknown, moved, deviation, share, off, leastFound, hidden, beyond }) => {
      const [first] = unknown.quantities;
      const kind = first.kind === "length" ? "length" : "angle";
      return {
        quantities: unknown.quantities.map(({ id }) => id),
        label: unknownWords(unknown),
        unit: unitName(kind, unit),
        onFile: inUnits(unknown.onFile, kind, unit),
        tolerance: unknown.open ? null : inUnits(unknown.tolerance, kind, unit),
        moved: inUnits(moved, kind, unit),
        deviation: inUnits(deviation, kind, unit),
        share,
        leastFound: leastFound === null ? null : inUnits(leastFound, kind, unit),
        hidden: inUnits(hidden, kind, unit),
        beyond,
        off: off === null ? null : { or: suspects(off.or) },
      };
    }),
    untold: matched.untold.flatMap(({ quantities }) => quantities.map(({ id }) => id)),
    entangled: matched.entangled.map(({ parts: [a, b], correlation }) => ({
      parts: [unknownWords(a.unknown), unknownWords(b.unknown)],
      correlation,
    })),
  };
}
