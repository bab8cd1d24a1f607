import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, length, minus, times } from "../../kinematics/math.ts";
import { drawnSpin } from "../../kinematics/upright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { axisEnds } from "../../vehicle/starting/steering-axis.ts";
import { numberAt, pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";

/**
 * Where a tie rod's hole is on its upright, by what a tape, a square and an angle finder reach; as drawn, at ride height on
 * level ground. Lengths mm, angles rad.
 */
export interface TabPlace {
  /** From the middle of the hole square to the king-pin line: the steering arm. */
  readonly toKingPin: number;
  /** Straight to the lower joint's centre, and to the upper one's or a strut's top mount. */
  readonly toLower: number;
  readonly toUpper: number;
  /** Square to the spindle's centre line, as long as need be. */
  readonly toSpindle: number;
  /** Along the spindle from the plane of the rim's inner edge, inboard positive; null where the rim's width is not given. */
  readonly insideRim: number | null;
  /** Its place on the car: ahead of the axle line, out from the centreline, above the ground. */
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
  /**
   * The line from the lower joint to the hole: above level, and inboard of straight back (of straight ahead for a hole that
   * is ahead).
   */
  readonly rise: number;
  readonly inboard: number;
  /** Whether the hole is behind the lower joint. */
  readonly behind: boolean;
  /** A plate square to the king-pin line: its front edge higher, and its outer edge higher, than the opposite one. */
  readonly frontHigher: number;
  readonly outerHigher: number;
}

const rimWidth = numberAt("rim.width");

/** Distance of p from the line through a along the unit vector u: |(p − a) × u|. */
const offLine = (p: Point, a: Point, u: Point) => length(cross(minus(p, a), u));

/**
 * The place of a wheel's tie-rod hole, from the drawing alone (elementary vectors in the corner's frame: x ahead, y out, z
 * up). With k the unit king-pin line, a plate square to it rises by k's own leans: atan(−k_x / k_z) to the front, atan(−k_y /
 * k_z) outward.
 */
export function tabPlaceOf({ car, drawn }: Pick<Study, "car" | "drawn">, wheel: Wheel): TabPlace {
  const { numbers, form } = car;
  const [lowerId, upperId] = axisEnds[form.linkage];
  const place = (id: string) => pointAt(`${wheel}.${id}`)(numbers);
  const [hole, lower, upper, hub] = [place("tie-rod.outer"), place(lowerId), place(upperId), place("wheel.center")];
  const line = minus(upper, lower);
  const k = times(line, 1 / length(line));
  const spin = drawnSpin(drawn[wheel]);
  const width = rimWidth(numbers);
  const arm = minus(hole, lower);
  const inward = -dot(minus(hole, hub), spin);
  return {
    toKingPin: offLine(hole, lower, k),
    toLower: length(arm),
    toUpper: length(minus(hole, upper)),
    toSpindle: offLine(hole, hub, spin),
    insideRim: width > 0 ? inward - width / 2 : null,
    ahead: hole.x,
    out: hole.y,
    up: hole.z,
    rise: Math.atan2(arm.z, Math.hypot(arm.x, arm.y)),
    inboard: Math.atan2(-arm.y, Math.abs(arm.x)),
    behind: arm.x <= 0,
    frontHigher: Math.atan2(-k.x, k.z),
    outerHigher: Math.atan2(-k.y, k.z),
  };
}
