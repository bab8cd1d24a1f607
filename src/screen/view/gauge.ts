/** A mark on a gauge. Of two in one place the later one is seen. */
export interface Mark {
  readonly at: number;
  readonly glyph: string;
}

/** The glyphs of marks: where something is, the line that it is compared with, and a level of a target. */
export const needle = "●";
export const line = "┼";
export const level = "╵";

/**
 * A text gauge `width` columns wide from `low` to `high`, ends included: "├───┼──●─┤". Marks beyond an end stand on it as
 * an arrow that points there. A value that is not known has
 * no mark, and a level beyond an end is not seen.
 */
export function gauge(width: number, low: number, high: number, marks: readonly (Mark | null)[]): string {
  const cells = ["├", ...Array.from({ length: Math.max(0, width - 2) }, () => "─"), "┤"];
  for (const mark of marks) {
    if (mark === null || !Number.isFinite(mark.at)) continue;
    const share = (mark.at - low) / (high - low);
    const isInside = share > 0 && share < 1;
    if (mark.glyph === level && !isInside) continue;
    if (share < 0) cells[0] = "◄";
    else if (share > 1) cells[width - 1] = "►";
    else cells[Math.round(share * (width - 1))] = mark.glyph;
  }
  return cells.join("");
}
