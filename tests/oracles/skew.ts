import type { Point } from "../../src/kinematics/drawn.ts";
import { cross, dot, minus, plus, times } from "./vectors.ts";

/** Coordinates of a place in a rigid body, from three places of it: along both legs from the first, and along their cross product. */
export type Skew = readonly [number, number, number];

export function skewCoordinates(origin: Point, first: Point, second: Point, place: Point): Skew {
  const u = minus(first, origin);
  const v = minus(second, origin);
  const n = cross(u, v);
  const d = minus(place, origin);
  const square = dot(n, n);
  return [dot(cross(d, v), n) / square, dot(cross(u, d), n) / square, dot(d, n) / square];
}

/** The place with those coordinates: linear in each coordinate of each of the three. */
export function fromSkew(origin: Point, first: Point, second: Point, [a, b, c]: Skew): Point {
  const u = minus(first, origin);
  const v = minus(second, origin);
  return plus(origin, plus(plus(times(u, a), times(v, b)), times(cross(u, v), c)));
}

/** How far two points are from keeping a distance, mm to first order, and quadratic in the coordinates. */
export function off(a: Point, b: Point, held: number): number {
  const apart = minus(a, b);
  return (dot(apart, apart) - held * held) / (2 * held);
}

export function components({ x, y, z }: Point): number[] {
  return [x, y, z];
}
