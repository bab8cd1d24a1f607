import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { inUnits, unitName, written } from "../../src/output/numbers.ts";
import { readLength } from "../../src/vehicle/units/length.ts";

describe("numbers in the reader's units", () => {
  it("are inches of exactly 25.4 mm (international yard and pound agreement, 1959) and degrees", () => {
    expect(inUnits(25.4, "length", "in")).toBe(1);
    expect(inUnits(25.4, "length", "mm")).toBe(25.4);
    expect(inUnits(Math.PI, "angle", "in")).toBe(180);
    expect(inUnits(Math.PI / 180 / 25.4, "angle-per-length", "in")).toBeCloseTo(1, 14);
    expect(inUnits(75, "percent", "in")).toBe(75);
  });

  it("give back to the last bit the 64ths of an inch that were typed", () => {
    fc.assert(
      fc.property(fc.integer({ min: -64 * 200, max: 64 * 200 }), (parts) => {
        const read = readLength(`${parts}/64 in`, "mm");
        if ("complaint" in read) throw new Error(read.complaint);
        expect(inUnits(read.mm, "length", "in")).toBe(parts === 0 ? 0 : parts / 64);
      }),
    );
  });

  it("are rounded for reading, never to minus nothing", () => {
    expect(written(-1e-9, "angle", "in")).toBe("0.00");
    expect(written(25.4 / 3, "length", "in")).toBe("0.333");
    expect(written(12.34, "length", "mm")).toBe("12.3");
    expect(unitName("angle-per-length", "mm")).toBe("deg/mm");
  });
});
