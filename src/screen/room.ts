import type { Model } from "./model.ts";

/** The least terminal that the bench fits in. */
export const least = { columns: 80, rows: 24 } as const;

/** Whether the bench can be drawn; where it cannot, nothing on it may be changed unseen. */
export function hasRoom({ columns, rows }: Pick<Model, "columns" | "rows">): boolean {
  return columns >= least.columns && rows >= least.rows;
}
