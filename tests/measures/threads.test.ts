import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { perTurn, rodFit, turnOfArm } from "../../src/measures/threads.ts";
import type { RodThread, RodThreads } from "../../src/vehicle/sections/threads.ts";
import { readThread } from "../../src/vehicle/threads.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { degrees } from "../oracles/vectors.ts";
import { threadOf } from "./thread.ts";

// Pitches: ASME B1.1 (UNF) and ISO 261, both quoted from memory.
describe("threads by their designation", () => {
  test.each([
    ["3/8-24", 9.525, 1.058333],
    ["7/16-20", 11.1125, 1.27],
    ["1/2-20", 12.7, 1.27],
    ["5/8-18", 15.875, 1.411111],
    ["3/4-16", 19.05, 1.5875],
    ["M10", 10, 1.5],
    ["M10x1.25", 10, 1.25],
    ["M12", 12, 1.75],
    ["M12x1.25", 12, 1.25],
    ["M14", 14, 2],
    ["M14x1.5", 14, 1.5],
    ["M16", 16, 2],
  ])("%s is %d mm with a pitch of %d mm", (text, diameter, pitch) => {
    expect(threadOf(text).diameter).toBeCloseTo(diameter, 9);
    expect(threadOf(text).pitch).toBeCloseTo(pitch, 6);
  });

  test.each(["1/2-21", "M12x1.1", "M13", "11/16-16", "1/2", "UNF", "", "M", "1/0-20", "M1e3", "-1/2-20"])(
    "%s is none, and what would be right is said",
    (text) => {
      expect(readThread(text)).toHaveProperty("complaint", expect.stringMatching(/^expected /));
    },
  );
});

describe("toe for a turn", () => {
  // Derived: asin(p/120) for one pitch on an arm of 120 mm.
  test.each([
    ["1/2-20", 0.606392],
    ["5/8-18", 0.673771],
    ["M12", 0.835593],
  ])("one pitch of %s on an arm of 120 mm is %d degrees", (text, expected) => {
    expect(degrees(turnOfArm(threadOf(text).pitch, 120) ?? 0)).toBeCloseTo(expected, 6);
  });

  test("a tube with a left and a right thread moves its eyes by two pitches a turn", () => {
    const size = threadOf("1/2-20");
    expect(perTurn({ size, hand: "left" }, { size, hand: "right" })).toBeCloseTo(2 * 1.27, 12);
    expect(perTurn({ size, hand: "right" }, { size, hand: "right" })).toBe(0);
  });
});

const end = (size: string, change: Partial<RodThread> = {}): RodThread => ({
  size: threadOf(size),
  hand: "right",
  fitting: "tapped",
  reach: 60,
  thread: 40,
  depth: null,
  shoulder: 0,
  "jam-nut": null,
  ...change,
});

// One and a half diameters is common practice, without a source; turns are that over the pitch.
test.each([
  ["1/2-20", 19.05, 15],
  ["M12", 18, 10.2857],
])("%s held by one and a half diameters is held by %d mm, %d turns", (text, engagement, turns) => {
  const size = threadOf(text);
  // A tube cut so long that its ends stand as far out as that: nothing is left to lengthen, to rounding.
  const least = engagement;
  const fit = rodFit({ outer: end(text), inner: end(text, { hand: "left" }), cut: 200 }, 200 + 2 * (60 - least), 1.5);
  expect(fit.engaged[0]).toBeCloseTo(engagement, 9);
  expect(fit.longer).toBeCloseTo(0, 9);
  expect(fit.engaged[0] / size.pitch).toBeCloseTo(turns, 4);
});

const ends = fc.record({
  size: fc.constantFrom("3/8-24", "1/2-20", "5/8-18", "M10", "M12x1.25", "M16"),
  hand: fc.constantFrom<RodThread["hand"]>("left", "right"),
  reach: fc.double({ min: 40, max: 120, noNaN: true }),
  thread: fc.double({ min: 30, max: 80, noNaN: true }),
  depth: fc.option(fc.double({ min: 20, max: 90, noNaN: true })),
  shoulder: fc.double({ min: 0, max: 30, noNaN: true }),
});
const rods: fc.Arbitrary<Pick<RodThreads, "outer" | "inner">> = fc.tuple(ends, ends).map(([a, b]) => ({
  outer: end(a.size, { ...a, size: threadOf(a.size) }),
  inner: end(b.size, { ...b, size: threadOf(b.size) }),
}));

/** Eye to eye along the rod, part by part: ball to thread's end, less what is in the tube, and any bung. */
function eyeToEye(
  { outer, inner }: Pick<RodThreads, "outer" | "inner">,
  tube: number,
  engaged: readonly number[],
): number {
  return outer.reach - engaged[0] + outer.shoulder + tube + inner.shoulder + inner.reach - engaged[1];
}

test("the parts of a rod add up to its length, whether the tube is cut or to be cut", () => {
  fc.assert(
    fc.property(
      rods,
      fc.double({ min: 200, max: 600, noNaN: true }),
      fc.option(fc.double({ min: 100, max: 500, noNaN: true })),
      (rod, length, cut) => {
        const fit = rodFit({ ...rod, cut }, length, 1.5);
        expect(eyeToEye(rod, fit.tube, fit.engaged)).toBeCloseTo(length, 9);
        if (cut !== null) expect(fit.tube).toBe(cut);
      },
    ),
  );
});

test("a turnbuckle that is turned until an end runs out has made the rod longer by what was said", () => {
  fc.assert(
    fc.property(rods, (rod) => {
      const both = { outer: { ...rod.outer, hand: "right" as const }, inner: { ...rod.inner, hand: "left" as const } };
      const fit = rodFit({ ...both, cut: null }, 400, 1.5);
      fc.pre(fit.longer > 0);
      // Turned half a turn at a time, each end comes out by its own pitch, as long as 1.5 diameters are in.
      const [a, b] = [both.outer.size, both.inner.size];
      const turns = Math.min(
        (fit.engaged[0] - 1.5 * a.diameter) / a.pitch,
        (fit.engaged[1] - 1.5 * b.diameter) / b.pitch,
      );
      expect(fit.longer).toBeCloseTo(turns * (a.pitch + b.pitch), 9);
      expect(fit.step).toBeCloseTo(a.pitch + b.pitch, 12);
    }),
  );
});

test("a quarter of an inch of adjustment is some five turns of a half-inch fine thread", () => {
  expect(inch / 4 / threadOf("1/2-20").pitch).toBeCloseTo(5, 9);
});
