import { expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { transmissionAngle } from "../../src/measures/tieRod.ts";
import { cutRods, type Edit, fitRods, setQuantity } from "../../src/vehicle/edit.ts";
import { carIn, preset } from "../vehicle/cars.ts";

/** What the comments of the example cars say of them must be so. */

function studied(name: string, edit: (text: string) => string = (text) => text): Study {
  const study = studyOf(carIn(edit(preset(name))));
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

function edited(edit: Edit): (text: string) => string {
  return (text) => setQuantity(carIn(text), edit);
}

function degrees(rad: number | null | undefined): number {
  return rad === null || rad === undefined ? Number.NaN : (rad * 180) / Math.PI;
}

test.each(["balanced-two-seater", "widened-offset-rack", "cut-rods-off-middle", "rack-ahead"])(
  "%s turns its inner wheel by 30 to 38 degrees at both locks, and steers the right way",
  (name) => {
    const study = studied(name);
    for (const lock of [study.locks.left, study.locks.right]) {
      expect(degrees(lock?.inner)).toBeGreaterThanOrEqual(30);
      expect(degrees(lock?.inner)).toBeLessThanOrEqual(38);
    }
    expect(study.steersBackwards).toBe(false);
  },
);

test("the balanced car is balanced: alike locks, hardly any toe change, no rod near its dead point", () => {
  const { locks, worst } = studied("balanced-two-seater");
  expect(locks.difference.inner).toBe(0);
  expect(degrees(locks.left?.inner) - degrees(locks.left?.outer)).toBeGreaterThan(5.5);
  for (const side of ["left", "right"] as const) {
    expect(Math.abs(degrees(worst.toe[side]?.toeChange))).toBeLessThan(0.1);
    expect(degrees(worst.rodAngle[side]?.angle)).toBeGreaterThan(30);
  }
});

test("the widened car's bounce steer goes with the rack's offset, and its locks hardly change", () => {
  const before = studied("widened-offset-rack");
  const after = studied("widened-offset-rack", edited({ pair: "rack.offset", sides: "both", value: 0 }));
  expect(Math.abs(degrees(before.worst.bounce?.bounceSteer))).toBeGreaterThan(0.8);
  expect(before.worst.bounce?.travel).toBe(-76.2);
  expect(Math.abs(degrees(after.worst.bounce?.bounceSteer))).toBeLessThan(1e-9);
  expect(before.rodLengths.left - before.rodLengths.right).toBeGreaterThan(4.9 * 25.4);
  for (const side of ["left", "right"] as const)
    expect(Math.abs(degrees(before.locks[side]?.inner) - degrees(after.locks[side]?.inner))).toBeLessThan(2);
});

test("the car with rods cut wrong is mended by half the difference of its rods, or by rods cut to fit", () => {
  const before = studied("cut-rods-off-middle");
  // Each rod is 3 mm off; the zero is so far off the middle to a hundredth of that.
  expect(Math.abs((before.zero ?? 0) + 3)).toBeLessThan(0.03);
  expect(Math.abs(degrees(before.locks.difference.inner))).toBeGreaterThan(5);
  const mended = studied("cut-rods-off-middle", (text) => cutRods(carIn(text), { left: 309, right: 309 }));
  const fitted = studied("cut-rods-off-middle", (text) => fitRods(carIn(text)));
  for (const { zero, locks } of [mended, fitted]) {
    expect(Math.abs(zero ?? Number.NaN)).toBeLessThan(1e-6);
    expect(Math.abs(degrees(locks.difference.inner))).toBeLessThan(1e-6);
  }
  expect(Math.abs(fitted.rodLengths.left - 309)).toBeLessThan(0.1);
});

test("with the tabs ahead of the axle, tabs further out or a rack further back raise the Ackermann effect", () => {
  const tab = 21.875 * 25.4;
  const rack = 3.25 * 25.4;
  const before = studied("rack-ahead");
  const tabsOut = studied("rack-ahead", edited({ pair: "tie-rod.outer.out", sides: "both", value: tab + 6.35 }));
  const rackBack = studied("rack-ahead", edited({ pair: "rack.ahead", sides: "both", value: rack - 25.4 }));
  expect(degrees(before.locks.left?.idealInner) - degrees(before.locks.left?.inner)).toBeGreaterThan(10);
  for (const after of [tabsOut, rackBack])
    expect(after.locks.left?.ackermann ?? 0).toBeGreaterThan((before.locks.left?.ackermann ?? 0) + 1);
  expect(before.inputLeftTurns).toBe("left");
});

test.each(["strut-hatchback-corners", "widened-offset-rack", "twin-beam-relay"])(
  "%s has no place in a dense sweep with less rod-to-arm angle than its least",
  (name) => {
    const study = studied(name);
    const { inputTravel, wheelTravel } = study;
    const least = { left: Number.POSITIVE_INFINITY, right: Number.POSITIVE_INFINITY };
    for (let i = 0; i <= 60; i++) {
      for (let j = 0; j <= 60; j++) {
        const input = -inputTravel.right + ((inputTravel.left + inputTravel.right) * i) / 60;
        const travel = -wheelTravel.droop + ((wheelTravel.bump + wheelTravel.droop) * j) / 60;
        const poses = study.pose(input, travel, travel);
        for (const [side, at] of [
          ["left", Pose.Left],
          ["right", Pose.Right],
        ] as const) {
          if (poses[at + Side.Blame] === 0) least[side] = Math.min(least[side], transmissionAngle(poses, at));
        }
      }
    }
    for (const side of ["left", "right"] as const) {
      expect(Number.isFinite(least[side])).toBe(true);
      expect(degrees(study.worst.rodAngle[side]?.angle)).toBeLessThanOrEqual(degrees(least[side]) + 1e-9);
    }
  },
);
