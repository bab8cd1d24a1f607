import { compile } from "../../src/kinematics/compile.ts";
import type { Drawn as AnyDrawn, Corner, DoubleArmPoints, Linkage, Point, Rack } from "../../src/kinematics/drawn.ts";
import type { Front } from "../../src/kinematics/front.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { solve } from "../../src/kinematics/solve.ts";
import type { Setting } from "../../src/measures/front.ts";
import type { FrontEnd } from "../../src/measures/frontEnd.ts";
import { frontEndOf } from "../../src/measures/standing.ts";
import { noStops } from "../../src/measures/stops.ts";
import { radians } from "../oracles/vectors.ts";

/** Invented front ends that the tests of the measures share. Inches are written as inches and turned into mm here. */
export const inch = 25.4;

/** A front end of two arms on a rack. */
export type Drawn = AnyDrawn & { readonly linkage: Extract<Linkage, { kind: "double-arm" }>; readonly mechanism: Rack };

function inches(x: number, y: number, z: number): Point {
  return { x: x * inch, y: y * inch, z: z * inch };
}

const arms: DoubleArmPoints = {
  lowerFront: inches(4, 6, 7.5),
  lowerRear: inches(-4.5, 6, 7.5),
  lowerJoint: inches(0.2, 21.5, 7),
  upperFront: inches(2.5, 8.5, 13.25),
  upperRear: inches(-4.5, 8.5, 13),
  upperJoint: inches(-0.7, 20.3, 14),
};

const corner: Corner = {
  tieRodOuter: inches(-4.5, 19.75, 8.5),
  tieRodLength: null,
  wheelCenter: inches(0, 24.5, 10.75),
  camber: radians(-0.5),
  toe: radians(0.1),
};

const rack: Rack = {
  kind: "rack",
  ahead: -5.5 * inch,
  up: 8.625 * inch,
  eyeToEye: 13 * inch,
  offset: -2.5 * inch,
  tilt: 0,
  straightAhead: 0,
};

export const setting: Setting = {
  wheelbase: 68 * inch,
  tireRadius: 10.75 * inch,
  inputKind: "rack",
  suspended: true,
  noTravel: null,
  inputTravel: { left: 2 * inch, right: 2 * inch },
  stops: noStops,
  wheelTravel: { bump: 3 * inch, droop: 3 * inch },
};

/** A widened car whose rack stands 2.5 in to the right of the middle. */
export const offsetCar: Drawn = {
  linkage: { kind: "double-arm", left: arms, right: arms },
  mechanism: rack,
  left: corner,
  right: corner,
  range: { inputLow: -2 * inch, inputHigh: 2 * inch, travelLow: -3 * inch, travelHigh: 3 * inch },
};

export function withRack(drawn: Drawn, change: Partial<Rack>): Drawn {
  return { ...drawn, mechanism: { ...drawn.mechanism, ...change } };
}

export function withCorners(drawn: Drawn, change: Partial<Corner>): Drawn {
  return { ...drawn, left: { ...drawn.left, ...change }, right: { ...drawn.right, ...change } };
}

export function withRods(drawn: Drawn, left: number, right: number): Drawn {
  return {
    ...drawn,
    left: { ...drawn.left, tieRodLength: left },
    right: { ...drawn.right, tieRodLength: right },
  };
}

/** The same car with left and right exchanged. */
export function mirrored(drawn: Drawn): Drawn {
  const { mechanism, linkage, range } = drawn;
  return {
    linkage: { kind: linkage.kind, left: linkage.right, right: linkage.left },
    mechanism: {
      ...mechanism,
      offset: -mechanism.offset,
      tilt: -mechanism.tilt,
      straightAhead: -mechanism.straightAhead,
    },
    left: drawn.right,
    right: drawn.left,
    range: { ...range, inputLow: -range.inputHigh, inputHigh: -range.inputLow },
  };
}

/** Rack and tabs ahead of the axle, the rack on the middle of the car. */
export const tabsAhead: Drawn = withRack(withCorners(offsetCar, { tieRodOuter: inches(4.5, 21.5, 8.5) }), {
  ahead: 3.5 * inch,
  offset: 0,
});

/** Compiles a front end that is known to be one. */
export function frontOf(drawn: AnyDrawn): Front {
  const front = compile(drawn);
  if ("refused" in front) throw new Error(`${front.wheel}: ${front.refused}`);
  return front;
}

export function endOf(drawn: AnyDrawn, other: Setting = setting): FrontEnd {
  return frontEndOf(frontOf(drawn), other);
}

export function poseOf(front: Front, input: number, left: number, right = left): Float64Array {
  const poses = newPoses(1);
  solve(front, input, left, right, poses, 0);
  return poses;
}
