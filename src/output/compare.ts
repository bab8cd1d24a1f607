import type { CheckItem, State } from "../solve/check/item.ts";
import type { CheckRow } from "../solve/compare/checks.ts";
import type { Comparison, FigureRow } from "../solve/compare/compare.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import type { Difference } from "../vehicle/differences.ts";
import { formatLength, sayLength } from "../vehicle/units/format.ts";
import { assumedWords } from "./assumed.ts";
import { bewareOf } from "./beware.ts";
import { countWords, valueWords } from "./check.ts";
import type { Json } from "./json.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { type Block, list, mind, type Paper, tableOf, words } from "./paper/paper.ts";
import { cautions, degrees, fixed, type Length } from "./words.ts";

/** What a car is called at the head of its column: A is the one that the others are held against. */
function letter(i: number): string {
  return String.fromCharCode("A".charCodeAt(0) + i);
}

const headsOf = ({ cars }: Comparison) => cars.map((_, i) => letter(i));

function signed(value: number, text: string): string {
  return value > 0 && Number(text.replace(/[^\d]/g, "")) !== 0 ? `+${text}` : text;
}

/** How much more an input is than the first car's: "+1/8 in", "-0.25°"; "" where there is nothing to take away. */
export function inputChange({ kind, said }: Difference, i: number, unit: LengthUnit): string {
  const [from, to] = [said[0]?.value ?? null, said[i]?.value ?? null];
  if (kind === "choice" || from === null || to === null) return "";
  const change = to - from;
  if (kind === "ratio") return signed(change, fixed(change, 2));
  if (kind === "angle") return signed(change, degrees(change, 2));
  const size = unit === "in" ? formatLength(change, { unit: "in", exact: true }) : fixed(change, 2);
  return signed(change, `${size} ${unit}`);
}

/** A text of a file that names a unit of the other system. */
const foreign: Readonly<Record<LengthUnit, RegExp>> = { in: /\d\s*(mm|cm|m)\b/, mm: /\d\s*(in\b|ft\b|["'′″])/ };

/** What a car's file says of an input: as it was written, unless that is in inches and the report in mm, or the other way round. */
export function saidWords({ kind, said }: Difference, i: number, unit: LengthUnit): string {
  const { words: written = "-", value = null } = said[i] ?? {};
  if (kind !== "length" || value === null || !foreign[unit].test(written)) return written;
  return unit === "in" ? sayLength(value, { unit, exact: true }) : `${Number(value.toFixed(2))} mm`;
}

/** An input's name with its side: "Tie-rod tab, up, each side". */
export function inputName({ label, wheel }: Difference): string {
  return wheel === null ? label : `${label}, ${wheel === "each" ? "each side" : wheel}`;
}

/** The heads of a table's columns: the first car, then each of the others with its change. */
function withChanges(comparison: Comparison): readonly string[] {
  const [first = "", ...others] = headsOf(comparison);
  return [first, ...others.flatMap((each) => [each, "change"])];
}

function inputBlocks(comparison: Comparison, unit: LengthUnit): readonly Block[] {
  const { inputs } = comparison;
  if (inputs.length === 0) return [words("Nothing: all say the same.")];
  const rows = inputs.map((line) => [
    inputName(line),
    ...line.said.flatMap((_, i) => {
      const said = saidWords(line, i, unit);
      return i === 0 ? [said] : [said, inputChange(line, i, unit)];
    }),
  ]);
  const told = inputs.some((line) => line.said.some(({ words }, i) => words !== saidWords(line, i, unit)));
  return [
    tableOf(["As it stands in the file", ...withChanges(comparison)], rows),
    ...(told
      ? [
          words(
            `Lengths that a file has in ${unit === "in" ? "millimetres" : "inches"} are told in ${unit === "in" ? "inches" : "millimetres"}.`,
          ),
        ]
      : []),
  ];
}

function figureCells({ reading, values, changes }: FigureRow, unit: LengthUnit): readonly string[] {
  const cell = (value: number | null | undefined) =>
    value === null || value === undefined ? "-" : written(value, reading.kind, unit);
  const change = (i: number) => {
    const { [i]: value = null } = changes;
    const text = cell(value);
    return value === null ? "-" : Number(text) === 0 ? "same" : signed(value, text);
  };
  return values.flatMap((value, i) => (i === 0 ? [cell(value)] : [cell(value), change(i)]));
}

/** The ways that count as positive, each with the figures it holds for. */
function signItems({ figures }: Comparison): readonly string[] {
  const signs = new Map<string, Set<string>>();
  for (const { reading } of figures) {
    if (reading.sign === "") continue;
    const name = reading.label.replace(/^(left|right) (lock|wheel), /i, "").replace(/, (left|right) wheel$/, "");
    signs.set(reading.sign, (signs.get(reading.sign) ?? new Set()).add(name));
  }
  return [...signs].map(([sign, names]) => `${sign}: ${[...names].join("; ")}`);
}

function figureBlocks(comparison: Comparison, unit: LengthUnit): readonly Block[] {
  return [
    tableOf(
      ["Figure", "unit", ...withChanges(comparison)],
      comparison.figures.map((row) => [row.reading.label, unitName(row.reading.kind, unit), ...figureCells(row, unit)]),
      [0, 1],
    ),
    words(
      "Figures of a wheel or of both are those straight ahead at ride height. A worst value changes by its size: + is worse, - is better. A dash: cannot be told.",
    ),
    list(signItems(comparison)),
  ];
}

/** How an item came out, and on which side where the worse one is told: "close, 3/32 in, left"; a dash for a car that has none of it. */
export function outcome(item: CheckItem | null, unit: LengthUnit, length: Length): string {
  if (item === null) return "-";
  const side = item.sides === null ? null : item.sides.alike ? "both" : item.wheel;
  return [item.state, valueWords(item, unit, length), side].filter((each) => each !== null).join(", ");
}

/** The checked things that came out otherwise, as far as a reader can see. */
export function differing(checks: readonly CheckRow[], unit: LengthUnit, length: Length): readonly CheckRow[] {
  return checks.filter(({ items }) => new Set(items.map((item) => outcome(item, unit, length))).size > 1);
}

/** What a checked thing is called; which side it is of stands with each outcome where that may differ from car to car. */
export function labelOf({ items }: CheckRow): string {
  const item = items.find((each) => each !== null);
  return item?.sides?.name ?? item?.label ?? "";
}

const ranks: Readonly<Record<State, number>> = { pass: 0, "not given": 0, close: 1, broken: 2 };

/** By how much the worst of the others came out worse than the first. */
function worsening({ items: [first, ...others] }: CheckRow): number {
  const rank = (item: CheckItem | null | undefined) => ranks[item?.state ?? "pass"];
  return Math.max(...others.map(rank)) - rank(first);
}

/** The same rows, what came out worse first. */
export function worseFirst(rows: readonly CheckRow[]): readonly CheckRow[] {
  return rows.toSorted((a, b) => worsening(b) - worsening(a));
}

function checkBlocks(comparison: Comparison, unit: LengthUnit, length: Length): readonly Block[] {
  const { cars } = comparison;
  const rows = worseFirst(differing(comparison.checks, unit, length));
  return [
    list(cars.map(({ checks }, i) => `${letter(i)}: ${countWords(checks)}`)),
    rows.length === 0
      ? words("Every check comes out the same.")
      : tableOf(
          ["Checked", ...headsOf(comparison)],
          rows.map((row) => [labelOf(row), ...row.items.map((item) => outcome(item, unit, length))]),
          [0, ...cars.map((_, i) => i + 1)],
        ),
  ];
}

/** What a check of the first car does not break, and of this one does. */
function newlyBroken({ checks }: Comparison, i: number, unit: LengthUnit, length: Length): readonly string[] {
  return checks.flatMap((row) => {
    const [was = null] = row.items;
    const { [i]: is = null } = row.items;
    const news = is !== null && is.state === "broken" && was?.state !== "broken";
    return news ? [`${labelOf(row)} is BROKEN${outcome(is, unit, length).replace("broken", "")}`] : [];
  });
}

function bewareBlocks(comparison: Comparison, unit: LengthUnit, length: Length): readonly Block[] {
  const [first, ...others] = comparison.cars;
  return others.flatMap(({ study }, i) => {
    if (first === undefined) return [];
    const all = [...bewareOf(first.study, study, length), ...newlyBroken(comparison, i + 1, unit, length)];
    return all.map((each) => mind(`${letter(i + 1)} against A: ${each}.`));
  });
}

/** Cars beside each other, as a paper. */
export function comparePaper(comparison: Comparison, unit: LengthUnit, length: Length): Paper {
  const { cars } = comparison;
  const names = cars.map(({ name, study }, i) => `${letter(i)}: ${name}, ${study.car.title}`);
  const assumed = cars.flatMap(({ study }, i) => {
    const said = assumedWords(study.car);
    return said === null ? [] : [`${letter(i)}: ${said}`];
  });
  const beware = bewareBlocks(comparison, unit, length);
  return {
    title: cars.length === 2 ? "Two cars compared" : `${cars.length} cars compared`,
    under: [...names, "Changes are against A.", ...assumed],
    parts: [
      ...(beware.length === 0 ? [] : [{ heading: "Beware", blocks: beware }]),
      { heading: "What differs in the files", blocks: inputBlocks(comparison, unit) },
      { heading: "What comes of it", blocks: figureBlocks(comparison, unit) },
      { heading: "Checks that come out otherwise", blocks: checkBlocks(comparison, unit, length) },
    ],
    cautions,
  };
}

function inputJson({ id, label, kind, wheel, said }: Difference, unit: LengthUnit): Json {
  const value = (of: number | null) =>
    of === null ? null : kind === "length" || kind === "angle" ? inUnits(of, kind, unit) : of;
  return {
    id,
    label,
    kind,
    side: wheel,
    said: said.map((each) => ({ words: each.words, value: value(each.value) })),
  };
}

/** The same as JSON, numbers not rounded; the figures' changes are against the first car. */
export function compareJson(comparison: Comparison, unit: LengthUnit, length: Length): Json {
  const { cars, inputs, figures } = comparison;
  return {
    units: unitsOf(unit),
    cars: cars.map(({ name, study }) => ({ name, title: study.car.title })),
    inputs: inputs.map((each) => inputJson(each, unit)),
    figures: figures.map(({ reading, values, changes }) => {
      const told = (of: readonly (number | null)[]) =>
        of.map((value) => (value === null ? null : inUnits(value, reading.kind, unit)));
      return {
        id: reading.id,
        label: reading.label,
        unit: unitName(reading.kind, unit),
        sign: reading.sign,
        bySize: reading.bySize,
        values: told(values),
        changes: told(changes),
      };
    }),
    checks: worseFirst(differing(comparison.checks, unit, length)).map((row) => ({
      id: row.id,
      label: labelOf(row),
      sides: row.items.map((item) => (item?.sides?.alike === true ? "both" : (item?.wheel ?? null))),
      states: row.items.map((item) => item?.state ?? null),
      said: row.items.map((item) => outcome(item, unit, length)),
    })),
    cautions,
  };
}
