import fc from "fast-check";
import { describe, expect, test, vi } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { expectAsScanned, expectSamePose } from "../oracles/agreement.ts";
import { seed, within } from "../oracles/cars.ts";
import { carsOf, combinations } from "../oracles/combinations.ts";
import { type SideName, sides } from "../oracles/corner.ts";
import { frontOf, placesIn, solved } from "../oracles/kernel.ts";
import { cornerOf, follow, reach } from "../oracles/newton.ts";

/** The Newton is slow, and the machine may be busy. */
vi.setConfig({ testTimeout: 180_000 });

type Share = readonly [input: number, travel: number];

/** Shares of the range of input and of travel, for two cars in turn: every corner, some ends between them and a place inside. */
const shares: readonly (readonly Share[])[] = [
  [
    [0, 1],
    [1, 1],
    [1, -1],
    [-0.43, 0.37],
  ],
  [
    [-1, 0],
    [-1, -1],
    [-1, 1],
    [0.52, -0.37],
  ],
];

const spread = (share: number, low: number, high: number) => (share < 0 ? -share * low : share * high);

/** How many of the poses close: each where the Newton and the kernel both find it, the others where neither does. */
function closedOf(drawn: Drawn, side: SideName, places: readonly Share[]): number {
  const front = frontOf(drawn);
  const corner = cornerOf(drawn, side);
  const { inputLow, inputHigh, travelLow, travelHigh } = drawn.range;
  let state = corner.drawn;
  let closed = 0;
  for (const [i, z] of places) {
    const to = { input: spread(i, inputLow, inputHigh), travel: spread(z, travelLow, travelHigh), rod: corner.rod };
    const onward = follow(corner, state, to);
    const newton = onward.reached ? onward : reach(corner, to.input, to.travel);
    const found = placesIn(solved(front, to.input, to.travel), side);
    const path = `${side}, input ${to.input}, travel ${to.travel}`;
    expect(found !== null, `${path}: the kernel finds a pose`).toBe(newton.reached);
    if (!newton.reached || found === null) continue;
    closed++;
    expectSamePose(corner, newton.state, found, path);
    state = newton.state;
  }
  return closed;
}

describe.each(combinations)("$linkage steered by $mechanism", ({ linkage, mechanism }) => {
  test("stands where the generic Newton does, over its whole range", () => {
    let closed = 0;
    let cars = 0;
    fc.assert(
      // The two sides of a car are unlike: each car's other side is as good as another car's.
      fc.property(carsOf(linkage, mechanism), (drawn) => {
        closed += closedOf(drawn, sides[cars % 2], shares[cars % 2]);
        cars++;
      }),
      { seed, numRuns: 2, endOnFailure: true },
    );
    // Not all of what could be drawn turns over all of its range.
    expect(closed).toBeGreaterThan(2);
  });

  test.runIf(linkage !== "fixed-kingpin")(
    "stands by the rule of which places count, at the ends of its travel and far beyond",
    () => {
      const met = { closes: 0, "does not close": 0, "too near to tell": 0 };
      fc.assert(
        fc.property(
          carsOf(linkage, mechanism),
          fc.constantFrom(...sides),
          within(-1, 1),
          within(-4, 4),
          (drawn, side, i, z) => {
            const { inputLow, inputHigh, travelLow, travelHigh } = drawn.range;
            const input = spread(i, inputLow, inputHigh);
            const travel = spread(z, travelLow, travelHigh);
            met[expectAsScanned(drawn, side, placesIn(solved(frontOf(drawn), input, travel), side), input, travel)]++;
          },
        ),
        { seed, numRuns: 16, endOnFailure: true },
      );
      expect(met.closes).toBeGreaterThan(1);
      expect(met["too near to tell"]).toBeLessThan(6);
    },
  );
});
