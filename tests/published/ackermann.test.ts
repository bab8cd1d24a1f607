import { describe, expect, test } from "vitest";
import { ackermann, idealInner, idealOuter, percentOfIdealInner } from "../../src/measures/ackermann.ts";
import { expectClose } from "../close.ts";
import { degrees, radians } from "../oracles/vectors.ts";

/**
 * Ackermann's condition cot(outer) - cot(inner) = w/l. The condition is standard: Jazar, "Vehicle Dynamics: Theory and Application", ch. 7;
 * Gillespie, "Fundamentals of Vehicle Dynamics", ch. 6 [both recalled from memory, not looked up again]. The results are derived to the digits
 * shown [D], tolerance 1e-4 deg.
 */
const outerOf = (inner: number, w: number, l: number) => degrees(idealOuter(radians(inner), w, l));
const innerOf = (outer: number, w: number, l: number) => degrees(idealInner(radians(outer), w, l));
const tolerance = { abs: 1e-4 };

describe("Ackermann's condition", () => {
  // Inputs of Jazar's turning-radius example [M]; it prints 10.661, which comes of 12 deg rounded to 0.209 rad.
  test("l 103.1, w 61.6, inner 12", () => {
    expectClose(outerOf(12, 61.6, 103.1), 10.68076, tolerance);
    expectClose(degrees(idealOuter(0.209, 61.6, 103.1)), 10.6607, tolerance);
  });

  test.each([
    { w: 1, l: 1, inner: 45, outer: degrees(Math.atan(0.5)) },
    { w: 1300, l: 2400, inner: 35, outer: 26.91517 },
    { w: 1.065, l: 2.73, inner: 40, outer: 32.2997 },
    { w: 1.5, l: 2.6, inner: 28, outer: 22.14106 },
    { w: 1300, l: 2400, inner: 24.38707, outer: 20 },
  ])("w $w, l $l: inner $inner goes with outer $outer [D]", ({ w, l, inner, outer }) => {
    expectClose(outerOf(inner, w, l), outer, tolerance);
    expectClose(innerOf(outer, w, l), inner, tolerance);
  });
});

describe("percent Ackermann", () => {
  // l 2400, w 1300, inner 28.49605, outer 24.07924 [D]; other definitions give 76.98 (by the outer angle) and 73.04 (by cotangents).
  const state = [radians(28.49605), radians(24.07924), 1300, 2400] as const;

  test("is referred to the ideal inner angle of the outer wheel's angle", () => {
    expectClose(ackermann(...state), 68.53, { abs: 0.005 });
  });

  test("is told apart from the percentage of the ideal inner angle", () => {
    const [inner, outer] = state;
    const ideal = 1 / Math.tan(outer) - 1300 / 2400;
    expectClose(percentOfIdealInner(...state), (inner / Math.atan(1 / ideal)) * 100, { abs: 1e-9 });
  });

  test("is 0 for parallel steer and 100 on the condition", () => {
    expectClose(ackermann(0.4, 0.4, 1300, 2400), 0, { abs: 1e-12 });
    expectClose(ackermann(idealInner(0.4, 1300, 2400), 0.4, 1300, 2400), 100, { abs: 1e-9 });
  });

  test("says nothing while the outer wheel has turned less than 2 degrees", () => {
    expect(ackermann(radians(2.1), radians(1.99), 1300, 2400)).toBeNull();
    expect(percentOfIdealInner(radians(2.1), radians(1.99), 1300, 2400)).toBeNull();
    expect(ackermann(radians(2.2), radians(2.01), 1300, 2400)).not.toBeNull();
  });
});
