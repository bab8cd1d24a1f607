import { pieces } from "../../vehicle/units/pieces.ts";
import { WIDTH, wrap } from "../table.ts";

/** Cells of a table's columns, heads first, and which columns hold words. */
export interface Columns {
  readonly heads: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly words: readonly number[];
}

const GAP = "  ";
/** A column of words is not made narrower than this. */
const NARROWEST = 14;

const longestWord = (text: string) => Math.max(...pieces(text).map((word) => word.length));

/** The widths that fit the page: columns as wide as they need, then the widest of those that can be wrapped ever narrower. */
function widthsOf({ heads, rows, words }: Columns): readonly number[] {
  const natural = heads.map((head, i) => Math.max(head.length, ...rows.map((row) => row[i]?.length ?? 0)));
  const least = heads.map((head, i) => {
    const cells = rows.map((row) => row[i] ?? "");
    const whole = Math.max(0, ...cells.map((cell) => (words.includes(i) ? longestWord(cell) : cell.length)));
    return Math.max(longestWord(head), whole, words.includes(i) ? Math.min(NARROWEST, natural[i] ?? 0) : 0);
  });
  const widths = [...natural];
  const total = () => widths.reduce((sum, width) => sum + width, 0) + GAP.length * (widths.length - 1);
  while (total() > WIDTH) {
    const spare = widths.map((width, i) => (width > (least[i] ?? 0) ? width : 0));
    const widest = spare.indexOf(Math.max(...spare));
    if ((spare[widest] ?? 0) === 0) break;
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

/** A table as lines: words are broken within their columns where it would be too wide for the page. */
export function columnLines(columns: Columns): readonly string[] {
  const { heads, rows, words } = columns;
  const widths = widthsOf(columns);
  const laid = (cells: readonly string[], bottom: boolean): readonly string[] => {
    const broken = cells.map((cell, i) => wrap(cell, widths[i] ?? 0));
    const high = Math.max(...broken.map((lines) => lines.length));
    return Array.from({ length: high }, (_, line) =>
      broken
        .map((lines, i) => {
          const text = lines[bottom ? line - (high - lines.length) : line] ?? "";
          return words.includes(i) ? text.padEnd(widths[i] ?? 0) : text.padStart(widths[i] ?? 0);
        })
        .join(GAP)
        .trimEnd(),
    );
  };
  const rule = widths.map((width) => "-".repeat(width)).join(GAP);
  return [...laid(heads, true), rule, ...rows.flatMap((row) => laid(row, false))];
}
