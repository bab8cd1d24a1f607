import type { LengthUnit } from "../vehicle/car.ts";
import type { Column } from "./column.ts";
import { inUnits } from "./numbers.ts";
import { printableJson } from "./printable.ts";

/** What a report in JSON is made of. There is no undefined and no NaN: what cannot be told is null. */
export type Json = string | number | boolean | null | readonly Json[] | { readonly [key: string]: Json };

/** A report as JSON text, two spaces a level, with a newline at its end. A terminal it is shown on is not moved by it. */
export function jsonText(report: Json): string {
  return `${printableJson(JSON.stringify(report, null, 2))}\n`;
}

/** A row as its columns' paths lay it out, in the reader's units, not rounded. */
export function jsonRow<Row>(columns: readonly Column<Row>[], row: Row, unit: LengthUnit): { [key: string]: Json } {
  const out: Nest = {};
  for (const { path, kind, read } of columns) {
    const value = read(row);
    const told = typeof value === "number" && kind !== "word" ? inUnits(value, kind, unit) : value;
    innermost(out, path.slice(0, -1))[path[path.length - 1]] = told;
  }
  return out;
}

interface Nest {
  [key: string]: string | number | null | Nest;
}

/** The object at a path below another, made where it is not there yet. */
function innermost(nest: Nest, path: readonly string[]): Nest {
  let at = nest;
  for (const key of path) {
    const there = at[key];
    const next: Nest = typeof there === "object" && there !== null ? there : {};
    at[key] = next;
    at = next;
  }
  return at;
}
