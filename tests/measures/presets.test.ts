import { expect, test } from "vitest";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { carIn, preset } from "../vehicle/cars.ts";

/** What the comments of the example cars say of them must be so. */

function studied(name: string): Study {
  const study = studyOf(carIn(preset(name)));
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

function degrees(rad: number | null | undefined): number {
  return rad === null || rad === undefined ? Number.NaN : (rad * 180) / Math.PI;
}

test.each(["balanced-two-seater", "widened-offset-rack", "cut-rods-off-middle", "rack-ahead"])(
  "%s turns its inner wheel by 30 to 38 degrees at both locks, and steers the right way",
  (name) => {
    const study = studied(name);
    for (const lock of [study.locks.left, study.locks.right]) {
      expect(degrees(lock?.inner)).toBeGreaterThanOrEqual(30);
      expect(degrees(lock?.inner)).toBeLessThanOrEqual(38);
    }
    expect(study.steersBackwards).toBe(false);
  },
);
