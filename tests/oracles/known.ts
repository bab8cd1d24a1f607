import type { Corner, DoubleArmPoints, Point } from "../../src/kinematics/drawn.ts";
import type { DoubleArmCar } from "./corner.ts";
import { point } from "./vectors.ts";

/** Front ends that several checks use. Everything here is invented geometry in mm. */

/** What a car alike on both sides is drawn from; the inner eye is where the tie rod starts at mid-travel. */
export interface AlikeSides {
  readonly arms: DoubleArmPoints;
  readonly inner: Point;
  readonly outer: Point;
  readonly wheelCenter: Point;
  readonly camber?: number;
  readonly toe?: number;
  readonly rack: number;
  readonly travel: number;
}

/** A front end alike on both sides, the rack central and level, rods cut to fit, tuned for +-rack and +-travel mm. */
export function alike({
  arms,
  inner,
  outer,
  wheelCenter,
  camber = 0,
  toe = 0,
  rack,
  travel,
}: AlikeSides): DoubleArmCar {
  const corner: Corner = { tieRodOuter: outer, tieRodLength: null, wheelCenter, camber, toe };
  return {
    linkage: { kind: "double-arm", left: arms, right: arms },
    mechanism: {
      kind: "rack",
      ahead: inner.x,
      up: inner.z,
      eyeToEye: 2 * inner.y,
      offset: 0,
      tilt: 0,
      straightAhead: 0,
    },
    left: corner,
    right: corner,
    range: { inputLow: -rack, inputHigh: rack, travelLow: -travel, travelHigh: travel },
  };
}

/** The spatial double arm whose curves three independent solutions agree on; tyre radius 330. */
export const spatialCar: DoubleArmCar = alike({
  arms: {
    lowerFront: point(150, 250, 280),
    lowerRear: point(-150, 250, 280),
    lowerJoint: point(10, 640, 250),
    upperFront: point(100, 290, 450),
    upperRear: point(-180, 290, 440),
    upperJoint: point(-25, 610, 480),
  },
  inner: point(-110, 270, 330),
  outer: point(-120, 620, 320),
  wheelCenter: point(0, 720, 330),
  rack: 60,
  travel: 100,
});

/** Arms of a planar front view: both turn about axes along x at their inner ends, given as (out, up). */
export function planarArms(
  [lowerIn, lowerOut]: readonly [Plan, Plan],
  [upperIn, upperOut]: readonly [Plan, Plan],
): DoubleArmPoints {
  return {
    lowerFront: point(100, ...lowerIn),
    lowerRear: point(-100, ...lowerIn),
    lowerJoint: point(0, ...lowerOut),
    upperFront: point(100, ...upperIn),
    upperRear: point(-100, ...upperIn),
    upperJoint: point(0, ...upperOut),
  };
}

/** Out and up, mm. */
export type Plan = readonly [number, number];
