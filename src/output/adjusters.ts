import type { FigureKind } from "../measures/figure.ts";
import type { Study } from "../measures/study.ts";
import type { AdjusterRow, Amounts } from "../solve/adjusters/adjusters.ts";
import type { Settings } from "../solve/adjusters/effect.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import type { Json } from "./json.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { cautions, degrees, type Length } from "./words.ts";

/** What a table of adjusters is made from. */
export interface AdjusterReport {
  readonly study: Study;
  readonly now: Readonly<Record<Wheel, Settings>>;
  readonly rows: readonly AdjusterRow[];
  readonly amounts: Amounts;
}

/** The columns of settings: their heading, their key and what they are. */
export const settingColumns: readonly (readonly [head: string, key: keyof Settings, kind: FigureKind])[] = [
  ["camber", "camber", "angle"],
  ["caster", "caster", "angle"],
  ["toe", "toe", "length"],
  ["bump", "toeInBump", "length"],
  ["droop", "toeInDroop", "length"],
];

/** A setting or its change for a reader; toe in thousandths or hundredths, since a turn changes little of it. */
function cell(value: number | null, kind: FigureKind, unit: LengthUnit): string {
  if (value === null) return "-";
  return kind === "length" && unit === "mm"
    ? inUnits(value, kind, unit)
        .toFixed(2)
        .replace(/^-0\.00$/, "0.00")
    : written(value, kind, unit);
}

/** A row of settings as cells. */
export function settingCells(settings: Settings, unit: LengthUnit): readonly string[] {
  return settingColumns.map(([, key, kind]) => cell(settings[key], kind, unit));
}

/** One line of the table: which wheel's settings, of which adjuster. */
export interface AdjusterLine {
  readonly name: string;
  /** The name without its side. */
  readonly what: string;
  readonly wheel: Wheel | null;
  readonly cells: readonly string[] | null;
  readonly row: AdjusterRow;
}

const wheels: readonly Wheel[] = ["left", "right"];

/** Lines of a table: an adjuster of one wheel by its own wheel, one of both by each of them. */
export function linesOfSides(rows: readonly AdjusterRow[], unit: LengthUnit, length: Length): readonly AdjusterLine[] {
  return rows.flatMap((row): readonly AdjusterLine[] => {
    const what = `${row.part}, ${row.brief(length)}`;
    const named = (wheel: Wheel | null) => (wheel === null ? what : `${wheel} ${what}`);
    if ("why" in row) return [{ name: named(row.wheel), what, wheel: row.wheel, cells: null, row }];
    return (row.wheel === null ? wheels : [row.wheel]).map((wheel) => ({
      name: named(wheel),
      what,
      wheel,
      cells: settingCells(row.change[wheel], unit),
      row,
    }));
  });
}

/** The same, left and right in one line where they read alike. */
export function adjusterLines(rows: readonly AdjusterRow[], unit: LengthUnit, length: Length): readonly AdjusterLine[] {
  const all = linesOfSides(rows, unit, length);
  const alike = (a: AdjusterLine, b: AdjusterLine) =>
    a.wheel !== null &&
    b.wheel !== null &&
    a.wheel !== b.wheel &&
    a.what === b.what &&
    a.cells?.join() === b.cells?.join();
  return all.flatMap((line): readonly AdjusterLine[] => {
    if (!all.some((other) => alike(line, other))) return [line];
    return line.wheel === "right" ? [] : [{ ...line, name: `each ${line.what}` }];
  });
}

/** What is to be known beside the numbers. */
export function adjusterNotes({ study, amounts }: Pick<AdjusterReport, "study" | "amounts">): readonly string[] {
  const pitch = Math.atan2(Math.abs(amounts.rideHeight), study.wheelbase);
  return [
    "Changes of one wheel with the steering held where the wheels are straight now; the other way round for a turn in. Toe is across the tyre, toe-in positive; bump and droop: how much more toe-in there is at the end of that travel.",
    "Turned at one wheel only, rods and arms take the steering off its middle: turn both sides alike, or expect unequal locks.",
    ...(study.suspended
      ? [
          `Ride height: front and rear alike. At the front alone the car leans back and gains ${degrees(pitch, 2)} of caster more.`,
        ]
      : []),
  ];
}

/** The adjusters of a car, for reading. */
export function adjustersText(report: AdjusterReport, unit: LengthUnit, length: Length): string[] {
  const { study, now, rows } = report;
  const lines = adjusterLines(rows, unit, length);
  const told = lines.filter(({ cells }) => cells !== null);
  const nowRows = wheels.map((wheel) => [`now, ${wheel} wheel`, ...settingCells(now[wheel], unit)]);
  const not = lines.flatMap(({ row, name }) => ("why" in row ? [{ name, why: row.why }] : []));
  const reasons = [...new Set(not.map(({ why }) => why))];
  const mind = new Set(told.map(({ row }) => row.caution).filter((words) => words !== null));
  const done = new Set(told.map(({ row }) => `${row.part}: ${row.done(length)}`));
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    ...table(
      [
        ["What each adjuster changes", ...settingColumns.map(([head]) => head)],
        ["", ...settingColumns.map(([, , kind]) => unitName(kind, unit))],
      ],
      [...nowRows, ...told.map(({ name, cells }) => [name, ...(cells ?? [])])],
      [0],
    ),
    "",
    ...wrap(`${[...done].join("; ")}.`, WIDTH),
    ...(reasons.length === 0 ? [] : ["", "Not here"]),
    ...reasons.flatMap((why) =>
      wrap(
        `${not
          .filter((each) => each.why === why)
          .map(({ name }) => name)
          .join("; ")}: ${why}.`,
        WIDTH,
        "  ",
        4,
      ),
    ),
    "",
    ...adjusterNotes(report).flatMap((words) => wrap(words, WIDTH)),
    ...[...mind].flatMap((words) => wrap(words, WIDTH, "Mind: ", 6)),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

/** The same as JSON, numbers not rounded. */
export function adjustersJson({ study, now, rows }: AdjusterReport, unit: LengthUnit): Json {
  const say: Length = (mm) => `${written(mm, "length", unit)} ${unit}`;
  const numbers = (of: Settings) =>
    Object.fromEntries(
      settingColumns.map(([, key, kind]) => {
        const value = of[key];
        return [key, value === null ? null : inUnits(value, kind, unit)];
      }),
    );
  const sides = (of: Readonly<Record<Wheel, Settings>>) => ({ left: numbers(of.left), right: numbers(of.right) });
  return {
    units: unitsOf(unit),
    title: study.car.title,
    now: sides(now),
    adjusters: rows.map((row) => ({
      key: row.key,
      wheel: row.wheel,
      part: row.part,
      what: row.done(say),
      why: "why" in row ? row.why : null,
      change: "why" in row ? null : sides(row.change),
      caution: row.caution,
    })),
  };
}
