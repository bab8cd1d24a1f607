import type { FigureKind } from "../measures/figure.ts";
import type { Study } from "../measures/study.ts";
import type { Change, Hold, SensitivityRow } from "../solve/sensitivity/sensitivity.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { sayLength } from "../vehicle/units/format.ts";
import { inch } from "../vehicle/units/length.ts";
import { assumedMark } from "./assumed.ts";
import type { Column } from "./column.ts";
import { csv } from "./csv.ts";
import type { Json } from "./json.ts";
import { inUnits, unitsOf, written } from "./numbers.ts";
import { table, WIDTH, wrap } from "./table.ts";
import { cautions, degrees, fixed, type Length, straightAheadWords, travelPlace } from "./words.ts";

/** What a report on sensitivity is made from: every row, what must be held most tightly first. */
export interface SensitivityReport {
  readonly study: Study;
  readonly rows: readonly SensitivityRow[];
}

/** "Tie-rod tab, up, left": a row's quantity, marked where nobody has measured it. */
export function quantityWords({ quantity, assumed }: SensitivityRow, side = quantity.wheel as string | null): string {
  return `${assumed ? assumedMark : ""}${quantity.label}${side === null ? "" : `, ${side}`}`;
}

/** The step of a row: "1/16 in", "1 mm", "0.25°", "0.5". */
export function stepWords({ quantity, step }: SensitivityRow, unit: LengthUnit): string {
  if (quantity.kind === "angle") return degrees(step, 2);
  if (quantity.kind === "ratio") return fixed(step, 1);
  return sayLength(step, unit === "in" ? { unit, exact: true } : { unit }).replace(".0 ", " ");
}

/** Finer than this a tape cannot tell, and the nearest fraction would say nothing, mm. */
const fine = inch / 32;

/** The size of a change with its unit: in fractions as a tape reads it, finer ones in thousandths. */
export function sizeWords(change: number, kind: FigureKind, unit: LengthUnit, length: Length): string {
  const size = Math.abs(change);
  if (kind === "angle") return degrees(size, 2);
  if (kind === "length") return unit === "in" && size >= fine ? length(size) : `${written(size, kind, unit)} ${unit}`;
  return `${written(size, kind, unit)} ${kind === "percent" ? "points" : `deg/${unit}`}`;
}

/** "+2.61°" of a figure; "3/32 in more" of a worst value, whose size is compared. */
export function changeWords({ reading }: Change, change: number, unit: LengthUnit, length: Length): string {
  const size = sizeWords(change, reading.kind, unit, length);
  if (reading.bySize) return `${size} ${change < 0 ? "less" : "more"}`;
  return `${change < 0 ? "-" : "+"}${size}`;
}

/** "1/16 in more: Left wheel, worst toe across the tyre, 3/32 in more, at 4 in droop". */
export function chiefWords(row: SensitivityRow, unit: LengthUnit, length: Length): string {
  const { chief, breaks } = row;
  const step = stepWords(row, unit);
  const broken =
    breaks.length === 0
      ? ""
      : `${step} ${breaks.join(" or ")}: does not go together, or no longer reaches full lock and travel`;
  if (chief === null || chief.worse === null) return broken === "" ? "changes nothing that is aimed at" : broken;
  const { way, change, travel } = chief.worse;
  const where = travel === null ? "" : `, at ${travelPlace(travel, length)}`;
  const does = `${step} ${way}: ${chief.reading.label}, ${changeWords(chief, change, unit, length)}${where}`;
  return broken === "" ? does : `${broken}; ${does}`;
}

/** Of what a target allows, in percent: "93 %"; "breaks" where the front end does not go together. */
export function shareWords({ chief, breaks }: SensitivityRow): string {
  return breaks.length > 0 ? "breaks" : `${fixed(100 * (chief?.worse?.share ?? 0), 0)} %`;
}

/** One line for each quantity of a class: both sides in one where both are in it, the worse of them shown. */
function grouped(
  rows: readonly SensitivityRow[],
  hold: Hold,
): readonly { readonly row: SensitivityRow; name: string }[] {
  const own = rows.filter((row) => row.hold === hold);
  const pairs = [...new Set(own.map(({ quantity }) => quantity.pair))];
  return pairs.map((pair) => {
    const [row, ...others] = own.filter(({ quantity }) => quantity.pair === pair);
    return { row, name: quantityWords(row, others.length > 0 ? "each side" : row.quantity.wheel) };
  });
}

/** What the shares are of: each target once, and who says so. */
function allowedWords(rows: readonly SensitivityRow[], unit: LengthUnit, length: Length): string {
  const all = rows[0]?.changes.filter(({ allowed }) => allowed !== null) ?? [];
  const said = all.map(({ reading, allowed }) => {
    const name = reading.label.replace(/^(Left|Right) (wheel|lock), /, "");
    const own = allowed?.from === "file" ? " (file)" : "";
    return `${name} ${sizeWords(allowed?.half ?? 0, reading.kind, unit, length)}${own}`;
  });
  return [...new Set(said)].join("; ");
}

const heads: readonly (readonly [Hold, string])[] = [
  ["tight", "HOLD THESE TIGHTLY: one step takes a quarter or more of what a target allows"],
  ["watch", "WATCH THESE: a twentieth to a quarter of it"],
];

/** What every reader of these numbers has to know: the step, the rods, the targets. */
export function premises({ study, rows }: SensitivityReport, unit: LengthUnit, length: Length): readonly string[] {
  const { left, right } = study.car.form.rods;
  const rods =
    left === "cut" || right === "cut"
      ? "Tie rods stay as cut."
      : "Tie rods are cut to fit, so they are cut anew to each change: only what is off once they are cut does as said here at Tie-rod length.";
  return [
    `One size at a time is off by ${unit === "in" ? "1/16 in" : "1 mm"} (angles by 0.25°), more and less; the worse of the two is shown. ${rods}`,
    `Ranked by the share of what the car's targets allow, so that unlike numbers compare: ${allowedWords(rows, unit, length)}; by common practice, no source, unless marked (file).`,
  ];
}

/** What "Rack at straight ahead" is, where it is among what is to be held or watched. */
function straightAheadLines(rows: readonly SensitivityRow[]): readonly string[] {
  const row = rows.find(({ quantity, hold }) => quantity.pair.endsWith("straight-ahead") && hold !== "free");
  return row === undefined ? [] : ["", ...wrap(`${row.quantity.label}: ${straightAheadWords}.`, WIDTH)];
}

/** The report for reading: what to hold, what to watch, what does not matter. */
export function sensitivityText(report: SensitivityReport, unit: LengthUnit, length: Length): string[] {
  const { study, rows } = report;
  const free = grouped(rows, "free").map(({ row, name }) =>
    row.quantity.wheel === null ? name : name.replace(/, each side$/, ""),
  );
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    ...premises(report, unit, length).flatMap((words) => wrap(words, WIDTH)),
    ...heads.flatMap(([hold, head]) => {
      const lines = grouped(rows, hold).flatMap(({ row, name }) =>
        wrap(`${name}, ${chiefWords(row, unit, length)}`, WIDTH, `${shareWords(row).padStart(6)}  `, 8),
      );
      return ["", head, ...(lines.length === 0 ? ["        nothing"] : lines)];
    }),
    ...straightAheadLines(rows),
    "",
    ...wrap(
      "DOES NOT MATTER for these numbers: less than a twentieth. Clearance, thread and strength are not in it.",
      WIDTH,
    ),
    ...wrap(`${free.join("; ")}.`, WIDTH, "        "),
    ...(rows.some(({ assumed }) => assumed)
      ? ["", `${assumedMark} assumed, not measured: first measure what stands at the top.`]
      : []),
    "",
    ...wrap("--figure looks at one number alone, --csv and --json have every number of every size.", WIDTH),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

/** What one figure does with each quantity, the largest first; what does not change it is left out. */
export function figureText({ study, rows }: SensitivityReport, id: string, unit: LengthUnit): string[] {
  const all = rows.flatMap((row) =>
    row.changes.filter(({ reading }) => reading.id === id).map((change) => ({ row, change })),
  );
  const size = ({ change }: (typeof all)[number]) => Math.abs(change.worse?.change ?? 0);
  const reading = all[0]?.change.reading;
  if (reading === undefined) return [];
  const { kind, sign, label, bySize } = reading;
  const now = reading.read(study);
  const cell = (value: number | null) => (value === null ? "-" : signed(written(value, kind, unit)));
  const isNothing = ({ change }: (typeof all)[number]) =>
    [change.more, change.less].every((value) => value !== null && Number(written(value, kind, unit)) === 0);
  const seen = all.filter((each) => !isNothing(each)).sort((a, b) => size(b) - size(a));
  const same = all.length - seen.length;
  return [
    ...wrap(study.car.title, WIDTH),
    "",
    ...wrap(
      `${label}${sign === "" || bySize ? "" : ` (${sign})`}: ${now === null ? "cannot be told" : `now ${written(bySize ? Math.abs(now) : now, kind, unit)} ${unitWords(kind, unit)}`}. ${reading.explanation}`,
      WIDTH,
    ),
    "",
    ...table(
      [["one step of", "step", `more: ${unitWords(kind, unit)}`, `less: ${unitWords(kind, unit)}`]],
      seen.map(({ row, change }) => [quantityWords(row), stepWords(row, unit), cell(change.more), cell(change.less)]),
      [0],
    ),
    "",
    ...(same === 0 ? [] : [`${same} other sizes change nothing of it.`]),
    ...(bySize ? wrap("A worst value changes by its size: + is worse, - is better.", WIDTH) : []),
    ...wrap(cautions.join(" "), WIDTH),
  ];
}

function unitWords(kind: FigureKind, unit: LengthUnit): string {
  return kind === "angle" ? "deg" : kind === "length" ? unit : kind === "percent" ? "%" : `deg/${unit}`;
}

function signed(text: string): string {
  return text.startsWith("-") || Number(text) === 0 ? text : `+${text}`;
}

interface Cell {
  readonly row: SensitivityRow;
  readonly change: Change;
}

/** One line for each quantity and figure; a line's numbers are in the unit that it names. */
function cellColumns(unit: LengthUnit): readonly Column<Cell>[] {
  const word = (path: string, read: (cell: Cell) => string | number | null): Column<Cell> => ({
    path: [path],
    kind: "word",
    sign: "",
    read,
  });
  const number = ({ change }: Cell, value: number | null) =>
    value === null ? null : inUnits(value, change.reading.kind, unit);
  return [
    word("quantity", ({ row }) => row.quantity.id),
    word("label", ({ row }) => row.quantity.label),
    word("assumed", ({ row }) => (row.assumed ? "assumed" : "")),
    word("step", ({ row }) => stepIn(row, unit)),
    word("stepUnit", ({ row }) => stepUnit(row, unit)),
    word("figure", ({ change }) => change.reading.id),
    word("unit", ({ change }) => unitWords(change.reading.kind, unit)),
    word("more", (cell) => number(cell, cell.change.more)),
    word("less", (cell) => number(cell, cell.change.less)),
    word("share", ({ change }) => change.worse?.share ?? null),
  ];
}

function stepIn({ quantity, step }: SensitivityRow, unit: LengthUnit): number {
  return quantity.kind === "ratio" ? step : inUnits(step, quantity.kind, unit);
}

function stepUnit({ quantity }: SensitivityRow, unit: LengthUnit): string {
  return quantity.kind === "ratio" ? "" : quantity.kind === "angle" ? "deg" : unit;
}

/** Every number of every size as rows; of one figure alone where its id is given. */
export function sensitivityCsv({ rows }: SensitivityReport, id: string | null, unit: LengthUnit): string {
  const cells = rows.flatMap((row) => row.changes.map((change) => ({ row, change })));
  return csv(
    cellColumns(unit),
    cells.filter(({ change }) => id === null || change.reading.id === id),
    unit,
  );
}

/** The same as JSON, numbers not rounded. */
export function sensitivityJson({ study, rows }: SensitivityReport, id: string | null, unit: LengthUnit): Json {
  const seen = (changes: readonly Change[]) => changes.filter(({ reading }) => id === null || reading.id === id);
  return {
    units: unitsOf(unit),
    title: study.car.title,
    rods: { left: study.car.form.rods.left, right: study.car.form.rods.right },
    figures: Object.fromEntries(
      seen(rows[0]?.changes ?? []).map(({ reading, allowed }) => {
        const now = reading.read(study);
        return [
          reading.id,
          {
            label: reading.label,
            unit: unitWords(reading.kind, unit),
            now: now === null ? null : inUnits(now, reading.kind, unit),
            bySize: reading.bySize,
            allowed: allowed === null ? null : { half: inUnits(allowed.half, reading.kind, unit), from: allowed.from },
          },
        ];
      }),
    ),
    rows: rows.map((row) => ({
      quantity: row.quantity.id,
      label: row.quantity.label,
      assumed: row.assumed,
      step: stepIn(row, unit),
      stepUnit: stepUnit(row, unit),
      hold: row.hold,
      breaks: row.breaks,
      chief: row.chief?.reading.id ?? null,
      share: row.chief?.worse?.share ?? null,
      changes: Object.fromEntries(
        seen(row.changes).map(({ reading, more, less }) => {
          const told = (value: number | null) => (value === null ? null : inUnits(value, reading.kind, unit));
          return [reading.id, { more: told(more), less: told(less) }];
        }),
      ),
    })),
  };
}
