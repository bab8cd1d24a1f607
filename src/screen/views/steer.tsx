import { type Figure, figureOf } from "../../measures/figures.ts";
import type { SteerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import { degrees, fixed, inputPlace } from "../../output/words.ts";
import { formatLength } from "../../vehicle/units/format.ts";
import { inch } from "../../vehicle/units/length.ts";
import { dashed } from "../draw/canvas.ts";
import { axisOver, plotLines } from "../draw/plot.ts";
import { sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { cellWords } from "../view/cellWords.ts";
import { line as bar, gauge, type Mark, needle } from "../view/gauge.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, Lines } from "../view/Lines.tsx";
import { levels } from "../view/readout.ts";
import { roundSpan } from "../view/roundSpan.ts";
import { spaceFor } from "../view/space.ts";
import { changeColumns, type NumberColumn, tableLines } from "../view/table.ts";
import { cursorKeys, noPin, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View } from "./view.ts";

const name = "Steer";
const tableColumns = 78;
const balanceRows = 3;
const mostRows = 21;
/** Places along the steering that a curve goes through. */
const curvePlaces = 61;
/** From these sizes on the table and the plots stand beside each other. */
const roomy = { columns: 118, rows: 18 } as const;

interface Column extends NumberColumn<SteerRow> {
  readonly figure: Figure | undefined;
}

const degree = Math.PI / 180;

function numbers(
  id: string | null,
  head: string,
  width: number,
  read: Column["read"],
  how: Pick<Column, "bare" | "unit">,
): Column {
  const say = (row: SteerRow) => {
    const value = read(row);
    return value === null ? null : how.bare(value);
  };
  return { figure: id === null ? undefined : figureOf(id), head, width, read, say, ...how };
}

/** The value with its unit, for the words below: finer than the table has room for. */
function tell({ read, bare, unit }: Column, row: SteerRow): string | null {
  const value = read(row);
  if (value === null) return null;
  if (unit === "°") return degrees(value, 2);
  return unit === " %" ? `${fixed(value, 1)} %` : `${bare(value)}${unit}`;
}

function columnsOf(study: Study, model: Model): readonly Column[] {
  const style = styleOf(model.display);
  const isRack = study.inputKind === "rack";
  const length = { bare: (mm: number) => formatLength(mm, style), unit: ` ${style.unit}` };
  const far = { bare: (mm: number) => fixed(mm / unitOf(model), 0), unit: ` ${style.unit}` };
  const angle = { bare: (value: number) => fixed(value / degree, 1), unit: "°" };
  const percent = { bare: (value: number) => fixed(value, 0), unit: " %" };
  return [
    numbers(null, isRack ? `rack ${style.unit}` : "column °", 11, (row) => row.input, isRack ? length : angle),
    numbers("steer", "left °", 8, (row) => row.left.steer, angle),
    numbers("steer", "right °", 8, (row) => row.right.steer, angle),
    numbers("inner", "inner °", 8, (row) => row.inner, angle),
    numbers("outer", "outer °", 8, (row) => row.outer, angle),
    numbers("idealInner", "ideal °", 8, (row) => row.idealInner, angle),
    numbers("percentOfIdealInner", "% ideal", 8, (row) => row.percentOfIdealInner, percent),
    numbers("ackermann", "Acker %", 8, (row) => row.ackermann, percent),
    numbers("turnRadius", `radius ${style.unit}`, 10, (row) => row.turnRadius, far),
  ];
}

function unitOf({ display }: Model): number {
  return display.unit === "in" ? inch : 1;
}

/** What a table of the wheels at rest has no name for in the list of figures. */
const places = {
  rack: { label: "Rack", sign: "to the left positive", explanation: "How far the rack stands from its middle." },
  column: {
    label: "Column",
    sign: "turned left positive",
    explanation: "How far the steering column stands from its middle.",
  },
} as const;

/** All of lock to lock, in as many rows as there is room for. */
function tableRows(model: Model): readonly SteerRow[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { inputKind, inputTravel } = study;
  const rows = Math.max(2, Math.min(mostRows, spaceFor(model, false).room.rows - 2 - balanceRows));
  const span = { from: -inputTravel.right, to: inputTravel.left, rows };
  return study.steerTable(roundSpan(span, inputKind === "rack" ? model.display.unit : "degrees")).rows;
}

const size = (model: Model) => ({ rows: tableRows(model).length, columns: 9 });

/** Lock to lock, as a table and as plots, and how the two locks balance. */
export const steer: View = {
  name,
  key: "2",
  help: "lock to lock: table, balance of the locks, inner wheel against its ideal, Ackermann",
  keys: [
    ...cursorKeys(name, size, "look along the table:"),
    pageKey(name, ["table", "plots", "changes from the pinned car"]),
  ],
  explain,
  Body,
};

function explain(model: Model): string {
  const { study } = model.bench;
  if ("refused" in study) return "";
  const spot = spotWithin(model, name, size);
  if (spot.page === 1 && !isRoomy(spaceFor(model, false).room))
    return "Inner wheel: whole line, its ideal: dashes. Where they part, a tyre scrubs. Ackermann 100 % is no scrubbing, 0 % parallel steer.";
  const row = tableRows(model)[spot.row];
  const column = columnsOf(study, model)[spot.column];
  if (row === undefined || column === undefined) return "";
  const length = sayer(model.display);
  const side = spot.column === 1 ? "left wheel, " : spot.column === 2 ? "right wheel, " : "";
  const where = `${capital(side + inputPlace(study, row.input, length))}`;
  return cellWords(where, column.figure ?? places[study.inputKind], tell(column, row), pinnedWords(model, row, column));
}

/** The pinned car's row at the same place; null where none is pinned, or its steering is moved by something else. */
function pinnedRow({ pin, bench }: Model): ((row: SteerRow) => SteerRow | undefined) | null {
  const { study } = bench;
  if (pin === null || "refused" in pin.study || "refused" in study || pin.study.inputKind !== study.inputKind)
    return null;
  const was = pin.study;
  return ({ input }) => was.steerTable({ from: input, to: input, rows: 1 }).rows[0];
}

/** What the pinned car has under the cursor. */
function pinnedWords(model: Model, row: SteerRow, column: Column): string | null {
  const was = pinnedRow(model)?.(row);
  return was === undefined ? null : tell(column, was);
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function isRoomy({ columns, rows }: Room): boolean {
  return columns >= roomy.columns && rows >= roomy.rows;
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  if ("refused" in study) return null;
  const where = study.suspended ? ", at ride height" : "";
  const title = heading(model, room.columns, `LOCK TO LOCK${where}`, "LOCK TO LOCK");
  const rows = room.rows - 1;
  const isWide = isRoomy(room);
  const seen = isWide
    ? beside(table(model, study), tableColumns, plots(study, room.columns - tableColumns, rows, "stacked"))
    : spotOf(model, name).page !== 1
      ? table(model, study)
      : plots(study, room.columns, rows, "beside");
  return <Lines columns={room.columns} lines={[title, ...filled(seen, rows)]} />;
}

/** On its third page how much each number changed since the car was pinned. */
function table(model: Model, study: Study): readonly Line[] {
  const columns = columnsOf(study, model);
  const rows = tableRows(model);
  const spot = spotWithin(model, name, size);
  if (spot.page !== 2) return [...tableLines(columns, rows, spot), ...balance(study, model)];
  const before = pinnedRow(model);
  if (before === null) return [...noPin, "", ...balance(study, model)];
  return [...tableLines(changeColumns(columns, before), rows, spot), ...balance(study, model)];
}

/** Left against right lock, for inners, outers and circles each: the mark leans to the side that turns further or wider. */
function balance(study: Study, model: Model): readonly Line[] {
  const { difference } = study.locks;
  const turn = (value: number) => degrees(value);
  const far = (value: number) => `${fixed(value / unitOf(model), 0)} ${model.display.unit}`;
  const row = (label: string, value: number | null, reach: number, bands: readonly Mark[], words: string): Line => {
    const marks = [...bands, { at: 0, glyph: bar }, value === null ? null : { at: -value, glyph: needle }];
    return ` ${label.padEnd(13)}left ${gauge(25, -reach, reach, marks)} right  ${words}`;
  };
  const angles = levels(study, "lock-difference", true);
  const short = (value: number, amount: string) =>
    value > 0 ? `right ${amount} short of left` : `left ${amount} short of right`;
  const tight = (value: number, amount: string) => (value > 0 ? `right ${amount} tighter` : `left ${amount} tighter`);
  return [
    row("inner locks", difference.inner, 5 * degree, angles, uneven(difference.inner, turn, short)),
    row("outer locks", difference.outer, 5 * degree, angles, uneven(difference.outer, turn, short)),
    row("circles", difference.turnRadius, 500, [], uneven(difference.turnRadius, far, tight)),
  ];
}

/** "right 3.2° short of left": what is off, in words. */
function uneven(
  value: number | null,
  size: (value: number) => string,
  words: (value: number, amount: string) => string,
): string {
  if (value === null) return "not known";
  const amount = size(Math.abs(value));
  return amount === size(0) ? "left and right are equal" : words(value, amount);
}

function plots(study: Study, columns: number, rows: number, how: "stacked" | "beside"): readonly Line[] {
  const { inputTravel } = study;
  // Left on the left: the driver's left is positive, and stands at the left end.
  const span = { from: inputTravel.left, to: -inputTravel.right, rows: curvePlaces };
  const all = study.steerTable(span).rows;
  const x = {
    from: -inputTravel.left,
    to: inputTravel.right,
    words: [`${study.inputKind} full left`, "full right"],
  } as const;
  const curve = (read: (row: SteerRow) => number | null) => all.map((row) => [-row.input, read(row)] as const);
  const inner = {
    title: " inner wheel, and its ideal in dashes",
    x,
    y: axisOver(
      all.flatMap((row) => [row.inner, row.idealInner]),
      0,
      (value) => degrees(value, 0),
    ),
    curves: [{ points: curve((row) => row.inner) }, { points: curve((row) => row.idealInner), stroke: dashed }],
  };
  const ackermann = {
    title: " Ackermann, with 0 and 100 % in dots",
    x,
    y: axisOver([100, ...all.map((row) => row.ackermann)], 0, (value) => `${fixed(value, 0)} %`),
    curves: [{ points: curve((row) => row.ackermann) }],
    linesAcross: [0, 100],
  };
  if (how === "beside") {
    const each = Math.floor(columns / 2);
    return beside(plotLines(inner, each - 1, rows), each, plotLines(ackermann, columns - each, rows));
  }
  const first = Math.ceil(rows / 2);
  return [...plotLines(inner, columns, first), ...plotLines(ackermann, columns, rows - first)];
}
