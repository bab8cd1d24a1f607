import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { idealInner } from "../../src/measures/ackermann.ts";
import { turnRadius } from "../../src/measures/turnRadius.ts";
import { expectClose } from "../close.ts";
import { radians } from "../oracles/vectors.ts";
import { plainWheel, poseOfWheel, spinOf } from "./wheel.ts";

/** Two wheels that steer about upright pins at their own centres: toe-in on the left is steer to the right. */
function steered(left: number, right: number, half: number): Float64Array {
  const at = (toe: number) => ({ ...plainWheel, wheelCenter: { x: 0, y: half, z: 300 }, spin: spinOf(0, toe) });
  const poses = poseOfWheel(at(-left), Pose.Left);
  poses.set(poseOfWheel(at(right), Pose.Right).subarray(Pose.Right), Pose.Right);
  return poses;
}

describe("turning radius", () => {
  test("of wheels on the ideal is wheelbase over the sine of the outer angle, to either side", () => {
    fc.assert(
      fc.property(
        fc.double({ min: radians(3), max: radians(45), noNaN: true }),
        fc.double({ min: 300, max: 900, noNaN: true }),
        fc.double({ min: 1000, max: 4000, noNaN: true }),
        (outer, half, l) => {
          const inner = idealInner(outer, 2 * half, l);
          const radius = l / Math.sin(outer);
          expectClose(turnRadius(steered(inner, outer, half), 0, "left", l, 300), radius, { rel: 1e-10 });
          expectClose(turnRadius(steered(-outer, -inner, half), 0, "right", l, 300), radius, { rel: 1e-10 });
        },
      ),
    );
  });

  test("wheels that are not on the ideal turn about the middle of their two places on the rear axle", () => {
    // Parallel steer of 45°: the spindle lines meet the rear axle one wheelbase in from each wheel.
    const poses = steered(radians(45), radians(45), 500);
    expectClose(turnRadius(poses, 0, "left", 2000, 300), Math.hypot(2000, 2000 + 500), { rel: 1e-12 });
  });

  test("a wheel that stands straight has no place on the rear axle", () => {
    expect(turnRadius(steered(0, radians(5), 500), 0, "left", 2000, 300)).toBeNull();
    expect(turnRadius(steered(radians(5), 0, 500), 0, "left", 2000, 300)).toBeNull();
  });
});
