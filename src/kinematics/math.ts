import type { Point } from "./drawn.ts";

/** Lengths below this share of a car's size are nothing: a joint on its axis, an axis without a direction. */
export const NOTHING = 1e-9;

export function minus(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

export function plus(a: Point, b: Point): Point {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}

export function times(a: Point, s: number): Point {
  return { x: a.x * s, y: a.y * s, z: a.z * s };
}

export function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function cross(a: Point, b: Point): Point {
  return { x: a.y * b.z - a.z * b.y, y: a.z * b.x - a.x * b.z, z: a.x * b.y - a.y * b.x };
}

/** Length of a vector. Not Math.hypot: its last bits are the engine's own, and speed is lost. */
export function length(a: Point): number {
  return Math.sqrt(dot(a, a));
}

/** Writes a vector into three doubles of a buffer. */
export function put(buffer: Float64Array, at: number, a: Point): void {
  buffer[at] = a.x;
  buffer[at + 1] = a.y;
  buffer[at + 2] = a.z;
}
