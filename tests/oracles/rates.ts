import type { Point } from "../../src/kinematics/drawn.ts";
import { Side } from "../../src/kinematics/slots.ts";
import type { SideName } from "./corner.ts";
import { pointIn, startOf } from "./kernel.ts";
import type { Plan } from "./known.ts";
import { cross, minus, plus, type Vector } from "./vectors.ts";

/** Velocity of the upright's material at a place, per mm of wheel travel, from a solved pose: v = v_lower + omega x (place - lower). */
export function velocityAt(poses: Float64Array, side: SideName, place: Point): Vector {
  const at = startOf(side);
  const arm = minus(place, pointIn(poses, at + Side.Lower));
  return plus(pointIn(poses, at + Side.LowerRate), cross(pointIn(poses, at + Side.Turn), arm));
}

/** Where, in the front view, the line through a place square to its velocity comes to a given lateral place: its height there, mm. */
export function heightOfNormal(place: Point, velocity: Vector, out: number): number {
  return place.z - ((out - place.y) * velocity.y) / velocity.z;
}

/** Where the normals of two places' velocities cross in the front view: the instant centre as [out, up], mm. */
export function crossingOfNormals(a: Point, va: Vector, b: Point, vb: Vector): Plan {
  const rightA = a.y * va.y + a.z * va.z;
  const rightB = b.y * vb.y + b.z * vb.z;
  const det = va.y * vb.z - va.z * vb.y;
  return [(rightA * vb.z - rightB * va.z) / det, (va.y * rightB - vb.y * rightA) / det];
}
