import type { Drawn, Mechanism, Point } from "../../src/kinematics/drawn.ts";

const across = ({ x, y, z }: Point): Point => ({ x, y: -y, z });

function mirroredSteering(mechanism: Mechanism): Mechanism {
  const straightAhead = -mechanism.straightAhead;
  switch (mechanism.kind) {
    case "rack":
      return { ...mechanism, straightAhead, offset: -mechanism.offset, tilt: -mechanism.tilt };
    case "centre-rack": {
      const { leftEye, rightEye, tilt } = mechanism;
      return { ...mechanism, straightAhead, leftEye: rightEye, rightEye: leftEye, tilt: -tilt };
    }
    case "steering-plate": {
      const { leftEye, rightEye, foot } = mechanism;
      return { ...mechanism, straightAhead, leftEye: rightEye, rightEye: leftEye, foot: across(foot) };
    }
    case "relay": {
      // In a mirror a shaft that leans left leans right, and what turned left about it turns right: by −input.
      const { leftEye, rightEye } = mechanism;
      return {
        ...mechanism,
        straightAhead,
        pitmanPivot: across(mechanism.pitmanPivot),
        pitmanAxis: across(mechanism.pitmanAxis),
        pitmanJoint: across(mechanism.pitmanJoint),
        idlerPivot: across(mechanism.idlerPivot),
        idlerAxis: across(mechanism.idlerAxis),
        idlerJoint: across(mechanism.idlerJoint),
        leftEye: across(rightEye),
        rightEye: across(leftEye),
      };
    }
  }
}

/** A front end of any linkage and mechanism as it is seen in a mirror: what is solved for at −input, its corners exchanged. */
export function mirroredFront({ linkage, mechanism, left, right, range }: Drawn): Drawn {
  return {
    linkage: { ...linkage, left: linkage.right, right: linkage.left } as Drawn["linkage"],
    mechanism: mirroredSteering(mechanism),
    left: right,
    right: left,
    range: { ...range, inputLow: -range.inputHigh, inputHigh: -range.inputLow },
  };
}
