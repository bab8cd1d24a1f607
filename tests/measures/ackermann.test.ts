import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ackermann, idealInner, idealOuter, LEAST_OUTER, percentOfIdealInner } from "../../src/measures/ackermann.ts";
import { turning } from "../../src/measures/turning.ts";
import { expectClose } from "../close.ts";
import { radians } from "../oracles/vectors.ts";

const spacing = fc.double({ min: 200, max: 2000, noNaN: true });
const wheelbase = fc.double({ min: 500, max: 5000, noNaN: true });
const angle = fc.double({ min: radians(2), max: radians(60), noNaN: true });

describe("the ideal", () => {
  test("makes both wheels' spindle lines meet on the rear axle's line", () => {
    fc.assert(
      fc.property(angle, spacing, wheelbase, (outer, w, l) => {
        const inner = idealInner(outer, w, l);
        // From each king pin to the turn centre, sideways: l over the tangent; they differ by the spacing.
        expectClose(l / Math.tan(outer) - l / Math.tan(inner), w, { abs: 1e-7 });
      }),
    );
  });

  test("outer undoes inner", () => {
    fc.assert(
      fc.property(angle, spacing, wheelbase, (outer, w, l) => {
        expectClose(idealOuter(idealInner(outer, w, l), w, l), outer, { abs: 1e-12 });
      }),
    );
  });

  test("an inner wheel past a right angle is still an ideal one", () => {
    expect(idealInner(radians(60), 1300, 1500)).toBeGreaterThan(Math.PI / 2);
  });
});

describe("shares of the ideal", () => {
  test("parallel steer is 0 and the full condition 100", () => {
    fc.assert(
      fc.property(angle, spacing, wheelbase, (outer, w, l) => {
        expectClose(ackermann(outer, outer, w, l), 0, { abs: 1e-12 });
        expectClose(ackermann(idealInner(outer, w, l), outer, w, l), 100, { abs: 1e-9 });
        expectClose(percentOfIdealInner(idealInner(outer, w, l), outer, w, l), 100, { abs: 1e-9 });
      }),
    );
  });

  test("speak from 2 degrees of the outer wheel on, 2 degrees themselves included", () => {
    expect(percentOfIdealInner(radians(3), LEAST_OUTER, 1300, 2000)).not.toBeNull();
    expect(ackermann(radians(3), LEAST_OUTER, 1300, 2000)).not.toBeNull();
    expect(ackermann(radians(3), LEAST_OUTER - 1e-12, 1300, 2000)).toBeNull();
  });

  test("say nothing of Ackermann where both steering axes meet the ground at one place: no share of nothing", () => {
    expect(ackermann(radians(20), radians(18), 0, 2000)).toBeNull();
    expect(percentOfIdealInner(radians(20), radians(18), 0, 2000)).toBeCloseTo((100 * 20) / 18, 9);
    // A millimetre apart there is a share again, however odd.
    expect(Number.isFinite(ackermann(radians(20), radians(18), 1, 2000))).toBe(true);
  });

  test("say nothing while the outer wheel has turned less than 2 degrees, or the wrong way", () => {
    expect([ackermann(0.1, radians(1.999), 1300, 2400), percentOfIdealInner(0.1, radians(1.999), 1300, 2400)]).toEqual([
      null,
      null,
    ]);
    expect(ackermann(0.1, -0.2, 1300, 2400)).toBeNull();
    expect(ackermann(0.1, radians(2.001), 1300, 2400)).not.toBeNull();
  });
});

describe("turning", () => {
  test("takes the way from the sum of both changes, and inner and outer from the way", () => {
    expect(turning(0.5, 0.4, 1300, 2400)).toMatchObject({ turn: "left", inner: 0.5, outer: 0.4 });
    expect(turning(-0.4, -0.5, 1300, 2400)).toMatchObject({ turn: "right", inner: 0.5, outer: 0.4 });
    expect(turning(0.02, -0.01, 1300, 2400)).toMatchObject({
      turn: "left",
      inner: 0.02,
      outer: -0.01,
      ackermann: null,
    });
  });

  test("with no change at all knows nothing", () => {
    expect(Object.values(turning(0, 0, 1300, 2400)).every((value) => value === null)).toBe(true);
  });

  test("a mirrored turn has the same numbers to the last bit", () => {
    fc.assert(
      fc.property(angle, angle, spacing, wheelbase, (a, b, w, l) => {
        const [one, other] = [turning(a, b, w, l), turning(-b, -a, w, l)];
        expect({ ...other, turn: null }).toEqual({ ...one, turn: null });
        expect([one.turn, other.turn]).toEqual(["left", "right"]);
      }),
    );
  });
});
