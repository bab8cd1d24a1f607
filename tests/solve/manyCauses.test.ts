import { describe, expect, it } from "vitest";
import { seed } from "../oracles/cars.ts";
import { manyCauses, remediesOff, sharesOff } from "./manyCauses.ts";

/** Cars that are tried: more of them by RACKWRIGHT_RUNS in the environment. */
const runs = Number(process.env.RACKWRIGHT_RUNS ?? 12);

describe("cars whose locks differ for several causes at once", () => {
  const cars = manyCauses(runs, seed);

  it("have shares that add up to the difference, for inners, outers and circles", () => {
    const made = cars.map(({ study }) => sharesOff(study));
    // Sums of at most 32 doubles of a few rad, or of radii in mm.
    for (const { off } of made)
      for (const { measure, whole, off: by } of off)
        expect(by, measure).toBeLessThan(measure === "turnRadius" ? 1e-6 + 1e-9 * Math.abs(whole) : 1e-12);
    expect(made.reduce((so, { off }) => so + off.length, 0)).toBeGreaterThan(1.5 * runs);
    expect(made.filter(({ causes }) => causes >= 3).length).toBeGreaterThan(runs / 3);
  });

  it("have the same locks by each remedy's file and by the same values written by hand", () => {
    const kinds = new Set<string>();
    for (const each of cars.slice(0, Math.max(4, runs / 3)))
      for (const { key, off } of remediesOff(each)) {
        kinds.add(key);
        // A value is written to a millionth of a mm at the coarsest, and a mm of a rod is worth 2 degrees at most.
        expect(off, key).toBeLessThan(1e-7);
      }
    expect(kinds.size).toBe(9);
  });
});
