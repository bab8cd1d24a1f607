import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { roundedToSum } from "../../src/output/apportion.ts";

describe("numbers rounded together", () => {
  it("add up to their rounded sum, each within one step of its value", () => {
    const lists = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 1, maxLength: 7 });
    fc.assert(
      fc.property(lists, fc.integer({ min: 0, max: 3 }), (values, digits) => {
        const rounded = roundedToSum(values, digits);
        const unit = 10 ** digits;
        const sum = (list: readonly number[]) => list.reduce((all, each) => all + each, 0);
        expect(Math.round(sum(rounded) * unit) - Math.round(sum(values) * unit)).toBeCloseTo(0, 9);
        rounded.forEach((each, i) => {
          expect(Math.abs(each - values[i])).toBeLessThanOrEqual(1 / unit + 1e-9);
        });
      }),
    );
  });
});
