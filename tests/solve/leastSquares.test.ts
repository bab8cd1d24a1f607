import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { describe, expect, it } from "vitest";
import { differenced } from "../../src/solve/least-squares/differences.ts";
import type { Equations } from "../../src/solve/least-squares/equations.ts";
import { settle } from "../../src/solve/least-squares/settle.ts";
import { randomFrom } from "../../src/solve/search/random.ts";
import { type Reference, references } from "./nist.ts";

function equationsOf({ x, y, model, certified, sumOfSquares }: Reference): Equations {
  const sigma = Math.sqrt(sumOfSquares / (x.length - certified.length));
  const steps = Float64Array.from(certified, ([value]) => Math.abs(value) * 1e-5);
  return differenced(certified.length, x.length, steps, (b, misfits) => {
    for (let i = 0; i < x.length; i++) misfits[i] = (model(x[i], b) - y[i]) / sigma;
    return misfits.every(Number.isFinite);
  });
}

// NIST/ITL Statistical Reference Datasets, nonlinear regression: data, starts and certified values quoted from memory. That
// the certified sum of squares comes out to ten digits from that data is what shows that both were remembered right.
describe.each(references)("the reference problem $name", (reference) => {
  const { certified, starts, sumOfSquares } = reference;
  it.each(starts.map((start, i) => [i + 1, start] as const))("from start %i", (_, start) => {
    const settled = settle(equationsOf(reference), Float64Array.from(start), {
      steps: 2000,
      enough: 1e-9,
      entryError: 1e-9,
    });
    expect(settled?.converged).toBe(true);
    if (settled === null) return;
    const freedom = reference.x.length - certified.length;
    // In sigmas that were made of the certified sum, the sum is the freedom.
    expect(settled.cost / freedom).toBeCloseTo(1, 9);
    expect(sumOfSquares).toBeGreaterThan(0);
    certified.forEach(([value, deviation], j) => {
      // Differences good to 1e-8 of the misfits leave x good to some 1e-8 of its deviation; the digits quoted are eleven.
      expect(Math.abs(settled.x[j] - value)).toBeLessThan(1e-6 * deviation + 1e-10 * Math.abs(value));
      expect(Math.abs((settled.confidence.deviations[j] as number) / deviation - 1)).toBeLessThan(1e-6);
    });
  });
});

it("agrees with a general library on random curves", () => {
  const random = randomFrom(20);
  for (let round = 0; round < 20; round++) {
    const [a, b, c] = [1 + random(), 0.5 + random(), random() - 0.5];
    const x = Array.from({ length: 15 }, (_, i) => i / 3);
    const y = x.map((at) => a * Math.exp(-b * at) + c + 0.02 * (random() - 0.5));
    const curve = (at: number, p: ArrayLike<number>) => p[0] * Math.exp(-p[1] * at) + p[2];
    const ours = settle(
      differenced(3, x.length, new Float64Array(3).fill(1e-5), (p, misfits) => {
        x.forEach((at, i) => {
          misfits[i] = curve(at, p) - y[i];
        });
        return true;
      }),
      Float64Array.of(1, 1, 0),
      { enough: 1e-10 },
    );
    const theirs = levenbergMarquardt({ x, y }, (p: number[]) => (at: number) => curve(at, p), {
      initialValues: [1, 1, 0],
      damping: 1,
      maxIterations: 1000,
      gradientDifference: 1e-6,
      errorTolerance: 1e-14,
      centralDifference: true,
    });
    for (const [j, value] of theirs.parameterValues.entries()) expect(ours?.x[j]).toBeCloseTo(value, 5);
    // The library stops by its own rule; it may not be better by more than rounding.
    expect(ours?.cost).toBeLessThan(theirs.parameterError * (1 + 1e-9));
  }
});

it("gives up on a start that cannot be evaluated, and shortens a step that goes where nothing can", () => {
  const root = (x: Float64Array, misfits: Float64Array) => {
    misfits[0] = Math.log(x[0]) - 3;
    return x[0] > 0;
  };
  expect(settle(differenced(1, 1, Float64Array.of(1e-6), root), Float64Array.of(-1))).toBe(null);
  // Gauss and Newton's step from 200 goes to 200 (1 − log 200 + 3) < 0.
  const settled = settle(differenced(1, 1, Float64Array.of(1e-6), root), Float64Array.of(200), { enough: 1e-9 });
  expect(settled?.x[0]).toBeCloseTo(Math.exp(3), 6);
  expect(settled?.chance).toBe(null);
});

it("says when its steps ran out", () => {
  const [reference] = references;
  const settled = settle(equationsOf(reference), Float64Array.from(reference.starts[0]), { steps: 2 });
  expect(settled?.converged).toBe(false);
  expect(settled?.steps).toBe(2);
});
