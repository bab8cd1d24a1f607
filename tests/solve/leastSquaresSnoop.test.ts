import { describe, expect, it } from "vitest";
import { differenced } from "../../src/solve/least-squares/differences.ts";
import { snoop } from "../../src/solve/least-squares/snoop.ts";
import { distancesOf, everyPair, framed, scattered } from "./network.ts";
import { normalFrom } from "./normal.ts";

const points = 7;
const pairs = everyPair(points);

/** A sheet whose readings scatter by their sigmas, with blunders of so many sigmas. */
function sheet(seed: number, blunders: readonly (readonly [reading: number, by: number])[]) {
  const truth = scattered(points, 40);
  const normal = normalFrom(seed);
  const read = distancesOf(truth, pairs).map((value) => value + normal());
  for (const [reading, by] of blunders) read[reading] += by;
  const found = snoop(framed(points, pairs, read, truth), truth);
  if (found === null) throw new Error("distances can always be worked out");
  return found;
}

describe("wrong readings", () => {
  it("are found one by one, with their sizes", () => {
    for (let seed = 1; seed <= 20; seed++) {
      const found = sheet(seed, [
        [2, 60],
        [9, -45],
      ]);
      const by = new Map(found.blunders.map((blunder) => [blunder.reading, blunder]));
      for (const [reading, size] of [
        [2, 60],
        [9, -45],
      ] as const) {
        const blunder = by.get(reading);
        expect(blunder).toBeDefined();
        if (blunder === undefined) continue;
        expect(Math.abs(blunder.by - size)).toBeLessThan(4.5 * blunder.deviation);
      }
      expect(found.kept).toHaveLength(pairs.length + 6 - found.blunders.length);
    }
  });

  it("are called so on sound sheets no more often than was said", () => {
    const sheets = 1000;
    let called = 0;
    for (let seed = 1; seed <= sheets; seed++) if (sheet(seed, []).blunders.length > 0) called++;
    // 1 in 100, and 4 standard deviations of a binomial above it; being on the safe side is no fault, never calling one would be.
    expect(called / sheets).toBeLessThan(0.01 + 4 * Math.sqrt((0.01 * 0.99) / sheets));
    expect(called).toBeGreaterThan(0);
  }, 60_000);

  it("of the least size that is called found are found as often as was said", () => {
    const sheets = 400;
    const clean = sheet(1, []);
    const check = clean.settled.confidence.checks[5];
    if (!check.checked) throw new Error("every distance of this network is checked");
    let called = 0;
    let named = 0;
    for (let seed = 1; seed <= sheets; seed++) {
      const { blunders } = sheet(seed, [[5, check.leastFound]]);
      if (blunders.length > 0) called++;
      if (blunders.some(({ reading, or }) => reading === 5 || or.includes(5))) named++;
    }
    const scatter = 4 * Math.sqrt((0.8 * 0.2) / sheets);
    // Its own test fails in 80 of 100, and then some reading is called wrong: that one, or one it can be taken for.
    expect(called / sheets).toBeGreaterThan(0.8 - scatter);
    // Of those called, the wrong one is left unnamed only where it is out by odds of 19 to 1.
    expect(named / called).toBeGreaterThan(0.95 - 4 * Math.sqrt((0.95 * 0.05) / called));
  }, 60_000);
});

it("two readings that say the same thing differently cannot be told apart; one that says a thing alone is unchecked", () => {
  // x read twice, y once: which reading of x is wrong nobody can know.
  const read = [10, 30, 5];
  const equations = differenced(2, 3, Float64Array.of(1e-3, 1e-3), (x, misfits) => {
    misfits[0] = x[0] - read[0];
    misfits[1] = x[0] - read[1];
    misfits[2] = x[1] - read[2];
    return true;
  });
  const found = snoop(equations, Float64Array.of(0, 0));
  expect(found?.blunders).toHaveLength(1);
  const [blunder] = found?.blunders ?? [];
  expect([blunder.reading, ...blunder.or].sort()).toEqual([0, 1]);
  expect(Math.abs(blunder.by)).toBeCloseTo(20, 9);
  expect(blunder.deviation).toBeCloseTo(Math.SQRT2, 9);
  expect(found?.unchecked).toEqual(found?.kept);
});
