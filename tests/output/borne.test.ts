import { describe, expect, it } from "vitest";
import { borne, decimalsFor, onTheTape, withDoubt } from "../../src/output/borne.ts";

const inch = 25.4;

describe("a number with its doubt", () => {
  it("has no more decimals than the doubt bears: one digit of it, two where the first is a 1", () => {
    expect([0.03, 0.3, 0.95, 0.1, 0.12, 0.19, 3, 30, 1.5].map(decimalsFor)).toEqual([2, 1, 1, 2, 2, 2, 0, 0, 1]);
    expect(borne(0.18742 * inch, 0.058 * inch, "length", "in")).toBe("0.19");
    expect(borne(-0.0004 * inch, 0.058 * inch, "length", "in")).toBe("0.00");
    expect(withDoubt(4.76, 1.47, "length", "mm")).toBe("4.8 +- 1.5 mm");
    expect(withDoubt((0.3412 * Math.PI) / 180, (0.2 * Math.PI) / 180, "angle", "in")).toBe("0.3 +- 0.2 deg");
  });

  it("is said as a tape has it where it is known to an eighth", () => {
    expect(onTheTape(-0.184 * inch, 0.06 * inch, "in")).toBe(" (3/16 in)");
    expect(onTheTape(0.128 * inch, 0.01 * inch, "in")).toBe(" (1/8 in)");
    expect(onTheTape(0.184 * inch, 0.2 * inch, "in")).toBe("");
    expect(onTheTape(0.01 * inch, 0.06 * inch, "in")).toBe("");
    expect(onTheTape(4.7, 0.5, "mm")).toBe("");
  });
});
