import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { locksOf } from "../../src/measures/locks.ts";
import { steer } from "../../src/measures/steer.ts";
import { findZero, turnOfInputLeft } from "../../src/measures/zero.ts";
import { expectClose } from "../close.ts";
import { seed } from "../oracles/cars.ts";
import { radians } from "../oracles/vectors.ts";
import {
  type Drawn,
  endOf,
  frontOf,
  inch,
  mirrored,
  offsetCar,
  poseOf,
  tabsAhead,
  withRack,
  withRods,
} from "./cars.ts";

describe("the rack's zero", () => {
  test("is where the car is drawn while both rods are cut to fit", () => {
    expect(endOf(withRack(offsetCar, { straightAhead: 7 })).zero).toBe(7);
  });

  test("is found again from the lengths that fitted a car drawn with its rack off the middle", () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (straightAhead) => {
        const { left, right } = endOf(withRack(offsetCar, { straightAhead })).rodLengths;
        // Steers that add up to less than 1e-9 rad count as nothing; a mm of this rack adds up to hundredths of a rad.
        expectClose(endOf(withRods(offsetCar, left, right)).zero, straightAhead, { abs: 1e-7 });
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

  test("is the nearest that a dense sweep both ways from the start finds, on whichever side it lies", () => {
    const fitted = endOf(offsetCar).rodLengths;
    const reach = 30;
    const grain = 0.25;
    const ways = { up: 0, down: 0, nowhere: 0 };
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (left, right, start) => {
          const front = frontOf(withRods(offsetCar, fitted.left + left, fitted.right + right));
          const sumAt = (rack: number): number | null => {
            const poses = poseOf(front, rack, 0);
            if (poses[Pose.Left + Side.Blame] !== 0 || poses[Pose.Right + Side.Blame] !== 0) return null;
            return steer(poses, Pose.Left) + steer(poses, Pose.Right);
          };
          /** How far off the sums change their sign, one way; null where they do not, or the wheels stop first. */
          const crossing = (way: number): number | null => {
            let last = sumAt(start);
            for (let off = grain; off <= reach && last !== null; off += grain) {
              const sum = sumAt(start + way * off);
              if (sum !== null && sum > 0 !== last > 0) return off;
              last = sum;
            }
            return null;
          };
          const [up, down] = [crossing(1), crossing(-1)];
          const zero = findZero(front, start, reach);
          if (up === null && down === null) {
            ways.nowhere++;
            expect(zero).toBeNull();
            return;
          }
          if (zero === null) throw new Error(`a sweep finds a zero ${up} up, ${down} down`);
          ways[zero > start ? "up" : "down"]++;
          // Heights are met to 1e-11 of 600 mm; near a dead point a steer changes by up to a tenth of a rad over a mm of it.
          expectClose(sumAt(zero), 0, { abs: 1e-9 });
          const nearest = Math.min(up ?? Number.POSITIVE_INFINITY, down ?? Number.POSITIVE_INFINITY);
          expect(Math.abs(Math.abs(zero - start) - nearest)).toBeLessThanOrEqual(grain + 1e-9);
        },
      ),
      { numRuns: 400, seed },
    );
    expect(Math.min(ways.up, ways.down, ways.nowhere)).toBeGreaterThan(5);
  });

  test("and with it every figure is the same, rods cut to fit or the same lengths written out, the toes unlike", () => {
    const uneven: Drawn = { ...offsetCar, left: { ...offsetCar.left, toe: radians(0.7) } };
    const fit = endOf(uneven);
    const cut = endOf(withRods(uneven, fit.rodLengths.left, fit.rodLengths.right));
    expect(Math.abs(fit.zero ?? 0)).toBeGreaterThan(0.1);
    expectClose(cut.zero, fit.zero, { abs: 1e-6 });
    expectClose(locksOf(cut), locksOf(fit), { abs: 1e-6 });
  });

  test("is none from where a wheel does not stand", () => {
    // 65 mm to the right the left tie rod does not reach (see outOfReach.test.ts), nor, mirrored, the right one to the left.
    expect(findZero(frontOf(offsetCar), -65, 130)).toBeNull();
    expect(findZero(frontOf(mirrored(offsetCar)), 65, 130)).toBeNull();
    expectClose(findZero(frontOf(offsetCar), -40, 130), 0, { abs: 1e-6 });
  });
});

describe("the way the road wheels turn as the rack goes to the left", () => {
  // Tabs behind the king pins are pushed to the left, which turns the wheels right; tabs ahead the other way.
  test.each([
    ["right", "behind", offsetCar],
    ["left", "ahead", tabsAhead],
  ] as const)("is %s with the tabs %s", (way, _, drawn) => {
    expect(turnOfInputLeft(frontOf(drawn), 0, 1)).toBe(way);
  });

  test("is not known where a wheel stands on one side only, or there is no way to go", () => {
    const [front, other] = [frontOf(offsetCar), frontOf(mirrored(offsetCar))];
    expect(turnOfInputLeft(front, -55, 10)).toBeNull();
    expect(turnOfInputLeft(front, -55, -10)).toBeNull();
    expect(turnOfInputLeft(other, 55, 10)).toBeNull();
    expect(turnOfInputLeft(front, 0, 0)).toBeNull();
  });
});
