import { frontSticks } from "../../src/measures/bodies/front.ts";
import type { Stick } from "../../src/measures/bodies/stick.ts";
import { type Place, pointsOf, type WheelPoints } from "../../src/measures/points.ts";
import type { Study } from "../../src/measures/study.ts";
import { point } from "../oracles/vectors.ts";

/** Bodies as they are drawn, taken apart for tests. */
export const inch = 25.4;
export const vector = ([x, y, z]: Place) => point(x, y, z);

export function sticksAt(study: Study, input: number, travel: number): readonly Stick[] {
  return frontSticks(study, study.pose(input, travel, travel), input) ?? [];
}

export function placesAt(study: Study, input: number, travel: number, wheel: "left" | "right"): WheelPoints {
  const points = pointsOf(study.pose(input, travel, travel), wheel, study.tireRadius);
  if (points === null) throw new Error("the wheel does not stand");
  return points;
}

/** Sticks of one part and wheel, their places rounded to a millionth of a millimetre. */
export function placesOf(sticks: readonly Stick[], part: Stick["part"], wheel: Stick["wheel"]) {
  const round = (each: number) => Math.round(each * 1e6) / 1e6 + 0;
  return sticks
    .filter((stick) => stick.part === part && stick.wheel === wheel)
    .map(({ places }) => places.map((place) => place.map(round)));
}

export const rounded = (places: readonly (readonly Place[])[]) =>
  placesOf(
    places.map((each) => ({ wheel: null, part: "fixed", places: each })),
    "fixed",
    null,
  );
