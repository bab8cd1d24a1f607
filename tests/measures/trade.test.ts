import { describe, expect, test } from "vitest";
import { locksOf } from "../../src/measures/locks.ts";
import { worstOf } from "../../src/measures/worst.ts";
import { endOf, inch, offsetCar, tabsAhead, withCorners, withRack } from "./cars.ts";

/** Facts that the trade goes by (common practice, no source), asked of whole front ends. */

const tabsBehind = withRack(offsetCar, { offset: 0 });

function ackermannAtLock(drawn: Parameters<typeof endOf>[0]): number {
  return locksOf(endOf(drawn)).left?.ackermann ?? Number.NaN;
}

function withTabOut(drawn: typeof offsetCar, by: number) {
  const outer = drawn.left.tieRodOuter;
  return withCorners(drawn, { tieRodOuter: { ...outer, y: outer.y + by } });
}

describe("Ackermann effect", () => {
  test.each([
    ["behind", tabsBehind],
    ["ahead", tabsAhead],
  ])("moving the rack back raises it, tabs %s", (_, drawn) => {
    const { ahead } = drawn.mechanism;
    const back = ackermannAtLock(withRack(drawn, { ahead: ahead - inch / 2 }));
    const forward = ackermannAtLock(withRack(drawn, { ahead: ahead + inch / 2 }));
    expect(back).toBeGreaterThan(ackermannAtLock(drawn));
    expect(forward).toBeLessThan(ackermannAtLock(drawn));
  });

  test("with the tab ahead of the king pin, a tab nearer the wheel raises it", () => {
    expect(ackermannAtLock(withTabOut(tabsAhead, inch / 2))).toBeGreaterThan(ackermannAtLock(tabsAhead));
  });

  test("with the tab behind the king pin, a tab further from the wheel raises it", () => {
    expect(ackermannAtLock(withTabOut(tabsBehind, -inch / 2))).toBeGreaterThan(ackermannAtLock(tabsBehind));
  });
});

describe("bump steer", () => {
  const partsOf = (drawn: typeof offsetCar) => {
    const toe = worstOf(endOf(drawn)).toe.left;
    return [toe?.slopePart ?? Number.NaN, toe?.bowPart ?? Number.NaN] as const;
  };
  const [slope, bow] = partsOf(tabsBehind);
  const changeOf = (drawn: typeof offsetCar) => {
    const [newSlope, newBow] = partsOf(drawn);
    return { slope: Math.abs(newSlope - slope), bow: Math.abs(newBow - bow) };
  };

  test("the inner ends' height changes the slope more than the bow", () => {
    const change = changeOf(withRack(tabsBehind, { up: tabsBehind.mechanism.up + inch / 2 }));
    expect(change.slope).toBeGreaterThan(5 * change.bow);
  });

  test("the rods' length changes the bow more than the slope", () => {
    const { eyeToEye } = tabsBehind.mechanism;
    const change = changeOf(withRack(tabsBehind, { eyeToEye: eyeToEye - 4 * inch }));
    expect(change.bow).toBeGreaterThan(change.slope);
  });

  test("an offset rack steers both wheels the same way in bounce; the inner ends on the middle do not", () => {
    const offset = worstOf(endOf(offsetCar)).bounce?.bounceSteer ?? Number.NaN;
    expect(Math.abs(offset)).toBeGreaterThan((0.3 * Math.PI) / 180);
    expect(worstOf(endOf(tabsBehind)).bounce?.bounceSteer).toBeCloseTo(0, 12);
  });
});
