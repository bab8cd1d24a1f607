import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { contactY, contactZ } from "../../src/measures/contact.ts";
import { instantCentre } from "../../src/measures/instantCentre.ts";
import { rollCentre, rollCentreHeight } from "../../src/measures/rollCentre.ts";
import { expectClose } from "../close.ts";
import { alike, type Plan, planarArms } from "../oracles/known.ts";
import { point } from "../oracles/vectors.ts";
import { frontOf, mirrored, offsetCar, poseOf, setting } from "./cars.ts";

const radius = setting.tireRadius;

/** A front end in one plane: the tie rod lies along the lower arm, so that the upright never steers. */
function planar(lower: readonly [Plan, Plan], upper: readonly [Plan, Plan]): Float64Array {
  const drawn = alike({
    arms: planarArms(lower, upper),
    inner: point(-100, ...lower[0]),
    outer: point(-100, ...lower[1]),
    wheelCenter: point(0, 750, 300),
    rack: 50,
    travel: 50,
  });
  return poseOf(frontOf(drawn), 0, 0);
}

describe("roll centre", () => {
  test("level parallel arms have it on the ground, and no instant centre", () => {
    const poses = planar(
      [
        [300, 200],
        [700, 200],
      ],
      [
        [300, 400],
        [700, 400],
      ],
    );
    // The wheel's height is brought within 1e-11 of 750 mm; over arms of 400 that slopes a line 750 mm long by 1.5e-8 mm.
    expectClose(rollCentre(poses, 0, 300), { y: 0, z: 0 }, { abs: 3e-8 });
    expect(instantCentre(poses, Pose.Left, 300)).toBeNull();
  });

  test("alike sides have it on the centreline, on the line from the contact to the instant centre", () => {
    const poses = planar(
      [
        [300, 250],
        [700, 200],
      ],
      [
        [350, 400],
        [650, 450],
      ],
    );
    const centre = instantCentre(poses, Pose.Left, 300);
    if (centre === null) throw new Error("these arms are not parallel");
    const out = contactY(poses, Pose.Left, 300);
    const height = (centre.up * out) / (out - centre.out);
    expectClose(rollCentre(poses, 0, 300), { y: 0, z: height }, { abs: 1e-9 });
  });

  test("its height counts from the ground that has come up with the wheels", () => {
    const poses = poseOf(frontOf(offsetCar), 0, 40);
    const centre = rollCentre(poses, 0, radius);
    const ground = (contactZ(poses, Pose.Left, radius) + contactZ(poses, Pose.Right, radius)) / 2;
    expectClose(rollCentreHeight(poses, 0, radius), (centre?.z ?? Number.NaN) - ground, { abs: 1e-9 });
    expect(ground).toBeGreaterThan(39);
  });

  test("a mirrored car has it mirrored", () => {
    const [one, other] = [frontOf(offsetCar), frontOf(mirrored(offsetCar))];
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -70, max: 70, noNaN: true }),
        fc.double({ min: -70, max: 70, noNaN: true }),
        (rack, left, right) => {
          const here = rollCentre(poseOf(one, rack, left, right), 0, radius);
          const there = rollCentre(poseOf(other, -rack, right, left), 0, radius);
          expectClose(there && { y: -there.y, z: there.z }, here, { abs: 1e-6, rel: 1e-9 });
        },
      ),
    );
  });
});
