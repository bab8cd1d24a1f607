import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Point } from "../../src/kinematics/drawn.ts";
import { bestPhase, bestPhases, shaftRun, speedAt, speedRange } from "../../src/measures/steeringShaft.ts";
import { expectClose } from "../close.ts";
import { cross, degrees, point, radians, rotated, times, unit } from "../oracles/vectors.ts";

/** Shafts that bend one after the other about the vertical axis, by so many degrees each. */
function shafts(...bends: readonly number[]): readonly Point[] {
  let way = 0;
  return [0, ...bends].map((bend) => {
    way += radians(bend);
    return point(Math.cos(way), Math.sin(way), 0);
  });
}

describe("a shaft that is straight, or none", () => {
  test("turns evenly, whichever way it points", () => {
    for (const way of [
      point(1, 0, 0),
      point(0, 0, 1),
      point(0, 0, -1),
      unit(point(0.1, 0, 0.95)),
      unit(point(-1, 2, 0.3)),
    ]) {
      for (const turn of [0, 0.7, 2]) expect(speedAt([way, way], [], turn)).toBeCloseTo(1, 12);
      // The joint after a straight one is fastest and slowest as it would be alone.
      const bent = rotated(way, times(unit(cross(way, point(0.3, 0.5, -0.8))), radians(30)));
      const run = speedRange([way, way, bent], [0.4]);
      expect(run.fastest).toBeCloseTo(1 / Math.cos(radians(30)), 3);
      expect(run.slowest).toBeCloseTo(Math.cos(radians(30)), 3);
    }
  });

  test("without a joint goes with the steering wheel", () => {
    expect([speedAt([], [], 1), speedAt([point(1, 0, 0)], [], 1)]).toEqual([1, 1]);
    expect(speedRange([point(1, 0, 0)], [])).toEqual({ slowest: 1, fastest: 1 });
  });

  test("is looked at in as many places over the half turn as are asked for", () => {
    // One joint bent 60 degrees: cos 60/(1 − sin² 60 cos² θ), at θ = 0 and at 90 degrees; four places have 45 and 135 beside.
    expectClose(speedRange(shafts(60), [], 1), { slowest: 2, fastest: 2 }, { abs: 1e-12 });
    expectClose(speedRange(shafts(60), [], 2), { slowest: 0.5, fastest: 2 }, { abs: 1e-12 });
    expectClose(speedRange(shafts(60), [], 3), { slowest: 0.5 / (1 - 0.75 / 4), fastest: 2 }, { abs: 1e-12 });
  });
});

describe("the best turn between two joints' forks", () => {
  const first = point(1, 0, 0);
  const middle = rotated(first, point(0, 0, radians(25)));
  /** The last shaft, bent in a plane that lies `by` degrees about the middle shaft from that of the first joint. */
  const lastAt = (by: number) => {
    const normal = rotated(point(0, 0, 1), times(middle, radians(by)));
    return rotated(middle, times(normal, radians(25)));
  };

  test.each([0, 10, -10, 45, -45, 80, -80, 89, -89])("is the angle between the joints' planes, %d degrees", (by) => {
    const best = bestPhase([first, middle, lastAt(by)]);
    expect(degrees(best)).toBeCloseTo(by, 9);
    // Bent alike, nothing of the unevenness is left.
    const { slowest, fastest } = speedRange([first, middle, lastAt(by)], [best]);
    expectClose([slowest, fastest], [1, 1], { abs: 1e-12 });
  });

  test.each([
    [91, -89],
    [180, 0],
    [-91, 89],
    [135, -45],
    [-135, 45],
  ])("planes %d degrees apart are %d apart: a fork has two ends", (by, expected) => {
    expect(degrees(bestPhase([first, middle, lastAt(by)]))).toBeCloseTo(expected, 9);
  });
});

describe("the best turns between three joints' forks", () => {
  test.each([
    [20, 35, 50],
    [-70, 40, 15],
    [85, -85, 30],
  ])(
    "are where no turn of half a degree of either makes the pinion more even: planes %d and %d apart",
    (one, two, third) => {
      const a = point(1, 0, 0);
      const b = rotated(a, point(0, 0, radians(20)));
      const n1 = rotated(point(0, 0, 1), times(b, radians(one)));
      const c = rotated(b, times(n1, radians(30)));
      const n2 = rotated(n1, times(c, radians(two)));
      const d = rotated(c, times(n2, radians(third)));
      const axes = [a, b, c, d] as const;
      const best = bestPhases(axes);
      for (const phase of best) expect(Math.abs(phase)).toBeLessThanOrEqual(Math.PI / 2);
      const uneven = (by: readonly number[]) => {
        const { slowest, fastest } = speedRange(axes, by, 45);
        return fastest / slowest;
      };
      for (const i of [-1, 0, 1]) {
        for (const j of [-1, 0, 1]) {
          const beside = [best[0] + i * radians(0.5), best[1] + j * radians(0.5)];
          // In the same 45 places of a turn as it looks at.
          expect(uneven(beside)).toBeGreaterThanOrEqual(uneven(best));
        }
      }
    },
  );
});

test("the best turns between three joints' forks are no worse than any on a grid over all turns, on shafts bent anyhow", () => {
  const bend = fc.double({ min: 5, max: 35, noNaN: true });
  const way = fc.double({ min: -180, max: 180, noNaN: true });
  const three = fc.tuple(bend, bend, bend, way, way);
  for (const [one, two, three_, first, second] of fc.sample(three, { numRuns: 16, seed: 11 })) {
    const a = point(1, 0, 0);
    const b = rotated(a, point(0, 0, radians(one)));
    const n1 = rotated(point(0, 0, 1), times(b, radians(first)));
    const c = rotated(b, times(n1, radians(two)));
    const n2 = rotated(n1, times(c, radians(second)));
    const axes = [a, b, c, rotated(c, times(n2, radians(three_)))] as const;
    const uneven = (by: readonly number[]) => {
      const { slowest, fastest } = speedRange(axes, by, 45);
      return fastest / slowest;
    };
    const best = bestPhases(axes);
    for (const phase of best) expect(Math.abs(phase)).toBeLessThanOrEqual(Math.PI / 2);
    let grid = Number.POSITIVE_INFINITY;
    for (let i = -90; i < 90; i += 6) {
      for (let j = -90; j < 90; j += 6) grid = Math.min(grid, uneven([radians(i), radians(j)]));
    }
    expect(uneven(best)).toBeLessThanOrEqual(grid);
  }
});

test("a shaft has the joints that its file gives, in their order, with the forks as they are turned", () => {
  const at = (ahead: number, offset: number, up: number) => ({ ahead, offset, up });
  const shaft = {
    wheel: at(-1000, 300, 800),
    "upper-joint": at(-600, 300, 800),
    "middle-joint": at(-400, 300, 600),
    "lower-joint": at(-200, 300, 600),
    pinion: at(-100, 200, 600),
    phase: radians(90),
    "second-phase": radians(30),
    "support-bearing": "no",
  } as const;
  const { joints, axes, slowest, fastest } = shaftRun(shaft);
  expect(joints.map(({ name }) => name)).toEqual(["upper", "middle", "lower"]);
  // Level, then down by 45 degrees, level again, then 45 degrees to the side.
  for (const { bend } of joints) expect(degrees(bend)).toBeCloseTo(45, 9);
  const half = Math.SQRT1_2;
  expectClose(axes, [point(1, 0, 0), point(half, 0, -half), point(1, 0, 0), point(half, -half, 0)], { abs: 1e-12 });
  expectClose({ slowest, fastest }, speedRange(axes, [radians(90), radians(30)]), { abs: 1e-12 });
  // Without the middle one the second fork's turn has no place; with the lower alone there is one joint, and no fork to turn.
  const two = shaftRun({ ...shaft, "middle-joint": null });
  expect(two.joints.map(({ name }) => name)).toEqual(["upper", "lower"]);
  expectClose([two.slowest, two.fastest], Object.values(speedRange(two.axes, [radians(90)])), { abs: 1e-12 });
  const one = shaftRun({ ...shaft, "upper-joint": null, "middle-joint": null });
  expect(one.joints.map(({ name }) => name)).toEqual(["lower"]);
  // From (800, 0, -200) to (100, -100, 0): cos = 80000/(824.62 × 141.42).
  expect(one.joints[0].bend).toBeCloseTo(Math.acos(80000 / Math.hypot(800, 200) / Math.hypot(100, 100)), 9);
  // The steering housing moved 100 mm to the left takes the lower joint and the pinion with it.
  const moved = shaftRun(shaft, 100);
  expectClose(moved.axes.slice(2), [unit(point(200, 100, 0)), point(half, -half, 0)], { abs: 1e-12 });
  expectClose(moved.axes.slice(0, 2), axes.slice(0, 2), { abs: 1e-12 });
});
