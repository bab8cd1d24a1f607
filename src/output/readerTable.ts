import type { LengthUnit } from "../vehicle/car.ts";
import type { Column } from "./column.ts";
import { unitName, written } from "./numbers.ts";
import { table } from "./table.ts";

/** A column of a table for reading, with the short words above it, a line each. */
export interface Headed<Row> {
  readonly head: readonly string[];
  readonly column: Column<Row>;
}

/**
 * Lines of a table for reading: headings, units, rows. Where there is no value a dash stands; a row that has a remark
 * (it does not close) shows its first cell and the remark.
 */
export function readerTable<Row>(
  headed: readonly Headed<Row>[],
  rows: readonly Row[],
  unit: LengthUnit,
  remark: (row: Row) => string | null,
): string[] {
  const depth = Math.max(...headed.map(({ head }) => head.length));
  const headings = Array.from({ length: depth }, (_, line) =>
    headed.map(({ head }) => head[line - depth + head.length] ?? ""),
  );
  const units = headed.map(({ column }) => (column.kind === "word" ? "" : unitName(column.kind, unit)));
  const words = headed.flatMap(({ column }, i) => (column.kind === "word" ? [i] : []));
  const cells = rows.map((row) => {
    const said = remark(row);
    const shown = headed.map(({ column }) => cell(column, row, unit));
    return said === null ? shown : [shown[0], said];
  });
  return table([...headings, units], cells, words);
}

function cell<Row>({ kind, read }: Column<Row>, row: Row, unit: LengthUnit): string {
  const value = read(row);
  if (value === null) return "-";
  return typeof value === "string" || kind === "word" ? String(value) : written(value, kind, unit);
}

/** Which way is positive, a line for each way: "toe, change: toe-in positive", the same for both wheels. */
export function signs(headed: readonly Headed<never>[]): string[] {
  const bySign = new Map<string, string[]>();
  for (const { head, column } of headed) {
    if (column.sign === "") continue;
    const names = bySign.get(column.sign) ?? [];
    const name = nameOf(head);
    if (!names.includes(name)) names.push(name);
    bySign.set(column.sign, names);
  }
  return [...bySign].map(([sign, names]) => `${names.join(", ")}: ${sign}`);
}

/** A heading's lines as a name: a word broken over them put together, without the wheel it belongs to. */
function nameOf(head: readonly string[]): string {
  return head
    .join(" ")
    .replace("- ", "")
    .replace(/^(left|right) /, "");
}
