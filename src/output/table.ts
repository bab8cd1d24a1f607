import { pieces } from "../vehicle/units/pieces.ts";

/** Text in columns. A row of fewer cells than columns is a remark: what is left of its line is its last cell. */
export type Cells = readonly string[];

/**
 * Lines of a table: headings, a rule and rows, columns two spaces apart. `left` names the columns (from 0) that hold
 * words; the others hold numbers and end in line.
 */
export function table(headings: readonly Cells[], rows: readonly Cells[], left: readonly number[] = []): string[] {
  const columns = headings[0].length;
  const whole = [...headings, ...rows.filter((row) => row.length === columns)];
  const widths = headings[0].map((_, i) => Math.max(...whole.map((row) => row[i].length)));
  for (const row of rows) if (row.length > 1) widths[0] = Math.max(widths[0], row[0].length);
  const line = (cells: Cells) =>
    cells
      .map((cell, i) => {
        if (cells.length < columns && i === cells.length - 1) return cell;
        return left.includes(i) ? cell.padEnd(widths[i]) : cell.padStart(widths[i]);
      })
      .join("  ")
      .trimEnd();
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  return [...headings.map(line), rule, ...rows.map(line)];
}

/** Text keeps this much narrower than the narrowest usual terminal. */
export const WIDTH = 78;

/**
 * Words broken into lines no wider than `width`, never within a number, its fraction and its unit: the first begins with
 * `first`, the others with spaces to `indent`.
 */
export function wrap(words: string, width: number, first = "", indent = first.length): string[] {
  const lines: string[] = [];
  let line = first;
  let begun = false;
  for (const word of pieces(words)) {
    if (begun && line.length + 1 + word.length > width) {
      lines.push(line);
      line = " ".repeat(indent) + word;
    } else line += begun ? ` ${word}` : word;
    begun = true;
  }
  lines.push(line);
  return lines;
}
