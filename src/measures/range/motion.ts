import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, minus, times } from "../../kinematics/math.ts";

/**
 * A rigid motion from the drawn place of a body to its place in a pose, in a corner's frame: p′ = R p + t, R row by row and
 * then t, twelve doubles.
 */
export type Motion = Float64Array;

/** The motion of what does not move. */
export function still(): Motion {
  return Float64Array.of(1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0);
}

/** Two directions and a place that are fixed in a body: enough to know how it stands. The first is kept exactly. */
export interface Marks {
  readonly first: Point;
  readonly second: Point;
  readonly place: Point;
}

function unit(a: Point): Point {
  return times(a, 1 / Math.sqrt(dot(a, a)));
}

type Triad = readonly [Point, Point, Point];

/** How a body stands, worked out once: three unit vectors, each square to the others, and its place. */
export interface Standing {
  readonly triad: Triad;
  readonly place: Point;
}

/** How a body with these marks stands. */
export function standing(marks: Marks): Standing {
  return { triad: triad(marks), place: marks.place };
}

function triad({ first, second }: Marks): Triad {
  const u = unit(first);
  const v = unit(minus(second, times(u, dot(second, u))));
  return [u, v, cross(u, v)];
}

/**
 * The motion that takes a body's marks from one standing to another: R = Σ wᵢ′ wᵢᵀ over the triad w of each, t = q′ − R q.
 * Elementary geometry.
 */
export function moved(from: Standing, to: Marks, motion: Motion): void {
  const before = from.triad;
  const after = triad(to);
  const keys = ["x", "y", "z"] as const;
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let i = 0; i < 3; i++) sum += after[i][keys[row]] * before[i][keys[column]];
      motion[3 * row + column] = sum;
    }
  }
  const { x, y, z } = from.place;
  for (let row = 0; row < 3; row++) {
    const at = 3 * row;
    motion[9 + row] = to.place[keys[row]] - (motion[at] * x + motion[at + 1] * y + motion[at + 2] * z);
  }
}

/** Where a motion takes a place. */
export function placeMoved(motion: Motion, p: Point): Point {
  const d = turned(motion, p);
  return { x: d.x + motion[9], y: d.y + motion[10], z: d.z + motion[11] };
}

/** Where a motion turns a direction. */
export function turned(m: Motion, d: Point): Point {
  return {
    x: m[0] * d.x + m[1] * d.y + m[2] * d.z,
    y: m[3] * d.x + m[4] * d.y + m[5] * d.z,
    z: m[6] * d.x + m[7] * d.y + m[8] * d.z,
  };
}

/** The direction that a motion turns into d: R is a rotation, so its transpose turns back. */
export function turnedBack(m: Motion, d: Point): Point {
  return {
    x: m[0] * d.x + m[3] * d.y + m[6] * d.z,
    y: m[1] * d.x + m[4] * d.y + m[7] * d.z,
    z: m[2] * d.x + m[5] * d.y + m[8] * d.z,
  };
}
