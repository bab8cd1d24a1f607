import type { FrontEnd } from "./frontEnd.ts";
import { inputSpan, type SteerRow, steerTable } from "./steerTable.ts";

/** The ends of the input as locks. */
export interface Locks {
  /** The end of the input that turns the car left, at the file's travel; null when it cannot be told which that is. */
  readonly left: SteerRow | null;
  readonly right: SteerRow | null;
  /** Left lock less right lock. */
  readonly difference: {
    readonly inner: number | null;
    readonly outer: number | null;
    readonly turnRadius: number | null;
  };
}

/** Both locks of a front end, at travel 0. */
export function locksOf(end: FrontEnd): Locks {
  if (end.inputLeftTurns === null) {
    return { left: null, right: null, difference: { inner: null, outer: null, turnRadius: null } };
  }
  const ends = steerTable(end, { ...inputSpan(end), rows: 2 }).rows;
  const [left, right] = end.inputLeftTurns === "left" ? [ends[1], ends[0]] : [ends[0], ends[1]];
  return {
    left,
    right,
    difference: {
      inner: less(left.inner, right.inner),
      outer: less(left.outer, right.outer),
      turnRadius: less(left.turnRadius, right.turnRadius),
    },
  };
}

function less(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b;
}
