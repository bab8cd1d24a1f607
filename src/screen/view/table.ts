import type { Line, Piece } from "./Lines.tsx";

/** A column of fixed width, so that nothing moves as the numbers change. */
export interface TableColumn<Row> {
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
  const head = ` ${columns.map(({ head: text, width }) => `${text} `.padStart(width)).join("")}`;
  return [
    [{ text: head, look: "strong" }],
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
