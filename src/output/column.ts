import type { FigureKind } from "../measures/figure.ts";
import { figureOf } from "../measures/figures.ts";
import type { InputKind } from "../measures/front.ts";

/** One column of a table, described once for CSV and JSON, and shown in text under a short heading. */
export interface Column<Row> {
  /** Its place in a row of JSON, such as left and toe; "left.toe" in CSV. */
  readonly path: readonly string[];
  /** "word" is a word as it stands, without a unit. */
  readonly kind: FigureKind | "word";
  /** Which way is positive; "" where it has no sign. */
  readonly sign: string;
  /** In mm, rad, rad/mm or percent. */
  readonly read: (row: Row) => number | string | null;
}

/** A column that shows a figure of the list, whose kind and sign it has; the figure's id ends the path unless given. */
export function figureColumn<Row>(
  path: readonly string[],
  read: (row: Row) => number | string | null,
  id: string = path[path.length - 1],
): Column<Row> {
  const figure = figureOf(id);
  if (figure === undefined) throw new Error(`no figure is called ${id}`);
  return { path, kind: figure.kind, sign: figure.sign, read };
}

/** What steers: the rack's place, or the column's angle. Its key says which. */
export function inputColumn<Row extends { readonly input: number }>(kind: InputKind): Column<Row> {
  return kind === "rack"
    ? { path: ["rack"], kind: "length", sign: "to the left positive", read: (row) => row.input }
    : { path: ["column"], kind: "angle", sign: "turned left positive", read: (row) => row.input };
}

/** An input alone, as JSON has it beside its key. */
export function inputFigure(kind: InputKind): FigureKind {
  return kind === "rack" ? "length" : "angle";
}

/** The column of that path, joined by dots, in a list. */
export function columnOf<Row>(columns: readonly Column<Row>[], path: string): Column<Row> {
  const found = columns.find((column) => column.path.join(".") === path);
  if (found === undefined) throw new Error(`no column is called ${path}`);
  return found;
}
