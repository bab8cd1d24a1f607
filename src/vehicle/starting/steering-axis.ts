import type { LinkageName } from "../linkages.ts";
import type { Wheel } from "../words.ts";
import { type At, apart, between, numberIn, pointIn } from "./place.ts";

/** The ends of a wheel's steering axis as drawn: joint to joint, or of a strut from the joint to the top mount. */
export interface SteeringAxis {
  readonly lower: At;
  readonly upper: At;
}

/** Of each linkage, the corner's points that the steering axis goes through. */
export const axisEnds: Readonly<Record<LinkageName, readonly [lower: string, upper: string]>> = {
  "double-arm": ["lower-arm.joint", "upper-arm.joint"],
  "trailing-arms": ["lower-arm.joint", "upper-arm.joint"],
  strut: ["lower-arm.joint", "strut.top"],
  "pivoting-beam": ["king-pin.lower", "king-pin.upper"],
  "fixed-kingpin": ["king-pin.lower", "king-pin.upper"],
};

/** An upright is about this share of the tyre's radius tall, joint to joint; a strut, up to its mount, this. */
const uprightShare = 0.75;
const strutShare = 1.9;

/** A wheel's steering axis, from a car's numbers. */
export function steeringAxisOf(numbers: Float64Array, linkage: LinkageName, wheel: Wheel): SteeringAxis {
  const [lower, upper] = axisEnds[linkage];
  return { lower: pointIn(numbers, `${wheel}.${lower}`), upper: pointIn(numbers, `${wheel}.${upper}`) };
}

/** The upper joint that an upright has on that axis: a strut's top mount is far above where a joint would be. */
export function upperJoint({ lower, upper }: SteeringAxis, from: LinkageName, numbers: Float64Array): At {
  if (from !== "strut") return upper;
  return between(lower, upper, Math.min(1, (uprightShare * numberIn(numbers, "tire.radius")) / apart(lower, upper)));
}

/** A strut's top mount on that axis, above the upper joint. */
export function topMount({ lower, upper }: SteeringAxis, numbers: Float64Array): At {
  return between(lower, upper, Math.max(1.5, (strutShare * numberIn(numbers, "tire.radius")) / apart(lower, upper)));
}

/** Whether the tie-rod tab stands behind the steering axis: then the rods must go right for the wheels to go left. */
export function tabIsBehind(numbers: Float64Array, linkage: LinkageName, wheel: Wheel): boolean {
  const { lower, upper } = steeringAxisOf(numbers, linkage, wheel);
  const tab = pointIn(numbers, `${wheel}.tie-rod.outer`);
  const rise = upper.up - lower.up;
  return tab.ahead < between(lower, upper, rise === 0 ? 0 : (tab.up - lower.up) / rise).ahead;
}
