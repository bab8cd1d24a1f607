import type { Point, TrailingArmsPoints } from "../drawn.ts";
import type { Joints, Refusal } from "../front.ts";
import { compileDoubleArm } from "./doubleArm.ts";

/**
 * Two arms that trail from axes straight across the car (as on a torsion-tube beam) carry the two joints of the upright:
 * a double arm whose axes are both crosswise, and solved as one.
 */
export function compileTrailingArms(
  points: TrailingArmsPoints,
  wheel: Refusal["wheel"],
  own: Float64Array,
): Joints | Refusal {
  const { lowerPivot, lowerJoint, upperPivot, upperJoint } = points;
  return compileDoubleArm(
    {
      lowerFront: outboard(lowerPivot),
      lowerRear: lowerPivot,
      lowerJoint,
      upperFront: outboard(upperPivot),
      upperRear: upperPivot,
      upperJoint,
    },
    wheel,
    own,
  );
}

/** A second place on a crosswise axis, as far from the first as arms are long. */
function outboard(pivot: Point): Point {
  return { x: pivot.x, y: pivot.y + 100, z: pivot.z };
}
