import type { Corner, DoubleArmPoints, Drawn, Linkage, Point, Rack } from "../../src/kinematics/drawn.ts";
import { distance, point } from "./vectors.ts";

/** What the tests' own solutions can solve: a double arm steered by a rack. They read nothing of the kernel but its input. */
export interface DoubleArmCar extends Drawn {
  readonly linkage: Extract<Linkage, { kind: "double-arm" }>;
  readonly mechanism: Rack;
}

export type SideName = "left" | "right";
export const sides: readonly SideName[] = ["left", "right"];

/** The named places of one corner in one pose, in the corner's own frame, mm; spin is the unit spin axis, outboard. */
export interface Places {
  readonly lower: Point;
  readonly upper: Point;
  readonly tieRodOuter: Point;
  readonly tieRodInner: Point;
  readonly wheelCenter: Point;
  readonly spin: Point;
}

export function armsOf(drawn: DoubleArmCar, side: SideName): DoubleArmPoints {
  return drawn.linkage[side];
}

/**
 * The rack's inner eye of one side at a rack displacement, in the corner's frame (y outboard), mm. The rack's own line goes through its middle
 * eye, along (0, cos tilt, sin tilt) of the vehicle; half of eye to eye out on it, moved by the displacement, positive to the driver's left.
 */
export function innerEye(drawn: DoubleArmCar, side: SideName, input: number): Point {
  const { ahead, up, eyeToEye, offset, tilt } = drawn.mechanism;
  const along = (side === "left" ? eyeToEye / 2 : -eyeToEye / 2) + input;
  const toLeft = offset + along * Math.cos(tilt);
  return point(ahead, side === "left" ? toLeft : -toLeft, up + along * Math.sin(tilt));
}

/** The drawn spin axis, outboard: toe-in turns its front inboard, so toe = atan2(x, y) and camber = -asin(z) (ISO 8855 signs). */
export function drawnSpin({ camber, toe }: Corner): Point {
  return point(Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber));
}

/** All places as drawn: rack at straight-ahead, travel 0. */
export function drawnPlaces(drawn: DoubleArmCar, side: SideName): Places {
  const corner = drawn[side];
  const arms = armsOf(drawn, side);
  return {
    lower: arms.lowerJoint,
    upper: arms.upperJoint,
    tieRodOuter: corner.tieRodOuter,
    tieRodInner: innerEye(drawn, side, drawn.mechanism.straightAhead),
    wheelCenter: corner.wheelCenter,
    spin: drawnSpin(corner),
  };
}

/** The tie rod's length when it is cut to fit the drawing, mm. */
export function fittedRod(drawn: DoubleArmCar, side: SideName): number {
  const { tieRodOuter, tieRodInner } = drawnPlaces(drawn, side);
  return distance(tieRodOuter, tieRodInner);
}
