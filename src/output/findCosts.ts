import type { Worsened } from "../solve/find/costs.ts";
import type { Goal } from "../solve/goals/goals.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { goalKinds } from "../vehicle/sections/goals.ts";
import { readingWords } from "./findWords.ts";
import type { Length } from "./words.ts";

/** What every builder looks at, whatever a search aims at. */
export const besides = [
  "inner-lock",
  "lock-difference",
  "ackermann",
  "turning-circle",
  "toe-change",
  "bounce-steer",
] as const;

/** One of these. */
export type Beside = (typeof besides)[number];

/** A goal that asks for nothing, by which a number is told as its goals are. */
export function unaimed(name: Beside): Goal {
  const { ends } = goalKinds[name];
  return {
    name,
    level: "nice",
    least: ends === "most" ? null : Number.NEGATIVE_INFINITY,
    most: ends === "least" ? null : Number.POSITIVE_INFINITY,
    over: 1,
    from: "usual",
  };
}

/** What an answer costs that no goal asks for, a sentence each. */
export function costWords(costs: readonly Worsened[], unit: LengthUnit, length: Length): readonly string[] {
  return costs.map(({ name, was, is }) => {
    const [now, then] = [was, is].map((reading) => readingWords(unaimed(name), reading, unit, length));
    return `MUCH WORSE: ${goalKinds[name].label.toLowerCase()} ${now} now, ${then} then.`;
  });
}
