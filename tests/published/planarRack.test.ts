import { describe, test } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { ackermann } from "../../src/measures/ackermann.ts";
import { steer } from "../../src/measures/steer.ts";
import { tieRodLength } from "../../src/measures/tieRod.ts";
import { expectClose } from "../close.ts";
import { frontOf, solved, startOf } from "../oracles/kernel.ts";
import { alike, planarArms } from "../oracles/known.ts";
import { degrees, point, radians } from "../oracles/vectors.ts";

/**
 * A planar rack linkage through the real solver: king pins upright, rods and arms in one level plane, so that steering lifts nothing. Wheelbase
 * 2400, king pins 1300 apart, arms 120 pointing back and inward by beta, inner joints 330 each side, the rack `behind` the axle. No source publishes
 * such a table with full dimensions: the values are [D], by root finding and by the cosine rule, which agree to every digit shown.
 */
function flatCar(beta: number, behind: number, backward = 1): Drawn {
  const level = 300;
  const arm = 120;
  return alike({
    arms: planarArms(
      [
        [250, 200],
        [650, 200],
      ],
      [
        [250, 400],
        [650, 400],
      ],
    ),
    inner: point(-behind, 330, level),
    outer: point(-backward * arm * Math.cos(radians(beta)), 650 - backward * arm * Math.sin(radians(beta)), level),
    wheelCenter: point(0, 720, 300),
    rack: 60,
    travel: 60,
  });
}

const a = 115.82716;
const cars = {
  "A: beta 15.154068": { beta: 15.154068, behind: a, tie: 288.630143 },
  "B: rack 35 further back": { beta: 15.154068, behind: a + 35, tie: 290.744492 },
  "C: rack 35 further forward": { beta: 15.154068, behind: a - 35, tie: 290.744492 },
  "beta 0": { beta: 0, behind: 120, tie: 320 },
};
const table: [car: keyof typeof cars, q: number, outer: number, inner: number][] = [
  ["A: beta 15.154068", 10, 4.89173, 5.02136],
  ["A: beta 15.154068", 30, 14.48565, 15.76395],
  ["A: beta 15.154068", 50, 24.07924, 28.49605],
  ["B: rack 35 further back", 10, 5.02697, 5.22859],
  ["B: rack 35 further back", 30, 14.72685, 16.74169],
  ["B: rack 35 further back", 50, 24.23582, 31.65338],
  ["C: rack 35 further forward", 10, 4.76211, 4.83244],
  ["C: rack 35 further forward", 30, 14.24471, 14.93784],
  ["C: rack 35 further forward", 50, 23.91645, 26.27272],
  ["beta 0", 10, 4.78006, 4.78032],
  ["beta 0", 30, 14.46636, 14.48874],
  ["beta 0", 50, 24.52809, 24.72368],
];

/** Steer of both wheels, deg, positive to the left. */
function steers(drawn: Drawn, rack: number): { left: number; right: number } {
  const poses = solved(frontOf(drawn), rack, 0);
  return { left: degrees(steer(poses, startOf("left"))), right: degrees(steer(poses, startOf("right"))) };
}

describe("planar rack linkage [D]", () => {
  test.each(table)("%s, rack travel %d: outer %d, inner %d", (name, q, outer, inner) => {
    const { beta, behind } = cars[name];
    const car = flatCar(beta, behind);
    // Tabs behind the king pins: the car turns left with the rack to the right.
    expectClose(steers(car, -q), { left: inner, right: outer }, { abs: 1e-5 });
    expectClose(steers(car, q), { left: -outer, right: -inner }, { abs: 1e-5 });
  });

  test.each(Object.entries(cars))("%s: the rod is cut to its length", (_, { beta, behind, tie }) => {
    const poses = solved(frontOf(flatCar(beta, behind)), 0, 0);
    for (const side of ["left", "right"] as const) expectClose(tieRodLength(poses, startOf(side)), tie, { abs: 1e-5 });
  });

  // A fact of the trade [D from the table]: a rack further back raises the Ackermann effect, with the tabs behind and with the tabs ahead.
  test.each([
    ["behind", 1],
    ["ahead", -1],
  ])("tabs %s of the king pins: further back means more Ackermann effect", (_, backward) => {
    const effect = (shift: number) => {
      const car = flatCar(15.154068, backward * a + shift, backward);
      const { left, right } = steers(car, -backward * 40);
      return ackermann(radians(left), radians(right), 1300, 2400) ?? Number.NaN;
    };
    const effects = [-35, 0, 35].map(effect);
    const rises = effects.slice(1).map((effectHere, i) => Math.sign(effectHere - effects[i]));
    expectClose(rises, [1, 1], {}, `Ackermann ${effects.map((x) => x.toFixed(1)).join(", ")} %`);
  });
});
