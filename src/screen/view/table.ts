import type { Line, Piece } from "./Lines.tsx";

/** A column of fixed width, so that nothing moves as the numbers change. */
export interface TableColumn<Row> {
  /** Above the heading, where one line of it is too narrow. */
  readonly over?: string;
  /** With the unit, since the numbers below are bare. */
  readonly head: string;
  readonly width: number;
  /** The bare number; null where there is none. */
  readonly say: (row: Row) => string | null;
}

/** A table in lines, its heading first. The row under the cursor has a mark before it, the cell brackets around it. */
export function tableLines<Row>(
  columns: readonly TableColumn<Row>[],
  rows: readonly Row[],
  cursor: { readonly row: number; readonly column: number } | null,
): readonly Line[] {
  const heading = (of: (column: TableColumn<Row>) => string): Line => [
    { text: ` ${columns.map((column) => `${of(column)} `.padStart(column.width)).join("")}`, look: "strong" },
  ];
  return [
    ...(columns.some(({ over }) => over !== undefined) ? [heading(({ over = "" }) => over)] : []),
    heading(({ head }) => head),
    ...rows.map((row, at): Line => {
      const isHere = cursor?.row === at;
      const cells = columns.map(({ say, width }, column): Piece => {
        const text = say(row) ?? "-";
        if (!isHere || cursor.column !== column) return `${text} `.padStart(width);
        return { text: `[${text}]`.padStart(width), look: "marked" };
      });
      return [isHere ? ">" : " ", ...cells];
    }),
  ];
}

/** A column of numbers: what it reads, and how it writes one without its unit. */
export interface NumberColumn<Row> extends TableColumn<Row> {
  readonly read: (row: Row) => number | null;
  readonly bare: (value: number) => string;
  /** What follows the bare number: its unit. */
  readonly unit: string;
}

/** How much a number changed, with its sign; "same" where nothing of it shows. */
export function changeWords(now: number | null, was: number | null, bare: (size: number) => string): string | null {
  if (now === null || was === null) return null;
  const size = bare(Math.abs(now - was));
  return size === bare(0) ? "same" : `${now > was ? "+" : "-"}${size}`;
}

/** Columns of numbers as how much each changed since rows of the same places; the first, the place, stays itself. */
export function changeColumns<Row>(
  columns: readonly NumberColumn<Row>[],
  before: (row: Row) => Row | undefined,
): readonly TableColumn<Row>[] {
  return columns.map((column, at) => {
    if (at === 0) return column;
    const { read, bare } = column;
    const say = (row: Row) => {
      const was = before(row);
      return was === undefined ? null : changeWords(read(row), read(was), bare);
    };
    return { ...column, say };
  });
}
