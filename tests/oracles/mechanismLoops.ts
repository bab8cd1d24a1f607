import type { Mechanism, Point } from "../../src/kinematics/drawn.ts";
import { components, fromSkew, off, skewCoordinates } from "./skew.ts";
import { cross, distance, dot, minus, plus, point, rotated, times, unit } from "./vectors.ts";

/** One side's inner eye: straight from the input, or with loop equations and unknowns of its own. Corner's frame, mm. */
export interface MechanismLoops {
  /** Its own unknowns at input 0. */
  readonly start: readonly Point[];
  readonly residuals: (own: readonly Point[], input: number) => number[];
  /** Nought at its own dead points. */
  readonly triples: (own: readonly Point[], input: number) => number[];
  readonly eye: (own: readonly Point[], input: number) => Point;
}

const straight = (eye: (input: number) => Point): MechanismLoops => ({
  start: [],
  residuals: () => [],
  triples: () => [],
  eye: (_, input) => eye(input),
});

/** The equations of a steering mechanism for one side. */
export function mechanismLoops(mechanism: Mechanism, side: "left" | "right"): MechanismLoops {
  const hand = side === "left" ? 1 : -1;
  /** From the vehicle's frame to the corner's, and back. */
  const mirrored = (a: Point) => point(a.x, hand * a.y, a.z);
  switch (mechanism.kind) {
    case "rack": {
      // The rack's own line goes through its middle along (0, cos tilt, sin tilt); half of eye to eye out on it.
      const { ahead, up, eyeToEye, offset, tilt } = mechanism;
      const line = point(0, Math.cos(tilt), Math.sin(tilt));
      return straight((input) => mirrored(plus(point(ahead, offset, up), times(line, hand * (eyeToEye / 2) + input))));
    }
    case "centre-rack": {
      const { leftEye, rightEye, tilt } = mechanism;
      const line = point(0, Math.cos(tilt), Math.sin(tilt));
      const drawn = mirrored(side === "left" ? leftEye : rightEye);
      return straight((input) => mirrored(plus(drawn, times(line, input))));
    }
    case "steering-plate": {
      // A left turn is anticlockwise for the driver, who looks down the column: right-handed about its axis toward him.
      const { foot, rake, leftEye, rightEye } = mechanism;
      const axis = point(-Math.cos(rake), 0, Math.sin(rake));
      const arm = minus(mirrored(side === "left" ? leftEye : rightEye), foot);
      return straight((input) => mirrored(plus(foot, rotated(arm, times(axis, input)))));
    }
    case "relay": {
      const { pitmanPivot, pitmanJoint, idlerPivot, idlerJoint, turn } = mechanism;
      const axis = unit(mechanism.pitmanAxis);
      const idlerAxis = unit(mechanism.idlerAxis);
      const above = plus(idlerPivot, times(idlerAxis, 100));
      const pitman = (input: number) =>
        plus(pitmanPivot, rotated(minus(pitmanJoint, pitmanPivot), times(axis, input * turn)));
      // The link as a body: both joints, and a pin on it that stays along the pitman's axis.
      const pin = (joint: Point) => plus(joint, times(axis, 100));
      const drawnEye = side === "left" ? mechanism.leftEye : mechanism.rightEye;
      const eyeIn = skewCoordinates(pitmanJoint, idlerJoint, pin(pitmanJoint), drawnEye);
      const held = [
        distance(idlerJoint, idlerPivot),
        distance(idlerJoint, above),
        distance(idlerJoint, pitmanJoint),
      ] as const;
      return {
        start: [idlerJoint, drawnEye],
        residuals: ([joint, eye], input) => {
          const p = pitman(input);
          return [
            off(joint, idlerPivot, held[0]),
            off(joint, above, held[1]),
            off(joint, p, held[2]),
            ...components(minus(eye, fromSkew(p, joint, pin(p), eyeIn))),
          ];
        },
        triples: ([joint], input) => [dot(idlerAxis, cross(minus(joint, idlerPivot), minus(pitman(input), joint)))],
        eye: ([, eye]) => mirrored(eye),
      };
    }
  }
}
