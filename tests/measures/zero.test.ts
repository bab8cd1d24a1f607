import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { steer } from "../../src/measures/steer.ts";
import { findZero } from "../../src/measures/zero.ts";
import { expectClose } from "../close.ts";
import { endOf, frontOf, inch, mirrored, offsetCar, poseOf, tabsAhead, withRack, withRods } from "./cars.ts";

describe("the rack's zero", () => {
  test("is where the car is drawn while both rods are cut to fit", () => {
    expect(endOf(withRack(offsetCar, { straightAhead: 7 })).zero).toBe(7);
  });

  test("is found again from the lengths that fitted a car drawn with its rack off the middle", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (straightAhead) => {
        const { left, right } = endOf(withRack(offsetCar, { straightAhead })).rodLengths;
        expectClose(endOf(withRods(offsetCar, left, right)).zero, straightAhead, { abs: 1e-10 });
      }),
      { numRuns: 30 },
    );
  });

  test("makes both steers add up to nothing, rods cut anyhow, tabs behind or ahead", () => {
    for (const drawn of [offsetCar, tabsAhead]) {
      const { left, right } = endOf(drawn).rodLengths;
      const front = frontOf(withRods(drawn, left + 0.3 * inch, right - 0.4 * inch));
      const zero = findZero(front, 0, 4 * inch);
      if (zero === null) throw new Error("there is a zero in reach");
      const poses = poseOf(front, zero, 0);
      expectClose(steer(poses, Pose.Left) + steer(poses, Pose.Right), 0, { abs: 1e-12 });
      expect(Math.abs(zero)).toBeGreaterThan(0.2 * inch);
    }
  });

  test("of a mirrored car is mirrored to the last bit", () => {
    const { left, right } = endOf(offsetCar).rodLengths;
    const drawn = withRods(offsetCar, left + 3, right - 5);
    expect(endOf(mirrored(drawn)).zero).toBe(-(endOf(drawn).zero ?? Number.NaN));
  });

  test("is nowhere when the rods let it be nowhere in reach", () => {
    const { left, right } = endOf(offsetCar).rodLengths;
    const front = frontOf(withRods(offsetCar, left + 40, right - 40));
    expect(findZero(front, 0, 10)).toBeNull();
  });
});
