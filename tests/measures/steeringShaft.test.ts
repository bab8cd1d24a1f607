import { describe, expect, test } from "vitest";
import type { Point } from "../../src/kinematics/drawn.ts";
import { bestPhase, bestPhases, shaftRun, speedAt, speedRange } from "../../src/measures/steeringShaft.ts";
import { degrees, point, radians, rotated, unit } from "../oracles/vectors.ts";

/**
 * Hooke's joint: tan θ2 = tan θ1/cos β, with both turns counted from where the driving fork lies in the plane of the two
 * shafts; speeds' ratio cos β/(1 − sin²β cos²θ1). The figures below are derived from these two formulas, to the digits shown.
 */
const bent = [
  { bend: 10, fastest: 1.015427, slowest: 0.984808, even: 44.78072, lead: 0.43856 },
  { bend: 20, fastest: 1.064178, slowest: 0.939693, even: 44.10916, lead: 1.78168 },
  { bend: 30, fastest: 1.154701, slowest: 0.866025, even: 42.9414, lead: 4.11719 },
  { bend: 45, fastest: Math.SQRT2, slowest: Math.SQRT1_2, even: 40.06036, lead: 9.87928 },
];

/** Shafts that bend one after the other about the vertical axis, by so many degrees each. */
function shafts(...bends: readonly number[]): readonly Point[] {
  let way = 0;
  return [0, ...bends].map((bend) => {
    way += radians(bend);
    return point(Math.cos(way), Math.sin(way), 0);
  });
}

/** How far the last shaft has turned when the first has turned by `turn`, its speed summed up (Simpson's rule). */
function turned(axes: readonly Point[], turn: number): number {
  const steps = 400;
  let sum = 0;
  for (let i = 0; i <= steps; i++) {
    const weight = i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2;
    sum += weight * speedAt(axes, [], (turn * i) / steps);
  }
  return (sum * turn) / steps / 3;
}

describe("one universal joint", () => {
  test.each(bent)(
    "bent $bend degrees turns between $slowest and $fastest of the speed",
    ({ bend, slowest, fastest }) => {
      const run = speedRange(shafts(bend), []);
      expect(run.slowest).toBeCloseTo(slowest, 5);
      expect(run.fastest).toBeCloseTo(fastest, 5);
      expect(run.fastest).toBeCloseTo(1 / Math.cos(radians(bend)), 12);
    },
  );

  test.each(bent)(
    "bent $bend degrees is even at $even degrees, where it leads or lags most",
    ({ bend, even, lead }) => {
      // The table counts from the fork's other end, a quarter turn on.
      const axes = shafts(bend);
      const fromFast = radians(90 - even);
      const places = [radians(even), fromFast].filter((turn) => Math.abs(speedAt(axes, [], turn) - 1) < 1e-6);
      expect(places).toHaveLength(1);
      expect(Math.abs(degrees(turned(axes, places[0]) - places[0]))).toBeCloseTo(lead, 4);
    },
  );

  test.each([
    [15, 17.19212],
    [30, 33.69007],
    [45, 49.10661],
    [60, 63.43495],
    [75, 76.93569],
  ])("bent 30 degrees takes a turn of %d degrees to %d", (turn, expected) => {
    // tan θ2 = tan θ1/cos β: from the place where the driven shaft is fastest.
    expect(degrees(turned(shafts(30), radians(turn)))).toBeCloseTo(expected, 4);
  });
});

describe("two universal joints", () => {
  test("bent alike with their inner forks in one plane turn evenly (the condition of DIN 808, as a maker quotes it)", () => {
    for (const bend of [10, 20, 30]) {
      const run = speedRange(shafts(bend, bend), [0]);
      expect([run.slowest, run.fastest].map((speed) => Math.abs(speed - 1) < 1e-12)).toEqual([true, true]);
    }
  });

  test("bent 30 and 20 degrees turn between 0.921605 and 1.085064 of the speed", () => {
    const run = speedRange(shafts(30, 20), [0]);
    expect(run.slowest).toBeCloseTo(0.921605, 5);
    expect(run.fastest).toBeCloseTo(1.085064, 5);
  });

  test("a quarter turn out of phase, bent 30 degrees each, turn between 0.75 and 1.333333", () => {
    const run = speedRange(shafts(30, 30), [Math.PI / 2]);
    expect(run.slowest).toBeCloseTo(0.75, 9);
    expect(run.fastest).toBeCloseTo(4 / 3, 9);
  });

  test("in space, turn most evenly at the phase that is said to be best, of all phases", () => {
    const first = unit(point(1, 0.2, -0.4));
    for (const [a, b] of [
      [point(0, 0.3, 0.2), point(0.1, 0, 0.5)],
      [point(0.2, 0.1, 0.4), point(0, -0.3, 0.2)],
      [point(0, 0, 0.35), point(0, 0.35, 0)],
    ]) {
      const middle = rotated(first, a);
      const last = rotated(middle, b);
      const axes = [first, middle, last];
      const uneven = (phase: number) => {
        const { slowest, fastest } = speedRange(axes, [phase]);
        return fastest / slowest;
      };
      const best = uneven(bestPhase([first, middle, last]));
      for (let phase = -90; phase <= 90; phase += 0.5) expect(uneven(radians(phase))).toBeGreaterThan(best - 1e-4);
      expect(best).toBeLessThan(uneven(bestPhase([first, middle, last]) + radians(5)));
    }
  });
});

test("a shaft's bends are the angles between its straight pieces, and move with the housing", () => {
  const at = (ahead: number, offset: number, up: number) => ({ ahead, offset, up });
  const shaft = {
    wheel: at(0, 0, 0),
    "upper-joint": at(100, 0, 0),
    "middle-joint": null,
    "lower-joint": at(200, 100, 0),
    pinion: at(300, 100, 0),
    phase: 0,
    "second-phase": 0,
    "support-bearing": "no",
  } as const;
  expect(shaftRun(shaft).joints.map(({ bend }) => Math.round(degrees(bend) * 1e9) / 1e9)).toEqual([45, 45]);
  expect(shaftRun(shaft, -100).joints.map(({ bend }) => bend)).toEqual([0, 0]);
  // Both bends lie in one plane and in opposite ways, as in a Z: alike, so that forks in one plane turn evenly.
  expect(shaftRun(shaft).fastest).toBeCloseTo(1, 9);
});

describe("three universal joints", () => {
  const evenness = (axes: readonly Point[], phases: readonly number[]) => {
    const { slowest, fastest } = speedRange(axes, phases);
    return fastest / slowest;
  };
  const pairs: readonly (readonly [number, number, number])[] = [
    [20, 20, 0],
    [25, 10, 15],
    [30, 20, 5],
    [12, -18, 24],
  ];

  test.each(pairs)("bent %d, %d and %d degrees: no pair of phases on a grid of 2 degrees is more even", (...bends) => {
    const [a, b, c, d] = shafts(...bends);
    // Out of one plane, so that no symmetry helps.
    const axes = [a, rotated(b, point(radians(17), 0, 0)), c, rotated(d, point(radians(-23), 0, 0))] as const;
    const best = evenness(axes, bestPhases(axes));
    let grid = Number.POSITIVE_INFINITY;
    for (let i = -90; i < 90; i += 2) {
      for (let j = -90; j < 90; j += 2) {
        const { slowest, fastest } = speedRange(axes, [radians(i), radians(j)], 90);
        grid = Math.min(grid, fastest / slowest);
      }
    }
    // Few places a turn find the extremes of a smooth curve to a part in a thousand.
    expect(best).toBeLessThan(grid * 1.001);
  });

  test("of which the last is straight are evened out as two are", () => {
    const [a, b, c, d] = shafts(20, 20, 0);
    const axes = [a, b, c, d] as const;
    expect(evenness(axes, bestPhases(axes))).toBeCloseTo(1, 3);
  });
});
