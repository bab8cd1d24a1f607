import type { Point } from "./drawn.ts";
import { cross, dot, length, minus, NOTHING, plus, put, times } from "./math.ts";

/**
 * The circle of a point that turns about a fixed axis: center + u cos θ + v sin θ, θ = 0 as drawn, θ positive by the
 * right hand about the axis.
 */
export interface Circle {
  readonly center: Point;
  readonly u: Point;
  readonly v: Point;
}

/** Doubles that a circle takes in a buffer, and where its u and v start in them. */
export const enum CircleSlot {
  Center = 0,
  U = 3,
  V = 6,
  Stride = 9,
}

/** The circle of a point about the axis through `on` along `axis`; in words where there is no axis, or no radius. */
export function circleAbout(on: Point, axis: Point, point: Point): Circle | "no-axis" | "on-axis" {
  const span = length(axis);
  const arm = minus(point, on);
  const reach = length(arm);
  if (!(span > NOTHING * reach)) return "no-axis";
  const n = times(axis, 1 / span);
  const center = plus(on, times(n, dot(arm, n)));
  const u = minus(point, center);
  if (!(length(u) > NOTHING * reach)) return "on-axis";
  return { center, u, v: cross(n, u) };
}

/** Writes a circle into CircleSlot.Stride doubles of a buffer. */
export function putCircle(buffer: Float64Array, at: number, circle: Circle): void {
  put(buffer, at + CircleSlot.Center, circle.center);
  put(buffer, at + CircleSlot.U, circle.u);
  put(buffer, at + CircleSlot.V, circle.v);
}

/** Writes how a circle's point moves per rad at an angle, from the circle in a buffer into three doubles of another. */
export function putCircleRate(
  circles: Float64Array,
  circle: number,
  cos: number,
  sin: number,
  work: Float64Array,
  to: number,
): void {
  for (let i = 0; i < 3; i++)
    work[to + i] = circles[circle + CircleSlot.V + i] * cos - circles[circle + CircleSlot.U + i] * sin;
}
