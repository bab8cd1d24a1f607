import type { Linkage } from "../../src/kinematics/drawn.ts";
import { spatialCar } from "./known.ts";
import { point } from "./vectors.ts";

export const both = <T>(points: T): { readonly left: T; readonly right: T } => ({ left: points, right: points });

const arms = spatialCar.linkage.left;
const { lowerFront, lowerRear, lowerJoint, upperJoint } = arms;

/** Every linkage with suspension, to carry the upright of the spatial double arm. Invented; mm. */
export const oneOfEach: readonly Linkage[] = [
  spatialCar.linkage,
  {
    kind: "trailing-arms",
    ...both({ lowerPivot: point(430, 520, 260), lowerJoint, upperPivot: point(400, 500, 470), upperJoint }),
  },
  {
    kind: "strut",
    ...both({ lowerFront, lowerRear, lowerJoint, top: point(-40, 560, 800), bottom: point(-10, 640, 400) }),
  },
  {
    kind: "pivoting-beam",
    ...both({ beamFront: point(20, -80, 340), beamRear: point(-700, 260, 360), lowerJoint, upperJoint }),
  },
];

/** The same linkage, the axis that its lower arm or its beam turns about named from its other end. */
export function namedOver(linkage: Linkage): Linkage {
  switch (linkage.kind) {
    case "double-arm": {
      const { lowerFront, lowerRear, ...rest } = linkage.left;
      return { kind: linkage.kind, ...both({ ...rest, lowerFront: lowerRear, lowerRear: lowerFront }) };
    }
    case "strut": {
      const { lowerFront, lowerRear, ...rest } = linkage.left;
      return { kind: linkage.kind, ...both({ ...rest, lowerFront: lowerRear, lowerRear: lowerFront }) };
    }
    case "pivoting-beam": {
      const { beamFront, beamRear, ...rest } = linkage.left;
      return { kind: linkage.kind, ...both({ ...rest, beamFront: beamRear, beamRear: beamFront }) };
    }
    default:
      throw new Error(`${linkage.kind} has no axis with two ends`);
  }
}
