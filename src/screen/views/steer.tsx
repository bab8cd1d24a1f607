import { type Figure, figureOf } from "../../measures/figures.ts";
import type { SteerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import { degrees, fixed, inputPlace, type Length } from "../../output/words.ts";
import { formatLength } from "../../vehicle/units/format.ts";
import { inch } from "../../vehicle/units/length.ts";
import { dashed } from "../draw/canvas.ts";
import { axisOver, plotLines } from "../draw/plot.ts";
import { sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { cellWords } from "../view/cellWords.ts";
import { line as bar, gauge, needle } from "../view/gauge.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, Lines } from "../view/Lines.tsx";
import { roundSpan } from "../view/roundSpan.ts";
import { spaceFor } from "../view/space.ts";
import { type TableColumn, tableLines } from "../view/table.ts";
import { cursorKeys, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View } from "./view.ts";

const name = "Steer";
const tableColumns = 78;
const balanceRows = 3;
const mostRows = 21;
/** Places along the steering that a curve goes through. */
const curvePlaces = 61;
/** From these sizes on the table and the plots stand beside each other. */
const roomy = { columns: 118, rows: 18 } as const;

interface Column extends TableColumn<SteerRow> {
  readonly figure: Figure | undefined;
  /** The value with its unit, for the words below. */
  readonly tell: (row: SteerRow, length: Length) => string | null;
}

const degree = Math.PI / 180;

function angle(id: string, head: string, width: number, read: (row: SteerRow) => number | null): Column {
  const say = (row: SteerRow) => {
    const value = read(row);
    return value === null ? null : fixed(value / degree, 1);
  };
  const tell = (row: SteerRow) => {
    const value = read(row);
    return value === null ? null : degrees(value, 2);
  };
  return { figure: figureOf(id), head, width, say, tell };
}

function percent(id: string, head: string, width: number, read: (row: SteerRow) => number | null): Column {
  const say = (row: SteerRow) => {
    const value = read(row);
    return value === null ? null : fixed(value, 0);
  };
  const tell = (row: SteerRow) => {
    const value = read(row);
    return value === null ? null : `${fixed(value, 1)} %`;
  };
  return { figure: figureOf(id), head, width, say, tell };
}

function columnsOf(study: Study, model: Model): readonly Column[] {
  const style = styleOf(model.display);
  const size = (mm: number) => formatLength(mm, style);
  const isRack = study.inputKind === "rack";
  const place = (row: SteerRow) => (isRack ? size(row.input) : fixed(row.input / degree, 1));
  const radius = (row: SteerRow) => (row.turnRadius === null ? null : fixed(row.turnRadius / unitOf(model), 0));
  return [
    {
      figure: undefined,
      head: isRack ? `rack ${style.unit}` : "column °",
      width: 11,
      say: place,
      tell: (row, length) => (isRack ? length(row.input) : degrees(row.input)),
    },
    angle("steer", "left °", 8, (row) => row.left.steer),
    angle("steer", "right °", 8, (row) => row.right.steer),
    angle("inner", "inner °", 8, (row) => row.inner),
    angle("outer", "outer °", 8, (row) => row.outer),
    angle("idealInner", "ideal °", 8, (row) => row.idealInner),
    percent("percentOfIdealInner", "% ideal", 8, (row) => row.percentOfIdealInner),
    percent("ackermann", "Acker %", 8, (row) => row.ackermann),
    {
      figure: figureOf("turnRadius"),
      head: `radius ${style.unit}`,
      width: 10,
      say: radius,
      tell: (row) => (row.turnRadius === null ? null : `${radius(row)} ${style.unit}`),
    },
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
  keys: [...cursorKeys(name, size, "look along the table:"), pageKey(name, ["table", "plots"])],
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
  return cellWords(
    where,
    column.figure ?? places[study.inputKind],
    column.tell(row, length),
    pinnedWords(model, row, column),
  );
}

/** What the pinned car has at the same place; null where none is pinned, or its steering is moved by something else. */
function pinnedWords({ pin, bench, display }: Model, { input }: SteerRow, column: Column): string | null {
  const { study } = bench;
  if (pin === null || "refused" in pin.study || "refused" in study || pin.study.inputKind !== study.inputKind)
    return null;
  const [row] = pin.study.steerTable({ from: input, to: input, rows: 1 }).rows;
  return row === undefined ? null : column.tell(row, sayer(display));
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function isRoomy({ columns, rows }: Room): boolean {
  return columns >= roomy.columns && rows >= roomy.rows;
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  const title = heading(model, room.columns, "LOCK TO LOCK, at ride height", "LOCK TO LOCK");
  if ("refused" in study) return <Lines columns={room.columns} lines={[title]} />;
  const rows = room.rows - 1;
  const isWide = isRoomy(room);
  const seen = isWide
    ? beside(table(model, study), tableColumns, plots(study, room.columns - tableColumns, rows, "stacked"))
    : spotOf(model, name).page === 0
      ? table(model, study)
      : plots(study, room.columns, rows, "beside");
  return <Lines columns={room.columns} lines={[title, ...filled(seen, rows)]} />;
}

function table(model: Model, study: Study): readonly Line[] {
  return [
    ...tableLines(columnsOf(study, model), tableRows(model), spotWithin(model, name, size)),
    ...balance(study, model),
  ];
}

/** Left against right lock, for inners, outers and circles each: the mark leans to the side that turns further or wider. */
function balance({ locks }: Study, model: Model): readonly Line[] {
  const { difference } = locks;
  const say = (value: number | null, size: (value: number) => string, more: string) => {
    if (value === null) return "not known";
    const words = size(Math.abs(value));
    return words === size(0) ? "left and right are equal" : `${value > 0 ? "left" : "right"} ${words} ${more}`;
  };
  const turn = (value: number) => degrees(value);
  const far = (value: number) => `${fixed(value / unitOf(model), 0)} ${model.display.unit}`;
  const row = (label: string, value: number | null, reach: number, words: string): Line => {
    const marks = [{ at: 0, glyph: bar }, value === null ? null : { at: -value, glyph: needle }];
    return ` ${label.padEnd(13)}left ${gauge(25, -reach, reach, marks)} right  ${words}`;
  };
  return [
    row("inner locks", difference.inner, 5 * degree, say(difference.inner, turn, "further")),
    row("outer locks", difference.outer, 5 * degree, say(difference.outer, turn, "further")),
    row("circles", difference.turnRadius, 500, say(difference.turnRadius, far, "wider")),
  ];
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
