import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import type { FrontEnd } from "../../src/measures/frontEnd.ts";
import { steer } from "../../src/measures/steer.ts";
import { toe } from "../../src/measures/toe.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { acrossTyre, worstToeOf } from "../../src/measures/worstToe.ts";
import { expectClose } from "../close.ts";
import { endOf, inch, mirrored, offsetCar, poseOf, setting, withRack, withRods } from "./cars.ts";

/** Changes from ride height at a place of the rack, over the whole travel in steps of its 400th; only where both stand. */
function scanned(end: FrontEnd, input: number) {
  const ride = poseOf(end.front, input, 0);
  const { droop, bump } = end.wheelTravel;
  return Array.from({ length: 401 }, (_, i) => -droop + ((bump + droop) * i) / 400).flatMap((travel) => {
    const poses = poseOf(end.front, input, travel);
    const turned = (side: number) => steer(poses, side) - steer(ride, side);
    const stands = poses[Pose.Left + Side.Blame] === 0 && poses[Pose.Right + Side.Blame] === 0;
    const rightToe = toe(poses, Pose.Right) - toe(ride, Pose.Right);
    return stands ? [{ travel, bounce: (turned(Pose.Left) + turned(Pose.Right)) / 2, rightToe }] : [];
  });
}

const most = (sizes: readonly number[]) => Math.max(...sizes.map(Math.abs));

const rods = endOf(withRack(offsetCar, { straightAhead: 9 })).rodLengths;

describe.each([
  ["as drawn", endOf(offsetCar)],
  ["mirrored", endOf(mirrored(offsetCar))],
  ["with rods that set it straight 9 mm off the middle", endOf(withRods(offsetCar, rods.left, rods.right))],
  ["with a rack so low that bump is worst", endOf(withRack(offsetCar, { up: 7.9 * inch }))],
  ["with little droop", endOf(offsetCar, { ...setting, wheelTravel: { bump: 3 * inch, droop: inch } })],
])("the worst over the travel of a car %s", (_, end) => {
  const all = scanned(end, end.zero ?? Number.NaN);

  test("is the bounce steer of largest size, signed, and where it is", () => {
    const { bounce } = worstOf(end);
    const there = poseOf(end.front, end.zero ?? Number.NaN, bounce?.travel ?? Number.NaN);
    const ride = poseOf(end.front, end.zero ?? Number.NaN, 0);
    const turned = (side: number) => steer(there, side) - steer(ride, side);
    expectClose(bounce?.bounceSteer, (turned(Pose.Left) + turned(Pose.Right)) / 2, { abs: 1e-12 });
    // A bow's peak between two of 41 places is missed by less than a thousandth of it.
    expect(Math.abs(bounce?.bounceSteer ?? 0)).toBeGreaterThan(0.999 * most(all.map((each) => each.bounce)));
  });

  test("is the toe change of largest size, signed, and where it is", () => {
    const { toe: worstToe } = worstOf(end);
    const there = poseOf(end.front, end.zero ?? Number.NaN, worstToe.right?.travel ?? Number.NaN);
    const ride = poseOf(end.front, end.zero ?? Number.NaN, 0);
    expectClose(worstToe.right?.toeChange, toe(there, Pose.Right) - toe(ride, Pose.Right), { abs: 1e-12 });
    expect(Math.abs(worstToe.right?.toeChange ?? 0)).toBeGreaterThan(0.999 * most(all.map((each) => each.rightToe)));
    expectClose(worstToe.right?.acrossTyre, acrossTyre(worstToe.right?.toeChange ?? 0, 10.75 * inch), { abs: 1e-12 });
  });
});

describe("the worst over the travel", () => {
  // With the rack 65 mm to the right the left rod does not reach at ride height.
  test.each([
    ["left", { ...endOf(offsetCar), zero: -65 }, "right"],
    ["right", { ...endOf(mirrored(offsetCar)), zero: 65 }, "left"],
  ] as const)("is none of a %s wheel that does not stand at ride height, nor of both", (short, end, other) => {
    const { bounce, toe: worstToe } = worstOf(end);
    expect(bounce).toBeNull();
    expect(worstToe[short]).toBeNull();
    expect(Math.abs(worstToe[other]?.toeChange ?? 0)).toBeGreaterThan(0);
  });

  test("without a place to stand straight is that of where the car is drawn, and of no suspension none", () => {
    const end = endOf(offsetCar);
    const off = worstOf({ ...end, zero: null, straightAhead: 20 });
    expect(off.bounce?.bounceSteer).toBe(worstOf({ ...end, zero: 20 }).bounce?.bounceSteer);
    expect(off.bounce?.bounceSteer).not.toBe(worstOf(end).bounce?.bounceSteer);
    expect(worstOf({ ...end, suspended: false })).toMatchObject({ toe: { left: null, right: null }, bounce: null });
  });

  test("counts only travels at which the wheel stands", () => {
    const bump = 30 * inch;
    const end = endOf(offsetCar, { ...setting, wheelTravel: { bump, droop: 3 * inch } });
    const { bounce, toe: worstToe } = worstOf(end);
    const all = scanned(end, 0);
    const furthest = Math.max(...all.map(({ travel }) => travel));
    expect(furthest).toBeLessThan(bump - inch);
    // Places 33/40 in apart, and the curve may end steep: what is told is of a place that stands, and less than the scan's.
    for (const travel of [bounce?.travel, worstToe.left?.travel, worstToe.right?.travel])
      expect(travel).toBeLessThanOrEqual(furthest);
    expect(Math.abs(bounce?.bounceSteer ?? Number.NaN)).toBeLessThanOrEqual(
      most(all.map((each) => each.bounce)) * 1.001,
    );
    expect([worstToe.right?.slopePart, worstToe.right?.bowPart].map(Number.isFinite)).toEqual([true, true]);
  });
});

test("a toe curve is chiefly what makes more of it at the longer end, and its worst may be anywhere along it", () => {
  const travels = Float64Array.of(-30, -20, -10, 0, 10, 20);
  const curve = (slope: number, bow: number) => travels.map((z) => slope * (z / 30) + bow * (z / 30) ** 2);
  for (const [slope, bow] of [
    [0.003, 0.001],
    [-0.003, 0.001],
    [0.001, -0.003],
    [0.002, 0.002],
  ] as const) {
    const told = worstToeOf(travels, curve(slope, bow), 6, 300);
    expectClose([told?.slopePart, told?.bowPart], [slope, bow], { abs: 1e-15 });
    expect(told?.chiefly).toBe(Math.abs(bow) > Math.abs(slope) ? "bow" : "slope");
  }
  expect(worstToeOf(travels, Float64Array.of(0, 0, -0.004, 0, 0.003, 0), 6, 300)).toMatchObject({
    toeChange: -0.004,
    travel: -10,
  });
  // Two places on one line through nothing tell no bow from a slope; a third beyond the count does not either.
  expect(worstToeOf(Float64Array.of(0, 10, 20), Float64Array.of(0, 0.001, 9), 2, 300)).toMatchObject({
    slopePart: 0,
    bowPart: 0,
    toeChange: 0.001,
  });
});
