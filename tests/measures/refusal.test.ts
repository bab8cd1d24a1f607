import { expect, test } from "vitest";
import { refusalPart, refusalWords } from "../../src/measures/refusal.ts";

test.each([
  [
    "lower-joint-on-its-axis",
    "left",
    "left lower joint lies on its arm's axis, so it cannot move",
    "front.left.lower-arm",
  ],
  [
    "drawn-on-dead-point",
    "right",
    "right tie rod is drawn on its dead point: it points at the steering axis and cannot turn the wheel",
    "front.right.tie-rod",
  ],
  ["idler-joint-on-its-axis", null, "idler arm's joint lies on its axis, so it cannot move", "steering.relay"],
  // One rod's end is at fault, yet the file draws it with the steering.
  [
    "eye-on-column-axis",
    "right",
    "right tie rod's inner end lies on the steering column's axis, so the plate cannot move it",
    "steering.steering-plate",
  ],
] as const)("%s on %s is told in words, with the part of the file that draws it", (refused, wheel, words, part) => {
  expect(refusalWords({ refused, wheel })).toBe(`The front end cannot work as drawn: the ${words}.`);
  expect(refusalPart({ refused, wheel }).join(".")).toBe(part);
});
