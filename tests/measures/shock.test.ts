import { describe, expect, test } from "vitest";
import { Pose } from "../../src/kinematics/slots.ts";
import { bodiesOf } from "../../src/measures/range/bodies.ts";
import { shockAt, wheelRate } from "../../src/measures/shock.ts";
import type { Study } from "../../src/measures/study.ts";
import { poundsPerInch } from "../../src/vehicle/units/rate.ts";
import { radians } from "../oracles/vectors.ts";
import { preset } from "../vehicle/cars.ts";
import { studied } from "./carTexts.ts";

/**
 * A beam that pivots about a line fore and aft at (0, 0), seen from the front; the shock's foot at 300 on it, the wheel's
 * centre at 450, the top mount at (180, 420), mm. The king pin goes through the wheel's centre, so that steer does not move
 * that. Derived (plane trigonometry).
 */
const swingArm = `
units: mm
wheelbase: 2000
tire: { radius: 300 }
wheel-travel: { bump: 90, droop: 90 }
front:
  linkage: pivoting-beam
  both:
    beam: { pivot: { ahead: 0, out: 100, up: 300 }, brace: { ahead: -500, out: 100, up: 300 } }
    king-pin: { lower: { ahead: 0, out: 550, up: 200 }, upper: { ahead: 0, out: 550, up: 400 } }
    tie-rod: { outer: { ahead: -120, out: 540, up: 300 } }
    wheel: { center: { ahead: 0, out: 550, up: 300 } }
steering:
  mechanism: rack
  rack: { ahead: -130, up: 300, eye-to-eye: 300, travel: 40 }
`;

describe("a shock on a swinging beam", () => {
  const study = studied(swingArm);
  const top = { ahead: 0, out: 280, up: 720 };
  const foot = { ahead: 0, out: 400, up: 300 };
  const shock = shockAt(bodiesOf(study, "left"), { top, foot, on: "beam" });

  test.each([
    [0, 436.80659, 0.641016],
    [10, 385.5923, 0.671281],
    [-10, 486.00422, 0.619664],
  ])("with the beam at %d degrees is %d mm long and moves %d of the wheel's travel", (angle, length, ratio) => {
    const travel = 450 * Math.sin(radians(angle));
    const place = shock(study.pose(0, travel, travel), Pose.Left);
    expect(place.length).toBeCloseTo(length, 4);
    expect(place.ratio).toBeCloseTo(ratio, 5);
  });
});

test("an unloaded spring gives a wheel its rate times the square of the motion ratio: 600 lb/in at 0.50 gives 150", () => {
  // Lever form k (c/b)²: Barton and Fieldhouse, Automotive Chassis Engineering, ch. 3.
  expect(wheelRate(600 * poundsPerInch, 0.5, 0, 0.01) / poundsPerInch).toBeCloseTo(150, 10);
});

test("a loaded spring's wheel rate is how its energy bends over the travel, on the swinging beam", () => {
  // L² = 300² + 180² + 420² − 600 (180 cos φ + 420 sin φ), z = 450 sin φ; energy S (L₀ − L) + k (L₀ − L)²/2, N and mm.
  const lengthAt = (z: number) => {
    const turn = Math.asin(z / 450);
    return Math.sqrt(300 ** 2 + 180 ** 2 + 420 ** 2 - 600 * (180 * Math.cos(turn) + 420 * Math.sin(turn)));
  };
  const [spring, force, step] = [50, 3000, 0.5];
  const closed = (z: number) => lengthAt(0) - lengthAt(z);
  const energy = (z: number) => force * closed(z) + (spring * closed(z) ** 2) / 2;
  const bend = (of: (z: number) => number) => (of(step) - 2 * of(0) + of(-step)) / step ** 2;
  const ratio = (closed(step) - closed(-step)) / (2 * step);
  expect(ratio).toBeCloseTo(0.641016, 5);
  // Differences err with the square of a step over some hundred mm; the load's part is more than a hundredth of the rate.
  const told = wheelRate(spring, ratio, force, bend(closed));
  expect(Math.abs(told / bend(energy) - 1)).toBeLessThan(1e-4);
  expect(Math.abs(force * bend(closed))).toBeGreaterThan(0.01 * told);
});

/** Every part that a shock may stand on, of every linkage. */
const feet: readonly (readonly [name: string, bodies: readonly string[]])[] = [
  ["balanced-two-seater", ["lower-arm", "upper-arm", "upright"]],
  ["strut-hatchback-corners", ["lower-arm", "upright"]],
  ["torsion-beam-steering-plate", ["lower-arm", "upper-arm", "upright"]],
  ["twin-beam-relay", ["beam", "upright"]],
];

test.each(feet.flatMap(([name, bodies]) => bodies.map((body) => [name, body] as const)))(
  "%s: the motion ratio of a shock on its %s is how its length changes with the travel",
  (name, on) => {
    const study: Study = studied(preset(name));
    const top = { ahead: 20, out: 300, up: 700 };
    const shock = shockAt(bodiesOf(study, "right"), { top, foot: { ahead: -10, out: 450, up: 260 }, on });
    // Central differences: their error goes with the square of the step, rounding with 1e-12/step.
    const step = 1e-3;
    const input = study.inputKind === "rack" ? 10 : 0.1;
    for (const travel of [-40, 0, 35]) {
      const length = (z: number) => shock(study.pose(input, 0, z), Pose.Right).length;
      const slope = (length(travel - step) - length(travel + step)) / (2 * step);
      expect(shock(study.pose(input, 0, travel), Pose.Right).ratio).toBeCloseTo(slope, 6);
    }
  },
);
