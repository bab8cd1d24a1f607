import type { Study } from "../../measures/study.ts";
import { goalKinds } from "../../vehicle/sections/goals.ts";
import type { Goal } from "../goals/goals.ts";
import { type Reading, readingOf } from "../goals/readings.ts";

/** Numbers that every builder looks at whatever a search aims at: all are better the smaller, but for the lock. */
const watched = ["inner-lock", "lock-difference", "turning-circle", "toe-change", "bounce-steer"] as const;

/** A number that an answer makes much worse though no goal asks for it: as the car stands, and with the answer. */
export interface Worsened {
  readonly name: (typeof watched)[number];
  readonly was: Reading;
  /** Null where it can no longer be told. */
  readonly is: Reading | null;
}

/** So many misses of a goal that nobody set are worth a word: 1/4 in of toe, a degree of bounce steer, 4 of lock. Common practice, no source. */
const WORTH_A_WORD = 4;

/** What an answer makes worse that no goal asks for: less lock, unequal locks, a wider circle, toe over travel, bounce steer. */
export function costsOf(goals: readonly Goal[], before: Study, after: Study): readonly Worsened[] {
  return watched.flatMap((name) => {
    if (goals.some((goal) => goal.name === name)) return [];
    const [was, is] = [readingOf(name, 1, before), readingOf(name, 1, after)];
    return was === null || (is !== null && !isMuchWorse(name, was, is)) ? [] : [{ name, was, is }];
  });
}

function isMuchWorse(name: (typeof watched)[number], was: Reading, is: Reading): boolean {
  const { scale, ends } = goalKinds[name];
  return (ends === "least" ? was.low - is.low : is.high - was.high) >= WORTH_A_WORD * scale;
}
