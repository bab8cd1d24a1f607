import type { Point } from "../../src/kinematics/drawn.ts";

/** Plain vectors for the tests' own solutions: clear before fast, and nothing shared with the kernel. */
export type Vector = Point;

export const point = (x: number, y: number, z: number): Point => ({ x, y, z });
export const plus = (a: Vector, b: Vector): Vector => point(a.x + b.x, a.y + b.y, a.z + b.z);
export const minus = (a: Vector, b: Vector): Vector => point(a.x - b.x, a.y - b.y, a.z - b.z);
export const times = (a: Vector, s: number): Vector => point(a.x * s, a.y * s, a.z * s);
export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y + a.z * b.z;
export const cross = (a: Vector, b: Vector): Vector =>
  point(a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x);
export const length = (a: Vector): number => Math.hypot(a.x, a.y, a.z);
export const unit = (a: Vector): Vector => times(a, 1 / length(a));
export const distance = (a: Point, b: Point): number => length(minus(a, b));

/** Rodrigues: v turned about the direction of `turn` by its length, rad. */
export function rotated(v: Vector, turn: Vector): Vector {
  const angle = length(turn);
  if (angle === 0) return v;
  const k = times(turn, 1 / angle);
  const across = times(cross(k, v), Math.sin(angle));
  const along = times(k, dot(k, v) * (1 - Math.cos(angle)));
  return plus(plus(times(v, Math.cos(angle)), across), along);
}

export const degrees = (radians: number): number => (radians * 180) / Math.PI;
export const radians = (inDegrees: number): number => (inDegrees * Math.PI) / 180;
