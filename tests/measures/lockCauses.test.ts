import { describe, expect, test } from "vitest";
import { type LockCause, sharesOf } from "../../src/measures/lockShares.ts";
import { locksOf } from "../../src/measures/locks.ts";
import { noStops } from "../../src/measures/stops.ts";
import { expectClose } from "../close.ts";
import { type Drawn, endOf, offsetCar, setting, withRack, withRods } from "./cars.ts";

/** A car whose rods are so much longer than fits it, mm. */
function cutWrong(drawn: Drawn, left: number, right: number): Drawn {
  const fit = endOf(drawn).rodLengths;
  return withRods(drawn, fit.left + left, fit.right + right);
}

const central = withRack(offsetCar, { offset: 0 });

/** Steers that add up to less than 1e-9 rad count as straight ahead: that leaves a lock to some of it. */
const tolerance = { abs: 1e-8 };

function shareOf(made: ReturnType<typeof sharesOf>, cause: LockCause) {
  const share = made.shares.find((each) => each.cause === cause);
  if (share === undefined) throw new Error(`no share of ${cause}`);
  return share;
}

describe("shares of a difference of locks, by hand", () => {
  test("on a car alike but for its rods, cut 2 mm too long and 1 too short, all of it is theirs, 3 mm large", () => {
    const made = sharesOf({ drawn: cutWrong(central, 2, -1), setting });
    expect(made.shares.map(({ cause }) => cause)).toEqual(["unequal rods", "rest"]);
    const [rods, rest] = made.shares;
    expect(rods?.size).toBeCloseTo(3, 9);
    expect(Math.abs(made.difference.inner ?? 0)).toBeGreaterThan(0.01);
    expectClose([rods?.inner, rods?.outer], [made.difference.inner, made.difference.outer], tolerance);
    expectClose([rest?.inner, rest?.outer], [0, 0], tolerance);
    expect(rest?.size).toBeNull();
  });

  test("rods both as wrong make none, nor any that is as wrong the other way as nothing at all", () => {
    expect(sharesOf({ drawn: cutWrong(central, 2, 2), setting }).shares.map(({ cause }) => cause)).toEqual(["rest"]);
    const opposite = sharesOf({ drawn: cutWrong(central, 2, -2), setting });
    expect(shareOf(opposite, "unequal rods").size).toBeCloseTo(4, 9);
    for (const [left, right] of [
      [2, 0],
      [0, 2],
    ] as const)
      expect(shareOf(sharesOf({ drawn: cutWrong(central, left, right), setting }), "unequal rods").size).toBeCloseTo(
        left - right,
        9,
      );
  });

  test.each([
    [2, -1],
    [2, 0],
    [0, 2],
  ])(
    "of an offset and rods wrong by %d and %d each has the mean of what its going changes, first and last",
    (left, right) => {
      const made = sharesOf({ drawn: cutWrong(offsetCar, left, right), setting });
      const inner = (drawn: Drawn) => locksOf(endOf(drawn)).difference.inner ?? Number.NaN;
      const whole = inner(cutWrong(offsetCar, left, right));
      // Without their difference both rods are too long by the mean of it.
      const mean = (left + right) / 2;
      const withoutRods = inner(cutWrong(offsetCar, mean, mean));
      const withoutOffset = inner(cutWrong(central, left, right));
      const none = inner(cutWrong(central, mean, mean));
      expectClose(
        [shareOf(made, "unequal rods").inner, shareOf(made, "offset").inner, shareOf(made, "rest").inner],
        [(whole - withoutRods + withoutOffset - none) / 2, (whole - withoutOffset + withoutRods - none) / 2, none],
        tolerance,
      );
      expect(shareOf(made, "offset").size).toBe(-63.5);
    },
  );

  test("stops count by what the rack goes to each side, collars taken off", () => {
    const stops = { ...noStops, collar: { left: 3, right: 1 } };
    const made = sharesOf({ drawn: central, setting: { ...setting, inputTravel: { left: 50, right: 46 }, stops } });
    expect(made.shares.map(({ cause }) => cause)).toEqual(["unequal stops", "rest"]);
    expect(made.shares[0]?.size).toBe(50 - 3 - (46 - 1));
    expectClose(made.shares[0]?.inner, made.difference.inner, tolerance);
  });

  test("are told the largest first, whichever it is, and the rest last", () => {
    const unequal = { ...setting, inputTravel: { left: 50, right: 49.9 } };
    for (const error of [0.05, 3]) {
      const made = sharesOf({ drawn: cutWrong(offsetCar, error, -error), setting: unequal });
      expect(made.shares.at(-1)?.cause).toBe("rest");
      const sizes = made.shares.slice(0, -1).map(({ inner }) => Math.abs(inner ?? Number.NaN));
      expect(sizes.length).toBe(3);
      expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
      expect(made.shares.findIndex(({ cause }) => cause === "unequal rods")).toBe(error === 3 ? 0 : 1);
    }
  });
});
