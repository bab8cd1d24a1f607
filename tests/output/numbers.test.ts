import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeOf } from "../../src/measures/span.ts";
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

  it("give back what was typed in decimals, and rows between such ends", () => {
    const mmOf = (text: string): number => {
      const read = readLength(text, "in");
      if ("complaint" in read) throw new Error(read.complaint);
      return read.mm;
    };
    for (let k = -20_000; k <= 20_000; k++) expect(inUnits(mmOf(String(k / 1000)), "length", "in")).toBe(k / 1000);
    for (let k = -3600; k <= 3600; k++) expect(inUnits(((k / 10) * Math.PI) / 180, "angle", "in")).toBe(k / 10);
    const span = { from: mmOf("-3"), to: mmOf("3"), rows: 61 };
    for (let i = 0; i < span.rows; i++) expect(inUnits(placeOf(span, i), "length", "in")).toBe((i - 30) / 10);
  });

  it("are rounded for reading, never to minus nothing", () => {
    expect(written(-1e-9, "angle", "in")).toBe("0.00");
    expect(written(25.4 / 3, "length", "in")).toBe("0.333");
    expect(written(12.34, "length", "mm")).toBe("12.3");
    expect(unitName("angle-per-length", "mm")).toBe("deg/mm");
  });
});
