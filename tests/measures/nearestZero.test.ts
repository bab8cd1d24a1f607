import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { nearestZero } from "../../src/measures/nearestZero.ts";
import { expectClose } from "../close.ts";

/** Zeros of functions that are made up so that they are known. */
const nothing = 1e-9;

/** With no value above `most`. */
const upTo = (most: number, of: (x: number) => number) => (x: number) => (x <= most ? of(x) : null);

describe("the nearest zero", () => {
  test("is the start itself where the function is as good as nothing there", () => {
    expect(nearestZero((x) => x - 5 + 0.9e-9, 5, 1, nothing)).toBe(5);
    expect(nearestZero((x) => 5 - x - 0.9e-9, 5, 1, nothing)).toBe(5);
    expect(nearestZero((x) => x - 5 + 1.1e-9, 5, 1, nothing)).not.toBe(5);
  });

  test.each([
    ["above", 5, [6.01, 2]],
    ["below", 5, [3.99, 8]],
    // Both lie within the same steps of 1 on either side of the start.
    ["above, by little", 5, [7.4, 2.5]],
    ["below, by little", 5, [7.5, 2.6]],
    ["above the start below nothing", -5, [-4.2, -8]],
    ["below the start below nothing", -5, [-5.8, -1]],
    ["below, the other one on the far side of nothing", -5, [-8, 4]],
    // Both on one side, far from nothing, and less than a reach from the start.
    ["the first of two above", 100, [101.5, 103.7]],
    ["the first of two below", -100, [-101.5, -103.7]],
  ])("of two is the nearer one: %s", (_, start, [near, far]) => {
    const two = (x: number) => (x - near) * (x - far);
    const found = [two, (x: number) => -two(x)].map((of) => nearestZero(of, start, 16, nothing));
    const nearest = Math.abs(near - start) < Math.abs(far - start) ? near : far;
    expectClose(found, [nearest, nearest], { abs: 1e-14 });
  });

  test("is found all the way to the reach, and not beyond it, either way", () => {
    fc.assert(
      fc.property(
        fc.double({ min: -100, max: 100, noNaN: true }),
        fc.double({ min: 0.01, max: 1000, noNaN: true }),
        fc.constantFrom(-1, 1),
        fc.constantFrom(-1, 1),
        (start, reach, way, sign) => {
          const zeroAt = (share: number) => {
            const zero = start + way * share * reach;
            return nearestZero((x) => sign * (x - zero), start, reach, 1e-12);
          };
          expectClose(zeroAt(0.999), start + way * 0.999 * reach, { abs: 1e-12 * (reach + Math.abs(start)) });
          expect(zeroAt(1.001)).toBeNull();
        },
      ),
    );
    // In the last step before the reach, where there is nothing to be found the other way.
    expectClose(
      nearestZero((x) => (x < -8 ? null : x - 15.5), 0, 16, nothing),
      15.5,
      { abs: 1e-13 },
    );
    expect(nearestZero((x) => x - 16, 0, 16, nothing)).toBe(16);
    expect(nearestZero((x) => 16 - x, 0, 16, nothing)).toBe(16);
    expect(nearestZero((x) => x + 16, 0, 16, nothing)).toBe(-16);
  });

  test("of a function without one, without a value at the start, or with no reach, is none", () => {
    expect(nearestZero((x) => 1 + x * x, 0, 16, nothing)).toBeNull();
    expect(
      nearestZero(
        upTo(3, (x) => x),
        4,
        16,
        nothing,
      ),
    ).toBeNull();
    expect(nearestZero((x) => x - 1, 0, 0, nothing)).toBeNull();
  });

  test("is closed in on with shorter steps before where the function stops having a value", () => {
    // Steps of 1: 3 has none, and 2.96875 is the fifth half way to it.
    const found = nearestZero(
      upTo(2.99, (x) => x - 2.95),
      0,
      16,
      nothing,
    );
    expectClose(found, 2.95, { abs: 1e-14 });
    const mirrored = nearestZero((x) => upTo(2.99, (y) => 2.95 - y)(-x), 0, 16, nothing);
    expect(mirrored).toBe(-Number(found));
    // The sixth is 2.984375: beyond it nothing is looked for.
    expectClose(
      nearestZero(
        upTo(2.99, (x) => x - 2.98),
        0,
        16,
        nothing,
      ),
      2.98,
      { abs: 1e-14 },
    );
    expect(
      nearestZero(
        upTo(2.99, (x) => x - 2.985),
        0,
        16,
        nothing,
      ),
    ).toBeNull();
  });

  test("is none where only a place without a value parts what is positive from what is negative", () => {
    expect(
      nearestZero(
        upTo(2.99, () => 1),
        0,
        16,
        nothing,
      ),
    ).toBeNull();
    expect(
      nearestZero(
        upTo(2.99, () => -1),
        0,
        16,
        nothing,
      ),
    ).toBeNull();
    expect(nearestZero((x) => (Math.abs(x - 2.5) < 0.1 ? null : x - 2.5), 0, 16, nothing)).toBeNull();
  });

  test("beyond a place without a value is not reached: it is looked for the other way", () => {
    const gap = (x: number) => (x > 0.9 && x < 2.1 ? null : (x - 3) * (x + 9));
    expectClose(nearestZero(gap, 0, 16, nothing), -9, { abs: 1e-13 });
  });

  test("of curves is found to the last bits, in no more looks than a few rounds take", () => {
    // Not next to 0, where a double has many more bits that could be closed in on.
    const levels = Array.from({ length: 240 }, (_, i) => (i - 119.5) / 100);
    for (const level of levels) {
      let looks = 0;
      const of = (x: number) => {
        looks++;
        return Math.tan(x) - Math.tan(level);
      };
      expectClose(nearestZero(of, 0, 1.5, 1e-12), level, { abs: 1e-14 });
      // 32 steps at most, and then half of the 50 rounds by which halving alone would come to the last bit.
      expect(looks).toBeLessThanOrEqual(1 + 32 + 25);
    }
  });

  test("of a curve that is flat on one side is closed in on by halves: false position alone would creep", () => {
    let looks = 0;
    const of = (x: number) => {
      looks++;
      return x < 0.9 ? -1e-6 : (x - 0.9) * 1e6 - 1e-6;
    };
    const found = nearestZero(of, 0, 16, nothing);
    expectClose(found, 0.9 + 1e-12, { abs: 1e-12 });
    expect(looks).toBeLessThan(2 + 120);
  });
});
