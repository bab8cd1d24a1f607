import { readSide } from "../kinematics/face.ts";
import { Pose } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";
import { contactX, contactY, contactZ } from "./contact.ts";

/** A place in the vehicle's frame, mm: x forward, y to the driver's left, z up. */
export type Place = readonly [x: number, y: number, z: number];

/** The named points of one wheel. */
export interface WheelPoints {
  readonly lowerJoint: Place;
  readonly upperJoint: Place;
  readonly tieRodOuter: Place;
  readonly tieRodInner: Place;
  readonly wheelCenter: Place;
  /** Lowest point of the wheel's disc. */
  readonly contact: Place;
}

/** Where a wheel starts in a buffer of one pose: what a wheel figure reads at. */
export function sideAt(wheel: Wheel): number {
  return wheel === "left" ? Pose.Left : Pose.Right;
}

/** The points of a wheel in a buffer of one pose, in the vehicle's frame, mm; null when that side does not close. */
export function pointsOf(pose: Float64Array, wheel: Wheel, tireRadius: number): WheelPoints | null {
  const side = readSide(pose, 0, wheel);
  if (!side.closes) return null;
  const at = sideAt(wheel);
  const hand = wheel === "left" ? 1 : -1;
  const place = ({ x, y, z }: { x: number; y: number; z: number }): Place => [x, y, z];
  return {
    lowerJoint: place(side.lowerJoint),
    upperJoint: place(side.upperJoint),
    tieRodOuter: place(side.tieRodOuter),
    tieRodInner: place(side.tieRodInner),
    wheelCenter: place(side.wheelCenter),
    contact: [contactX(pose, at, tireRadius), hand * contactY(pose, at, tireRadius), contactZ(pose, at, tireRadius)],
  };
}
