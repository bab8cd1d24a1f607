import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { sweepRange } from "../../src/measures/leastRodAngle.ts";
import { placeOf } from "../../src/measures/span.ts";
import { transmissionAngle } from "../../src/measures/tieRod.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { acrossTyre, worstToeOf } from "../../src/measures/worstToe.ts";
import { expectClose } from "../close.ts";
import { radians } from "../oracles/vectors.ts";
import { endOf, inch, mirrored, offsetCar, poseOf, setting, tabsAhead, withRack } from "./cars.ts";

describe("least rod-to-arm angle over rack and travel", () => {
  test.each([
    ["offset rack", offsetCar],
    ["tabs ahead", tabsAhead],
    ["lower rack", withRack(offsetCar, { up: 7.5 * inch, offset: 0 })],
  ])("is never more than a fine sweep finds, and no more than its grid's grain below: %s", (_, drawn) => {
    const end = endOf(drawn);
    const { rodAngle, blame } = sweepRange(end);
    expect(blame).toBeNull();
    for (const [name, side] of [
      ["left", Pose.Left],
      ["right", Pose.Right],
    ] as const) {
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i <= 80; i++) {
        for (let j = 0; j <= 80; j++) {
          const rack = placeOf({ from: -2 * inch, to: 2 * inch, rows: 81 }, i);
          const poses = poseOf(end.front, rack, placeOf({ from: -3 * inch, to: 3 * inch, rows: 81 }, j));
          if (poses[side + Side.Blame] === 0) least = Math.min(least, transmissionAngle(poses, side));
        }
      }
      const found = rodAngle[name]?.angle ?? Number.NaN;
      expect(found).toBeLessThanOrEqual(least + 1e-6);
      expect(found).toBeGreaterThan(least - radians(0.2));
    }
  });

  test.each([4, 8])("a rack that goes %d in, past a dead point, leaves no angle and tells the widest gap", (travel) => {
    const end = endOf(offsetCar, { ...setting, inputTravel: { left: travel * inch, right: travel * inch } });
    const { rodAngle, blame } = sweepRange(end);
    const { input: rack = Number.NaN, travel: there = Number.NaN, angle } = rodAngle.right ?? {};
    expect(angle).toBeLessThan(1e-4);
    expect(Math.abs(rack)).toBeLessThan(travel * inch);
    expect(blame).toMatchObject({ link: "tie rod" });
    // A hundredth of an inch further out along the rack the rod no longer reaches: it was the dead point.
    const further = poseOf(end.front, rack + Math.sign(rack) * 0.01 * inch, there);
    expect(further[Pose.Right + Side.Blame]).not.toBe(0);
  });

  test("the gap that is told is the widest of both wheels", () => {
    const end = endOf(offsetCar, { ...setting, inputTravel: { left: 8 * inch, right: 8 * inch } });
    const { blame } = sweepRange(end);
    const ends = [-8, 8].flatMap((rack) => {
      const poses = poseOf(end.front, rack * inch, -3 * inch);
      return [poses[Pose.Left + Side.Gap], poses[Pose.Right + Side.Gap]];
    });
    expect(Math.abs(blame?.gap ?? 0)).toBeGreaterThanOrEqual(Math.max(...ends.map(Math.abs)));
  });

  test("a mirrored car has it on the other side, to the last bit", () => {
    const [here, there] = [worstOf(endOf(offsetCar)), worstOf(endOf(mirrored(offsetCar)))];
    expect(there.rodAngle.left?.angle).toBe(here.rodAngle.right?.angle);
    expect(there.toe.left).toEqual(here.toe.right);
    expect(there.bounce?.bounceSteer).toBe(-(here.bounce?.bounceSteer ?? Number.NaN));
  });
});

describe("worst toe", () => {
  const travels = Float64Array.from({ length: 13 }, (_, i) => (i - 6) * 10);
  const curve = (slope: number, bow: number) => travels.map((t) => slope * t + bow * t * t);

  test("a curve made of a slope and a bow is split into them", () => {
    const worst = worstToeOf(travels, curve(-2e-5, 3e-6), 13, 270);
    expectClose([worst?.slopePart, worst?.bowPart], [-2e-5 * 60, 3e-6 * 3600], { abs: 1e-15 });
    expect(worst?.chiefly).toBe("bow");
    expect(worstToeOf(travels, curve(4e-5, -1e-8), 13, 270)?.chiefly).toBe("slope");
  });

  test("the split holds for a travel longer one way than the other", () => {
    const some = travels.subarray(3);
    const changes = some.map((t) => 1e-5 * t - 2e-7 * t * t);
    const worst = worstToeOf(some, changes, 10, 270);
    expectClose([worst?.slopePart, worst?.bowPart], [1e-5 * 60, -2e-7 * 3600], { abs: 1e-15 });
  });

  test("is the change of largest size, where it is, signed, and across the tyre", () => {
    expect(worstToeOf(travels, curve(-2e-5, 3e-6), 13, 270)).toMatchObject({ travel: -60 });
    expectClose(worstToeOf(travels, curve(0, -3e-6), 13, 270)?.toeChange, -3e-6 * 3600, { abs: 1e-15 });
    // Toe in inches is the tyre's diameter times the sine of the toe (common practice): 24 in at 0.15° is 0.0628318 in.
    expectClose(acrossTyre(radians(0.15), 12), 0.0628318, { abs: 5e-8 });
  });

  test("a single place has neither slope nor bow", () => {
    expect(worstToeOf(Float64Array.of(0), Float64Array.of(0), 1, 270)).toMatchObject({ slopePart: 0, bowPart: 0 });
    expect(worstToeOf(travels, travels, 0, 270)).toBeNull();
  });
});
