/**
 * Rows of a table: from and to included, counted; a single row stands at from. They are evenly spaced, unless a step is
 * given that does not divide the range: those between the ends then stand at its whole multiples.
 */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
  readonly step?: number;
}

/** The place of row i, counted from 0: never accumulated, both ends exact. */
export function placeOf(span: Span, i: number): number {
  const { from, to, step } = span;
  const steps = span.rows - 1;
  if (steps < 1) return from;
  if (step === undefined || i === 0 || i === steps) return (from * (steps - i) + to * i) / steps;
  return from < to ? (multipleAfter(from, step) + i - 1) * step : (multipleBefore(from, step) - i + 1) * step;
}

/** From and to, and between them every whole multiple of a step above 0. */
export function steppedSpan(from: number, to: number, step: number): Span {
  const between = multipleBefore(Math.max(from, to), step) - multipleAfter(Math.min(from, to), step) + 1;
  return { from, to, rows: Math.max(0, between) + 2, step };
}

/** A place that was typed in fractions or another unit may be a hair off a multiple: it is one. */
const hair = 1e-9;

const multipleAfter = (place: number, step: number) => Math.floor(place / step + hair) + 1;

const multipleBefore = (place: number, step: number) => Math.ceil(place / step - hair) - 1;

/** One value a side. */
export interface Pair<T> {
  readonly left: T;
  readonly right: T;
}
