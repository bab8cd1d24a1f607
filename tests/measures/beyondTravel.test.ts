import { describe, expect, it } from "vitest";
import { studyOf } from "../../src/measures/study.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { carOf, presetText } from "./carTexts.ts";

describe("a car that is drawn where its rack cannot go", () => {
  const far = presetText("balanced-two-seater").replace("per-turn:", "straight-ahead: 6, per-turn:");

  it("is refused in words of the rack, not of a rod that is too short", () => {
    const car = carOf(far);
    const study = studyOf(car);
    if (!("refused" in study)) throw new Error("such a car cannot stand at its rack's middle");
    expect(study.refused).toContain("straight ahead, 6.00 in from mid-travel, lies beyond the rack's own travel");
    expect(study.part).toEqual(["steering", "rack", "straight-ahead"]);
  });

  it("is refused where a wheel stands across the centreline, at the line that says so", () => {
    const text = presetText("balanced-two-seater").replace(/(center: \{ ahead: [^,]+, out: )[^,]+,/, "$1-15,");
    expect(text).not.toBe(presetText("balanced-two-seater"));
    const read = readCar(text);
    if (!("complaints" in read)) throw new Error("a wheel inside the car was taken");
    expect(read.complaints).toEqual([
      expect.objectContaining({ message: expect.stringContaining("across the car's centreline") }),
    ]);
    expect(read.complaints[0]?.part).toContain("wheel.center.out");
    expect(read.complaints[0]?.line).toBeGreaterThan(1);
  });
});
