import type { FrontEnd } from "./frontEnd.ts";
import { inputSpan, type SteerRow, steerTable } from "./steerTable.ts";

/** The ends of the input as locks. */
export interface Locks {
  /** The end of the input that turns the car left, at the file's travel; null when it cannot be told which that is. */
  readonly left: SteerRow | null;
  readonly right: SteerRow | null;
  /** Left lock less right lock; null where an end does not turn the wheels its own way, straight ahead lying at it or beyond. */
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
  const less = (a: number | null, b: number | null): number | null =>
    a === null || b === null || left.turn !== "left" || right.turn !== "right" ? null : a - b;
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
