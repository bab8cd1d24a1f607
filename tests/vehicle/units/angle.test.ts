import { describe, expect, test } from "vitest";
import { readAngle } from "../../../src/vehicle/units/angle.ts";
import { expectClose } from "../../close.ts";

/** Degrees to radians and back: a few roundings of doubles; the 14 decimals of pi above are good to 3e-13 of 180. */
const rounding = { rel: 1e-14, abs: 1e-15 };

function degrees(text: string, base?: number): number {
  const read = readAngle(text, base);
  if ("complaint" in read) throw new Error(`${text}: ${read.complaint}`);
  return (read.rad * 180) / Math.PI;
}

describe("an angle", () => {
  test.each([
    ["5", 5],
    ["-0.5", -0.5],
    ["1 1/2", 1.5],
    ["1/4", 0.25],
    ["5 deg", 5],
    ["5\u00b0", 5],
    ["5 degrees", 5],
    ["1/2 + 1/4", 0.75],
    ["3.14159265358979 rad", 180],
  ])("%s is %d degrees", (text, value) => {
    expectClose(degrees(text), value, rounding);
  });

  test("0.1 rad is 0.1 rad", () => {
    expectClose((degrees("0.1 rad") * Math.PI) / 180, 0.1, rounding);
  });

  test("a leading + changes what stands there, -= takes away, and - is a sign", () => {
    const base = Math.PI / 180;
    expectClose(degrees("+0.25", base), 1.25, rounding);
    expectClose(degrees("-=0.25", base), 0.75, rounding);
    expectClose(degrees("-0.25", base), -0.25, rounding);
  });

  test("what was read is said back", () => {
    expect(readAngle("1 1/2")).toMatchObject({ echo: "1.5000 degrees" });
  });

  test.each(["", "5 in", "5 mm", "5'", "a lot", "1,5", "Infinity", "sin(3)"])("%j is no angle", (text) => {
    expect(readAngle(text)).toMatchObject({ complaint: expect.stringMatching(/^not an angle: .+ degrees/) });
  });
});
