import { describe, expect, test } from "vitest";
import { bewareOf } from "../../src/output/beware.ts";
import { studied } from "../measures/carTexts.ts";
import { preset } from "../vehicle/cars.ts";

const inches = (mm: number) => `${(mm / 25.4).toFixed(3)} in`;
const text = preset("balanced-two-seater");
const before = studied(text);

/** The car with one thing written otherwise, which has to be in it. */
function otherwise(from: string, to: string) {
  expect(text).toContain(from);
  return studied(text.replace(from, to));
}

describe("what to beware of in a car that was changed", () => {
  test("nothing where all is as good as before", () => {
    expect(bewareOf(before, before, inches)).toEqual([]);
  });

  test("a lock that is no longer reached, and the dead point that is met on the way", () => {
    const [reach, dead] = bewareOf(before, otherwise('travel: "2 1/8"', "travel: 5"), inches);
    expect(reach).toMatch(/^DOES NOT REACH: it does not close at rack .*tie rod is .* in too short$/);
    expect(dead).toMatch(
      /^DANGEROUS: a rod comes to 0\.0° from its dead point somewhere in the travel, \d+\.\d° before$/,
    );
  });

  test("a car that steers backwards, once", () => {
    const backwards = otherwise("wheel-left-moves: right", "wheel-left-moves: left");
    expect(bewareOf(before, backwards, inches)).toEqual([
      "STEERS BACKWARDS: steering wheel left turns the road wheels right",
    ]);
    expect(bewareOf(backwards, backwards, inches)).toEqual([]);
  });

  test("locks that come to stand further apart, and not ones that come nearer", () => {
    const off = otherwise('travel: "2 1/8"', 'travel: "2 1/8", straight-ahead: 1/8');
    const words = bewareOf(before, off, inches).join();
    expect(words).toMatch(/the inner locks come to stand \d+\.\d° apart, 0\.0° before/);
    expect(bewareOf(off, before, inches).join()).not.toContain("apart");
  });
});
