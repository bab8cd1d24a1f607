import type { Point } from "../../kinematics/drawn.ts";

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

/** How a body stands, worked out once: its triad as nine numbers, and its place. */
export interface Standing {
  readonly triad: Float64Array;
  readonly place: Point;
}

/** Three unit vectors, each square to the others, from a body's marks: u along the first, v toward the second, u × v. */
function putTriad({ first, second }: Marks, triad: Float64Array): void {
  const size = 1 / Math.sqrt(first.x * first.x + first.y * first.y + first.z * first.z);
  const [ux, uy, uz] = [first.x * size, first.y * size, first.z * size];
  const along = second.x * ux + second.y * uy + second.z * uz;
  const [sx, sy, sz] = [second.x - along * ux, second.y - along * uy, second.z - along * uz];
  const side = 1 / Math.sqrt(sx * sx + sy * sy + sz * sz);
  const [vx, vy, vz] = [sx * side, sy * side, sz * side];
  triad[0] = ux;
  triad[1] = uy;
  triad[2] = uz;
  triad[3] = vx;
  triad[4] = vy;
  triad[5] = vz;
  triad[6] = uy * vz - uz * vy;
  triad[7] = uz * vx - ux * vz;
  triad[8] = ux * vy - uy * vx;
}

/** How a body with these marks stands. */
export function standing(marks: Marks): Standing {
  const triad = new Float64Array(9);
  putTriad(marks, triad);
  return { triad, place: marks.place };
}

const triad = new Float64Array(9);

/**
 * The motion that takes a body from one standing to that of other marks: R = Σ wᵢ′ wᵢᵀ over the triad w of each, t = q′ − R q.
 * Elementary geometry.
 */
export function moved(from: Standing, to: Marks, motion: Motion): void {
  const before = from.triad;
  putTriad(to, triad);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++)
      motion[3 * row + column] =
        triad[row] * before[column] + triad[3 + row] * before[3 + column] + triad[6 + row] * before[6 + column];
  }
  const { x, y, z } = from.place;
  motion[9] = to.place.x - (motion[0] * x + motion[1] * y + motion[2] * z);
  motion[10] = to.place.y - (motion[3] * x + motion[4] * y + motion[5] * z);
  motion[11] = to.place.z - (motion[6] * x + motion[7] * y + motion[8] * z);
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
