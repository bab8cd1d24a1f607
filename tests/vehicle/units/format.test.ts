import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatAngle, formatLength, sayLength } from "../../../src/vehicle/units/format.ts";
import { readLength } from "../../../src/vehicle/units/length.ts";

const sixteenths = { unit: "in", fraction: 16 } as const;
const thirtySeconds = { unit: "in", fraction: 32 } as const;
const exact = { unit: "in", exact: true } as const;

function inches(value: number): number {
  return value * 25.4;
}

describe("a length in inches", () => {
  test.each([
    [14.375, "14 3/8"],
    [14, "14"],
    [0.375, "3/8"],
    [-0.25, "-1/4"],
    [-4.5, "-4 1/2"],
    [0, "0"],
    [14.99, "15"],
    [0.03, "0"],
    [-0.03, "0"],
    [0.0626, "1/16"],
  ])("%d in is %s to the 16th", (value, text) => {
    expect(formatLength(inches(value), sixteenths)).toBe(text);
  });

  test("is the nearest 32nd where that is asked for", () => {
    expect(formatLength(inches(14 + 5 / 32), thirtySeconds)).toBe("14 5/32");
    expect(formatLength(inches(14 + 5 / 32), sixteenths)).toMatch(/^14 (1\/8|3\/16)$/);
  });

  test("is so many decimals where those are asked for", () => {
    expect(formatLength(inches(14.375), { unit: "in", decimals: 2 })).toBe("14.38");
    expect(formatLength(inches(-0.001), { unit: "in", decimals: 2 })).toBe("0.00");
  });

  test("is a fraction where it falls on a 64th, and decimals where it does not", () => {
    expect(formatLength(inches(14 + 3 / 64), exact)).toBe("14 3/64");
    expect(formatLength(365, exact)).toBe("14.3701");
    expect(formatLength(inches(2.1), exact)).toBe("2.1");
  });
});

describe("a length in mm", () => {
  test.each([
    [365, "365.0"],
    [365.14, "365.1"],
    [-0.04, "0.0"],
    [-6.3, "-6.3"],
  ])("%d mm is %s", (value, text) => {
    expect(formatLength(value, { unit: "mm" })).toBe(text);
  });
});

test("a length with its unit", () => {
  expect(sayLength(365.125, sixteenths)).toBe("14 3/8 in");
  expect(sayLength(365.125, { unit: "mm" })).toBe("365.1 mm");
});

test("an angle is in degrees, and never -0", () => {
  expect(formatAngle(Math.PI / 180, 2)).toBe("1.00");
  expect(formatAngle(-0.00001, 2)).toBe("0.00");
  expect(formatAngle((-1.5 * Math.PI) / 180, 1)).toBe("-1.5");
});

test("what cannot be a value is shown as a dash, not as NaN", () => {
  for (const style of [sixteenths, exact, { unit: "mm" }, { unit: "in", decimals: 2 }] as const)
    for (const value of [Number.NaN, Infinity, -Infinity]) expect(formatLength(value, style)).toBe("-");
  expect(formatAngle(Number.NaN, 1)).toBe("-");
});

test("every shown length reads back as itself, to half of what is shown", () => {
  const styles = [
    [sixteenths, inches(1 / 32)],
    [thirtySeconds, inches(1 / 64)],
    [{ unit: "in", decimals: 3 }, inches(0.0005)],
    [{ unit: "mm" }, 0.05],
  ] as const;
  fc.assert(
    fc.property(fc.double({ min: -3000, max: 3000, noNaN: true }), fc.constantFrom(...styles), (mm, [style, half]) => {
      const read = readLength(formatLength(mm, style), style.unit);
      if ("complaint" in read) throw new Error(read.complaint);
      // Rounding of the doubles themselves adds far less than a millionth of a mm.
      expect(Math.abs(read.mm - mm)).toBeLessThanOrEqual(half + 1e-9);
    }),
  );
});
