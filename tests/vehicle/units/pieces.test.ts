import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { sayLength } from "../../../src/vehicle/units/format.ts";
import { pieces } from "../../../src/vehicle/units/pieces.ts";

describe("what a text may be broken between", () => {
  it.each([
    ["4 1/2 in droop", ["4 1/2 in", "droop"]],
    ["longer: -9/16 in; then", ["longer:", "-9/16 in;", "then"]],
    ["1 7/32 in (1.219) inboard", ["1 7/32 in", "(1.219)", "inboard"]],
    ["9/16 (0.563)", ["9/16 (0.563)"]],
    ["1 ft 2 in and 1ft 2 in", ["1 ft 2 in", "and", "1ft 2 in"]],
    ["13.5 mm, 7 ° or 3 deg", ["13.5 mm,", "7 °", "or", "3 deg"]],
    ["turn 2 inner rods in 3 inches", ["turn", "2", "inner", "rods", "in", "3", "inches"]],
    ["two  blanks", ["two", "", "blanks"]],
  ])("%s", (text, expected) => {
    expect(pieces(text)).toEqual(expected);
  });

  it("is never within a length that the program itself writes", () => {
    const styles = [
      { unit: "in", fraction: 16 },
      { unit: "in", fraction: 32 },
      { unit: "in", exact: true },
      { unit: "in", decimals: 3 },
      { unit: "mm" },
    ] as const;
    fc.assert(
      fc.property(fc.double({ min: -5000, max: 5000, noNaN: true }), fc.constantFrom(...styles), (mm, style) => {
        const said = sayLength(mm, style);
        expect(pieces(`the hole ${said} behind`)).toEqual(["the", "hole", said, "behind"]);
      }),
    );
  });
});
