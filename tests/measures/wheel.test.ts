import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { camber } from "../../src/measures/camber.ts";
import { caster } from "../../src/measures/caster.ts";
import { contactX, contactY, contactZ } from "../../src/measures/contact.ts";
import { kingPinInclination } from "../../src/measures/kingPinInclination.ts";
import { scrubRadius } from "../../src/measures/scrubRadius.ts";
import { steer } from "../../src/measures/steer.ts";
import { toe } from "../../src/measures/toe.ts";
import { trail } from "../../src/measures/trail.ts";
import { expectClose } from "../close.ts";
import { distance, radians } from "../oracles/vectors.ts";
import { onDisc, plainWheel, poseOfWheel, spinOf, turned } from "./wheel.ts";

const angle = (most: number) => fc.double({ min: radians(-most), max: radians(most), noNaN: true });

describe("toe and camber", () => {
  test("are read back from a spin axis that was made from them", () => {
    fc.assert(
      fc.property(angle(80), angle(60), (toeIn, lean) => {
        const poses = poseOfWheel({ ...plainWheel, spin: spinOf(lean, toeIn) });
        expectClose([toe(poses, 0), camber(poses, 0)], [toeIn, lean], { abs: 1e-14 });
      }),
    );
  });

  test("toe-in is steer to the right on the left wheel and to the left on the right wheel", () => {
    const wheel = { ...plainWheel, spin: spinOf(0, radians(3)) };
    expectClose(steer(poseOfWheel(wheel, Pose.Left), Pose.Left), radians(-3), { abs: 1e-15 });
    expectClose(steer(poseOfWheel(wheel, Pose.Right), Pose.Right), radians(3), { abs: 1e-15 });
  });

  test("the side is known in any pose of a buffer", () => {
    const later = new Float64Array(3 * Pose.Stride);
    later.set(poseOfWheel({ ...plainWheel, spin: spinOf(0, radians(3)) }, Pose.Right), 2 * Pose.Stride);
    expectClose(steer(later, 2 * Pose.Stride + Pose.Right), radians(3), { abs: 1e-15 });
  });
});

describe("the steering axis", () => {
  test("an upright axis has neither caster nor inclination", () => {
    const poses = poseOfWheel(plainWheel);
    expect([caster(poses, 0), kingPinInclination(poses, 0)].map(Math.abs)).toEqual([0, 0]);
  });

  test("a top set back 20 and in 30 over a rise of 200 leans by their tangents", () => {
    const poses = poseOfWheel({ ...plainWheel, upper: { x: 0, y: 570, z: 400 } });
    expectClose(caster(poses, 0), Math.atan(20 / 200), { abs: 1e-15 });
    expectClose(kingPinInclination(poses, 0), Math.atan(30 / 200), { abs: 1e-15 });
  });
});

describe("the contact point", () => {
  test("is the lowest place of the wheel disc", () => {
    fc.assert(
      fc.property(angle(60), angle(30), fc.double({ min: 0, max: 6.28, noNaN: true }), (toeIn, lean, round) => {
        const wheel = { ...plainWheel, spin: spinOf(lean, toeIn) };
        const poses = poseOfWheel(wheel);
        const contact = { x: contactX(poses, 0, 273), y: contactY(poses, 0, 273), z: contactZ(poses, 0, 273) };
        expectClose(distance(contact, wheel.wheelCenter), 273, { abs: 1e-9 });
        expect(contact.z).toBeLessThanOrEqual(onDisc(wheel, 273, round).z + 1e-9);
      }),
    );
  });
});

describe("scrub radius and trail", () => {
  test("on an upright king pin they are where the wheel stands from it", () => {
    const poses = poseOfWheel(plainWheel);
    expectClose([scrubRadius(poses, 0, 300), trail(poses, 0, 300)], [50, 20], { abs: 1e-12 });
  });

  test("a king pin that leans in reaches further out at the ground, and one that leans back further ahead", () => {
    // Over the 200 mm from the lower joint to the ground the axis goes on out by 200 × 30/200 and ahead by 200 × 20/200.
    const poses = poseOfWheel({ ...plainWheel, upper: { x: 0, y: 570, z: 400 } });
    expectClose([scrubRadius(poses, 0, 300), trail(poses, 0, 300)], [50 - 30, 20 + 20], { abs: 1e-12 });
  });

  test("do not change when the whole corner is turned about a vertical: they go with the wheel's heading", () => {
    fc.assert(
      fc.property(angle(50), angle(20), angle(10), (by, toeIn, lean) => {
        const wheel = { ...plainWheel, spin: spinOf(lean, toeIn), upper: { x: 0, y: 570, z: 400 } };
        const [before, after] = [poseOfWheel(wheel), poseOfWheel(turned(wheel, by))];
        expectClose(scrubRadius(after, 0, 300), scrubRadius(before, 0, 300), { abs: 1e-9 });
        expectClose(trail(after, 0, 300), trail(before, 0, 300), { abs: 1e-9 });
      }),
    );
  });
});
