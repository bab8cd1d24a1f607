import { describe, expect, test } from "vitest";
import { placeOf, type Span, steppedSpan } from "../../src/measures/span.ts";
import { expectClose } from "../close.ts";

const placesOf = (span: Span) => Array.from({ length: span.rows }, (_, i) => placeOf(span, i));

describe("rows of a table", () => {
  test("are evenly spaced from one end to the other, and one alone, or none, stands at the first", () => {
    expect(placesOf({ from: -2, to: 2, rows: 5 })).toEqual([-2, -1, 0, 1, 2]);
    expect(placesOf({ from: 3, to: 1, rows: 3 })).toEqual([3, 2, 1]);
    expect(placesOf({ from: 4, to: 9, rows: 1 })).toEqual([4]);
    expect(placeOf({ from: 4, to: 9, rows: 0 }, 0)).toBe(4);
  });

  test.each([
    ["between ends that are none", -1.25, 2.5, 1, [-1.25, -1, 0, 1, 2, 2.5]],
    ["down as well as up", 2.5, -1.25, 1, [2.5, 2, 1, 0, -1, -1.25]],
    ["between ends that are some", -1, 2, 1, [-1, 0, 1, 2]],
    ["down between ends that are some", 2, -1, 1, [2, 1, 0, -1]],
    ["of a half", 0.2, 1.6, 0.5, [0.2, 0.5, 1, 1.5, 1.6]],
    ["of three, on one side of nothing", 4, 13, 3, [4, 6, 9, 12, 13]],
    ["of three, down below nothing", -4, -13, 3, [-4, -6, -9, -12, -13]],
    ["none in less than a step", 0.2, 0.8, 1, [0.2, 0.8]],
    ["none between two places that are one", 0.2, 0.2, 1, [0.2, 0.2]],
    ["none between two that are one, a multiple", 2, 2, 1, [2, 2]],
  ])("at a step are its whole multiples, %s", (_, from, to, step, expected) => {
    const span = steppedSpan(from, to, step);
    expect(span.rows).toBe(expected.length);
    expectClose(placesOf(span), expected, { abs: 1e-12 });
  });

  test("do not repeat an end that is a hair off a multiple, as one typed in fractions can be", () => {
    const hair = 1e-10;
    expectClose(placesOf(steppedSpan(1 - hair, 3 + hair, 1)), [1, 2, 3], { abs: 1e-9 });
    expectClose(placesOf(steppedSpan(1 + hair, 3 - hair, 1)), [1, 2, 3], { abs: 1e-9 });
    expectClose(placesOf(steppedSpan(3 + hair, 1 - hair, 1)), [3, 2, 1], { abs: 1e-9 });
    // More than a hair is a place of its own.
    expect(placesOf(steppedSpan(0.999, 3.001, 1))).toHaveLength(5);
  });
});
