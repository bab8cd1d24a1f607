import type { Met } from "../../solve/goals/score.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import { goalKinds } from "../../vehicle/sections/goals.ts";
import { goalWords, readingWords } from "../findWords.ts";
import type { Json } from "../json.ts";
import { inUnits } from "../numbers.ts";
import type { Writing } from "./writing.ts";

/**
 * "This place misses 2 of the goals in the file's find: want Ackermann 60 % to 110 %: is 24 %; …": what a search has still to
 * settle; null where nothing is missed.
 */
export function missedAims(missed: readonly Met[], { unit, length }: Writing): string | null {
  if (missed.length === 0) return null;
  const each = missed.map(
    ({ goal, reading }) =>
      `${goal.level} ${goalWords(goal, unit, length)}, is ${readingWords(goal, reading, unit, length)}`,
  );
  const many = missed.length === 1 ? "one" : missed.length;
  return `This place misses ${many} of the goals in the file's find: ${each.join("; ")}. Run rackwright find first, or ask for less there: what is below is for the place as it is drawn`;
}

/** A missed goal as JSON, numbers not rounded; null where an end is not asked for or a reading cannot be told. */
export function missedJson({ goal: { name, level, least, most }, reading }: Met, unit: LengthUnit): Json {
  const kind = name === "range" ? "length" : goalKinds[name].kind;
  const say = (value: number | null) => (value === null || kind === "ratio" ? value : inUnits(value, kind, unit));
  return {
    goal: name,
    level,
    least: say(least),
    most: say(most),
    low: say(reading?.low ?? null),
    high: say(reading?.high ?? null),
  };
}
