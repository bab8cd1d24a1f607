import { describe, expect, test } from "vitest";
import { standingUpright } from "../../../src/measures/bench/onUpright.ts";
import { tabPlaceOf } from "../../../src/measures/bench/tabPlace.ts";
import { drawnOf } from "../../../src/measures/front.ts";
import { degrees, plus, point, radians, rotated, type Vector } from "../../oracles/vectors.ts";
import { at, carOf, head } from "../carTexts.ts";

// An upright made standing: king-pin line up from the origin, upper joint 200 above the lower, hole 100 behind and 20 in,
// wheel's middle 10 ahead, 60 out and 100 up, its spindle falling outward by 12°. mm; x ahead, y out, z up.
const droop = radians(12);
const made = {
  upper: point(0, 0, 200),
  hole: point(-100, -20, 30),
  hub: point(10, 60, 100),
  spindle: point(0, Math.cos(droop), -Math.sin(droop)),
};
const lower = point(5, 600, 210);

/** A car that wears it, both sides alike, leant in by an inclination and then back by a caster, rad. */
function carWith(
  inclination: number,
  caster: number,
  { rim = "rim: { diameter: 250, width: 150 }", hole = made.hole } = {},
) {
  const turn = (v: Vector) => rotated(rotated(v, point(inclination, 0, 0)), point(0, -caster, 0));
  const place = (v: Vector) => {
    const { x, y, z } = plus(lower, turn(v));
    return at(x, y, z);
  };
  const spin = turn(made.spindle);
  // Camber tips the spindle's end down for top outward, toe-in points it forward.
  const camber = degrees(Math.asin(-spin.z));
  const toe = degrees(Math.atan2(spin.x, spin.y));
  const car = carOf(`${head}${rim}
wheel-travel: { bump: 60, droop: 60 }
front:
  linkage: double-arm
  both:
    lower-arm: { front: ${at(150, 250, 230)}, rear: ${at(-150, 250, 230)}, joint: ${place(point(0, 0, 0))} }
    upper-arm: { front: ${at(100, 290, 420)}, rear: ${at(-180, 290, 420)}, joint: ${place(made.upper)} }
    tie-rod: { outer: ${place(hole)} }
    wheel: { center: ${place(made.hub)}, camber: ${camber}, toe: ${toe} }
steering:
  mechanism: rack
  rack: { ahead: -110, up: 250, eye-to-eye: 500, travel: 40 }
`);
  return { car, drawn: drawnOf(car) };
}

const leans: readonly (readonly [inclination: number, caster: number])[] = [
  [0, 0],
  [radians(10), 0],
  [0, radians(8)],
  [radians(10), radians(8)],
  [radians(-6), radians(-15)],
];

/** Lengths of a few hundred mm, some ten operations: twelve digits are left. */
const DIGITS = 9;

test.each(leans)(
  "an upright that leans by %d in and %d back on the car is told as it was made",
  (inclination, caster) => {
    for (const wheel of ["left", "right"] as const) {
      const told = standingUpright(carWith(inclination, caster), wheel);
      expect(told.upper).toBeCloseTo(200, DIGITS);
      for (const [found, is] of [
        [told.hole, made.hole],
        [told.wheelCenter, made.hub],
        // In over 60 mm the spindle's line climbs by 60 tan 12°.
        [told.spindle, point(10, 0, 100 + 60 * Math.tan(droop))],
      ] as const) {
        expect(found.ahead).toBeCloseTo(is.x, DIGITS);
        expect(found.out).toBeCloseTo(is.y, DIGITS);
        expect(found.up).toBeCloseTo(is.z, DIGITS);
      }
    }
  },
);

describe("a tab's hole", () => {
  test.each(leans)(
    "is as far from joints, king-pin line, spindle and rim as on the bench, leaning by %d and %d",
    (inclination, caster) => {
      const tab = tabPlaceOf(carWith(inclination, caster), "right");
      expect(tab.toKingPin).toBeCloseTo(Math.hypot(100, 20), DIGITS);
      expect(tab.toLower).toBeCloseTo(Math.hypot(100, 20, 30), DIGITS);
      expect(tab.toUpper).toBeCloseTo(Math.hypot(100, 20, 170), DIGITS);
      // From the hub the hole is 110 back, 80 in and 70 down: along the spindle and square to it, in the plane of both.
      expect(tab.toSpindle).toBeCloseTo(Math.hypot(110, 80 * Math.sin(droop) + 70 * Math.cos(droop)), DIGITS);
      expect(tab.insideRim).toBeCloseTo(80 * Math.cos(droop) - 70 * Math.sin(droop) - 75, DIGITS);
    },
  );

  test("stands where the file has it, and is told by slope and slant from the lower joint", () => {
    const tab = tabPlaceOf(carWith(0, 0), "left");
    expect([tab.ahead, tab.out, tab.up].map((mm) => mm.toFixed(6))).toEqual(["-95.000000", "580.000000", "240.000000"]);
    expect(Math.tan(tab.rise)).toBeCloseTo(30 / Math.hypot(100, 20), 12);
    expect(Math.tan(tab.inboard)).toBeCloseTo(20 / 100, 12);
    expect(tab.behind).toBe(true);
  });

  test("ahead of the joint is told from straight ahead, and outboard as less than nothing", () => {
    const tab = tabPlaceOf(carWith(0, 0, { hole: point(100, 20, 30) }), "left");
    expect([tab.ahead, tab.out]).toEqual([105, 620]);
    expect(tab.behind).toBe(false);
    expect(Math.tan(tab.inboard)).toBeCloseTo(-20 / 100, 12);
  });

  test("on a plate square to the king-pin line: caster lifts the front edge, inclination the outer one", () => {
    const [back, inward] = [tabPlaceOf(carWith(0, radians(8)), "left"), tabPlaceOf(carWith(radians(10), 0), "left")];
    expect(degrees(back.frontHigher)).toBeCloseTo(8, DIGITS);
    expect(degrees(back.outerHigher)).toBeCloseTo(0, DIGITS);
    expect(degrees(inward.frontHigher)).toBeCloseTo(0, DIGITS);
    expect(degrees(inward.outerHigher)).toBeCloseTo(10, DIGITS);
  });

  test("is not told from a rim whose width the file leaves out", () => {
    expect(tabPlaceOf(carWith(0, 0, { rim: "" }), "left").insideRim).toBeNull();
  });
});
