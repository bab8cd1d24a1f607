import type { LengthUnit } from "../vehicle/car.ts";
import type { Column } from "./column.ts";
import { inUnits, unitName } from "./numbers.ts";
import { printable } from "./printable.ts";

/**
 * Rows as CSV (RFC 4180): a heading with units, lines ended by CR LF, a field left empty where there is no value.
 * Numbers are not rounded.
 */
export function csv<Row>(columns: readonly Column<Row>[], rows: readonly Row[], unit: LengthUnit): string {
  const heading = columns.map(({ path, kind }) => {
    const name = path.join(".");
    return kind === "word" ? name : `${name} (${unitName(kind, unit)})`;
  });
  const lines = rows.map((row) =>
    columns.map(({ kind, read }) => {
      const value = read(row);
      if (value === null) return "";
      return typeof value === "string" || kind === "word" ? String(value) : String(inUnits(value, kind, unit));
    }),
  );
  return [heading, ...lines].map((fields) => `${fields.map(field).join(",")}\r\n`).join("");
}

/**
 * One field, quoted where it must be, what would act on a terminal written out. A text that a spreadsheet would run as a formula is kept a text by an apostrophe
 * in front; numbers are none of those, a minus included.
 */
export function field(text: string): string {
  const shown = text.replace(/[^\r\n\t]+/g, printable);
  const safe = /^[=+\-@\t\r]/.test(shown) && Number.isNaN(Number(shown)) ? `'${shown}` : shown;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
