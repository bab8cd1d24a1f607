import type { CheckItem } from "../check/item.ts";
import type { CheckReport } from "../check/report.ts";

/** A checked thing of every car, in their order; null where a car has none of it. */
export interface CheckRow {
  readonly id: string;
  readonly items: readonly (CheckItem | null)[];
}

/** What was checked of several cars, each thing on one row, the same or not. */
export function checkRows(reports: readonly CheckReport[]): readonly CheckRow[] {
  const all = reports.map(({ items }) => new Map(items.map((item) => [item.id, item])));
  const ids = new Set(all.flatMap((items) => [...items.keys()]));
  return [...ids].map((id) => ({ id, items: all.map((items) => items.get(id) ?? null) }));
}
