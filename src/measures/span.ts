/** Rows of a table: from and to included, evenly spaced, counted; a single row stands at from. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
}

/** The place of row i, counted from 0: never accumulated, both ends exact. */
export function placeOf(span: Span, i: number): number {
  const steps = span.rows - 1;
  return steps < 1 ? span.from : (span.from * (steps - i) + span.to * i) / steps;
}

/** One value a side. */
export interface Pair<T> {
  readonly left: T;
  readonly right: T;
}
