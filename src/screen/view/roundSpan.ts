import type { Span } from "../../measures/span.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import { inch } from "../../vehicle/units/length.ts";

const steps = {
  in: [1 / 8, 1 / 4, 1 / 2, 1].map((size) => size * inch),
  mm: [1, 2, 5, 10, 20, 25, 50],
  degrees: [1, 2, 5, 10, 15, 20, 30].map((size) => (size * Math.PI) / 180),
} satisfies Record<LengthUnit | "degrees", readonly number[]>;

/**
 * A span with the same ends and no more rows, its rows on round places where the ends allow it: 1/2 in apart rather
 * than 13/32. Where they do not, an odd number of rows, so that the middle has one.
 */
export function roundSpan({ from, to, rows }: Span, unit: LengthUnit | "degrees"): Span {
  const size = Math.abs(to - from);
  const whole = (value: number) => Math.abs(value - Math.round(value)) < 1e-6;
  const step = steps[unit].find((each) => size / each + 1 <= rows + 1e-6 && whole(size / each) && whole(from / each));
  if (step !== undefined) return { from, to, rows: Math.round(size / step) + 1 };
  return { from, to, rows: rows % 2 === 0 ? rows - 1 : rows };
}
