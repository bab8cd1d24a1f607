import { describe, expect, it } from "vitest";
import type { Equations } from "../../src/solve/least-squares/equations.ts";
import { nextReading } from "../../src/solve/least-squares/nextReading.ts";
import { type Settled, settle } from "../../src/solve/least-squares/settle.ts";
import { randomFrom } from "../../src/solve/search/random.ts";
import { distancesOf, everyPair, framed, network, type Pair, scattered } from "./network.ts";
import { normalFrom } from "./normal.ts";

function settledFrom(points: number, pairs: readonly Pair[], seed: number): { truth: Float64Array; settled: Settled } {
  const truth = scattered(points, seed);
  const random = randomFrom(seed + 1);
  const start = truth.map((value) => value + 40 * (random() - 0.5));
  const read = distancesOf(truth, pairs).map((value) => value + 2 * (random() - 0.5));
  const settled = settle(network(points, pairs, read), start);
  if (settled === null) throw new Error("distances can always be worked out");
  return { truth, settled };
}

describe("a network of distances that hangs on nothing", () => {
  it.each([4, 5, 8, 12])("of %i points has six loose directions: three shifts and three turns", (points) => {
    const pairs = everyPair(points);
    const { settled } = settledFrom(points, pairs, points);
    const { confidence, x } = settled;
    expect(settled.converged).toBe(true);
    expect(confidence.rank).toBe(3 * points - 6);
    expect(confidence.freedom).toBe(pairs.length - (3 * points - 6));
    expect(confidence.loose).toHaveLength(6);
    for (const move of confidence.loose) {
      for (const [a, b] of pairs) {
        // A rigid move alters no distance: to first order its difference between two points is square to their line.
        const along = [0, 1, 2].reduce(
          (sum, k) => sum + (move[3 * a + k] - move[3 * b + k]) * (x[3 * a + k] - x[3 * b + k]),
          0,
        );
        expect(Math.abs(along)).toBeLessThan(1e-9 * 1500);
      }
    }
    expect(confidence.deviations.every((deviation) => deviation === "undetermined")).toBe(true);
    const sum = confidence.checks.reduce((total, { redundancy }) => total + redundancy, 0);
    expect(sum).toBeCloseTo(confidence.freedom, 9);
  });

  it("without a distance to spare checks nothing", () => {
    const { settled } = settledFrom(4, everyPair(4), 7);
    expect(settled.confidence.freedom).toBe(0);
    expect(settled.confidence.checks.every(({ checked }) => !checked)).toBe(true);
    expect(settled.chance).toBe(null);
  });

  it("with a distance short sways in a seventh direction, and asks for a distance that stops it", () => {
    const missing: Pair = [2, 3];
    const pairs = everyPair(5).filter(([a, b]) => !(a === missing[0] && b === missing[1]) && !(a === 2 && b === 4));
    const { settled } = settledFrom(5, pairs, 11);
    // 5 points: 15 − 6 = 9 to know, 8 distances.
    expect(settled.confidence.loose).toHaveLength(7);
    const rows = [[0, 1] as Pair, missing, [0, 2] as Pair].map((pair) => {
      const row = new Float64Array(15);
      network(5, [pair], [0]).evaluate(settled.x, new Float64Array(1), row);
      return row;
    });
    const next = nextReading(settled.confidence, rows);
    expect(next?.candidate).toBe(1);
    expect(next?.gives).toBe("a new direction");
  });
});

describe("a network on a frame", () => {
  const points = 6;
  const pairs = everyPair(points);
  const onFrame = (read: readonly number[], frame: Float64Array): Equations => framed(points, pairs, read, frame);

  it("knows its points as well as many sheets scatter", () => {
    const truth = scattered(points, 5);
    const exact = distancesOf(truth, pairs);
    const normal = normalFrom(77);
    const sheets = 2000;
    const sums = new Float64Array(3 * points);
    let predicted: readonly (number | "undetermined")[] = [];
    let chances = 0;
    for (let sheet = 0; sheet < sheets; sheet++) {
      const frame = truth.map((value) => value + normal());
      const settled = settle(
        onFrame(
          exact.map((value) => value + normal()),
          frame,
        ),
        truth,
      );
      if (settled === null) throw new Error("distances can always be worked out");
      predicted = settled.confidence.deviations;
      settled.x.forEach((value, j) => {
        sums[j] += (value - truth[j]) ** 2;
      });
      if ((settled.chance ?? 1) < 0.1) chances++;
    }
    predicted.forEach((deviation, j) => {
      // A variance from n sheets scatters by √(2/n), its root by √(1/2n): 1.6 %; of 18 the worst within 4 of those, and 1 % for curvature.
      expect(Math.abs(Math.sqrt(sums[j] / sheets) / (deviation as number) - 1)).toBeLessThan(
        4 / Math.sqrt(2 * sheets) + 0.01,
      );
    });
    // One sheet in ten has a chance below a tenth: 4 standard deviations of a binomial.
    expect(Math.abs(chances / sheets - 0.1)).toBeLessThan(4 * Math.sqrt((0.1 * 0.9) / sheets));
  }, 60_000);

  it("says what a further distance takes off the variances, as working it all out again does", () => {
    const truth = scattered(points, 5);
    const exact = distancesOf(truth, pairs);
    const settled = settle(onFrame(exact, truth), truth);
    if (settled === null) throw new Error("distances can always be worked out");
    const rows = pairs.map((pair) => {
      const row = new Float64Array(3 * points);
      network(points, [pair], [0]).evaluate(truth, new Float64Array(1), row);
      return row;
    });
    const next = nextReading(settled.confidence, rows);
    if (next?.gives !== "less spread") throw new Error("a frame leaves nothing loose");
    const traces = pairs.map((pair, i) => {
      const twice: Equations = onFrame(exact, truth);
      const more = new Float64Array(3 * points);
      network(points, [pair], [0]).evaluate(truth, new Float64Array(1), more);
      const again = settle(
        {
          ...twice,
          readings: twice.readings + 1,
          evaluate: (x, misfits, jacobian) => {
            const cut = twice.readings * twice.unknowns;
            twice.evaluate(x, misfits.subarray(0, twice.readings), jacobian?.subarray(0, cut) ?? null);
            jacobian?.set(more, cut);
            misfits[twice.readings] = distancesOf(x, [pair])[0] - exact[i];
            return true;
          },
        },
        truth,
      );
      return again?.confidence.deviations.reduce<number>((sum, deviation) => sum + (deviation as number) ** 2, 0) ?? 0;
    });
    expect(next.after).toBeCloseTo(Math.min(...traces), 6);
    expect(traces[next.candidate]).toBeCloseTo(next.after, 6);
    expect(next.after).toBeLessThan(next.before);
  });
});

it("settles 40 points from some 200 distances in half a second", () => {
  const points = 40;
  const pairs = everyPair(points).filter(([a, b]) => b - a <= 5 || (a + b) % 11 === 0);
  expect(pairs.length).toBeGreaterThan(190);
  settledFrom(points, pairs, 3);
  const began = process.cpuUsage();
  const { settled } = settledFrom(points, pairs, 4);
  const spent = process.cpuUsage(began);
  expect(settled.converged).toBe(true);
  expect((spent.user + spent.system) / 1e6).toBeLessThan(0.5);
});
