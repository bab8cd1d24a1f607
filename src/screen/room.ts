import type { Model } from "./model.ts";

/** The least terminal that the bench fits in. */
export const least = { columns: 80, rows: 24 } as const;

/** Whether the bench can be drawn; where it cannot, nothing on it may be changed unseen. */
export function hasRoom({ columns, rows }: Pick<Model, "columns" | "rows">): boolean {
  return columns >= least.columns && rows >= least.rows;
}

/** The least terminal that the forms for readings fit in: one can be opened by itself, the other is taken to the car. */
const leastOfForm = { columns: 60, rows: 20 } as const;

/** Whether what has the keyboard can be drawn though the bench cannot. */
export function hasRoomForForm({ columns, rows, focus }: Pick<Model, "columns" | "rows" | "focus">): boolean {
  const isForm = ["survey", "points", "gauges", "matched"].includes(focus.on);
  return isForm && columns >= leastOfForm.columns && rows >= leastOfForm.rows;
}
