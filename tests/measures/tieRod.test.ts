import fc from "fast-check";
import { describe, test } from "vitest";
import { Side } from "../../src/kinematics/slots.ts";
import { leverArm, tieRodLength, transmissionAngle } from "../../src/measures/tieRod.ts";
import { expectClose } from "../close.ts";
import { radians } from "../oracles/vectors.ts";
import { frontOf, offsetCar, poseOf } from "./cars.ts";
import { plainWheel, poseOfWheel } from "./wheel.ts";

describe("rod-to-arm angle", () => {
  test.each([0, 1, 17.5, 45, 89.999, 90, 135])("a rod at %d° to its arm, in one plane", (degrees) => {
    // The arm is 100 long and points straight back from an upright king pin; the rod leaves its end at that angle.
    const way = { x: Math.cos(radians(degrees)), y: -Math.sin(radians(degrees)) };
    const outer = plainWheel.tieRodOuter;
    const poses = poseOfWheel({
      ...plainWheel,
      tieRodInner: { x: outer.x + 350 * way.x, y: outer.y + 350 * way.y, z: outer.z },
    });
    const least = Math.min(degrees, 180 - degrees);
    expectClose(transmissionAngle(poses, 0), radians(least), { abs: 1e-14 });
    expectClose(leverArm(poses, 0), 100 * Math.sin(radians(least)), { abs: 1e-11 });
    expectClose(tieRodLength(poses, 0), 350, { abs: 1e-11 });
  });

  test("a rod that also climbs has less lever, as the sine says", () => {
    const outer = plainWheel.tieRodOuter;
    const poses = poseOfWheel({ ...plainWheel, tieRodInner: { x: outer.x, y: outer.y - 300, z: outer.z + 400 } });
    expectClose(transmissionAngle(poses, 0), Math.asin(0.6), { abs: 1e-14 });
    expectClose(leverArm(poses, 0), 60, { abs: 1e-11 });
  });

  test("its sine is the lever arm over the distance from the steering axis, wherever the front end stands", () => {
    const front = frontOf(offsetCar);
    const at = 32;
    const ride = poseOf(front, 0, 0);
    const arm = leverArm(ride, at) / Math.sin(transmissionAngle(ride, at));
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -76, max: 76, noNaN: true }),
        (rack, travel) => {
          const poses = poseOf(front, rack, travel);
          expectClose(leverArm(poses, at), arm * Math.sin(transmissionAngle(poses, at)), { abs: 1e-9 });
          expectClose(leverArm(poses, at), Math.abs(poses[at + Side.Lever]), { abs: 0 });
        },
      ),
    );
  });
});
