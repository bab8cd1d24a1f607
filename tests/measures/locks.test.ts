import { describe, expect, test } from "vitest";
import { locksOf } from "../../src/measures/locks.ts";
import { shortOfIdeal, turning } from "../../src/measures/turning.ts";
import { radians } from "../oracles/vectors.ts";
import { type Drawn, endOf, mirrored, offsetCar, setting, withRack, withRods } from "./cars.ts";

const short = { ...setting, inputTravel: { left: 10, right: 10 } };

/** A car whose wheels stand straight with the rack 12 mm to the left of its middle, drawn as if it were on it. */
function cutFor12(): Drawn {
  const { left, right } = endOf(withRack(offsetCar, { straightAhead: 12 })).rodLengths;
  return withRods(offsetCar, left, right);
}

describe("a difference of locks is not told", () => {
  test.each([
    ["left", cutFor12()],
    ["right", mirrored(cutFor12())],
  ] as const)("where straight ahead lies beyond an end, so that both ends turn the car %s", (turn, drawn) => {
    const end = endOf(drawn, short);
    expect(Math.abs(end.zero ?? 0)).toBeCloseTo(12, 6);
    const { left, right, difference } = locksOf(end);
    expect([left?.turn, right?.turn]).toEqual([turn, turn]);
    expect(difference).toEqual({ inner: null, outer: null, turnRadius: null });
  });

  test.each([
    ["left", { left: 2, right: 50 }, -50, 2],
    ["right", { left: 50, right: 2 }, -2, 50],
  ] as const)(
    "of circles alone, where one lock is too small to tell its circle: travel to the %s",
    (_, inputTravel, toLeft, toRight) => {
      const { left, right, difference } = locksOf(endOf(offsetCar, { ...setting, inputTravel }));
      // Tabs behind: the rack's right end is the left lock.
      expect([left?.input, right?.input]).toEqual([toLeft, toRight]);
      const small = inputTravel.left === 2 ? right : left;
      const large = inputTravel.left === 2 ? left : right;
      expect(small?.outer).toBeLessThan(radians(2));
      expect(small?.outer).toBeGreaterThan(radians(0.5));
      expect(small).toMatchObject({ turnRadius: null, idealInner: null, ackermann: null, percentOfIdealInner: null });
      expect(large?.turnRadius).toBeGreaterThan(1000);
      expect(difference.turnRadius).toBeNull();
      expect(difference.inner).toBe((left?.inner ?? 0) - (right?.inner ?? 0));
    },
  );

  test("where no wheel says which way the rack turns them, and then there are no locks", () => {
    const { left, right, difference } = locksOf({ ...endOf(offsetCar), inputLeftTurns: null });
    expect([left, right]).toEqual([null, null]);
    expect(difference).toEqual({ inner: null, outer: null, turnRadius: null });
  });
});

test("without a place where the wheels stand straight nothing is told of turning, and nothing goes wrong", () => {
  const { left, right } = endOf(offsetCar).rodLengths;
  const end = endOf(withRods(offsetCar, left + 40, right - 40), { ...setting, inputTravel: { left: 5, right: 5 } });
  expect([end.zero, end.zeroSteer]).toEqual([null, null]);
  expect(locksOf(end).left).toMatchObject({ turn: null, inner: null, outer: null, turnRadius: null, blame: null });
  expect(locksOf(end).difference).toEqual({ inner: null, outer: null, turnRadius: null });
});

test("what is lacking of the ideal, added to the inner wheel's turn, makes Ackermann's condition hold; from 2 degrees on", () => {
  // The planar rack linkage of 50 mm: inner and outer from root finding; see the published planar rack.
  const [w, l, inner, outer] = [1300, 2400, radians(28.49605), radians(24.07924)];
  const way = turning(inner, outer, w, l);
  const ideal = inner + (shortOfIdeal(way) ?? Number.NaN);
  expect(1 / Math.tan(outer) - 1 / Math.tan(ideal)).toBeCloseTo(w / l, 12);
  expect(shortOfIdeal(turning(0.05, radians(1), w, l))).toBeNull();
  expect(turning(0.05, radians(1.999), w, l).idealInner).toBeNull();
  expect(turning(0.05, radians(2), w, l).idealInner).not.toBeNull();
});
