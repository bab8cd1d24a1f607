import type { Study } from "../../measures/study.ts";
import { goalKinds } from "../../vehicle/sections/goals.ts";
import type { Goal } from "../goals/goals.ts";
import { type Reading, readingOf } from "../goals/readings.ts";

/** Numbers that are better the smaller, which every builder looks at whatever a search aims at. */
const watched = ["lock-difference", "turning-circle", "toe-change", "bounce-steer"] as const;

/** A number that an answer makes much worse though no goal asks for it: as the car stands, and with the answer. */
export interface Worsened {
  readonly name: (typeof watched)[number];
  readonly was: Reading;
  readonly is: Reading;
}

/** So many misses of a goal that nobody set are worth a word: 1/4 in of toe, a degree of bounce steer. Common practice, no source. */
const WORTH_A_WORD = 4;

/** What an answer makes worse that no goal asks for: toe over travel, bounce steer, unequal locks, a wider circle. */
export function costsOf(goals: readonly Goal[], before: Study, after: Study): readonly Worsened[] {
  return watched.flatMap((name) => {
    const { scale } = goalKinds[name];
    if (goals.some((goal) => goal.name === name)) return [];
    const [was, is] = [readingOf(name, 1, before), readingOf(name, 1, after)];
    return was === null || is === null || is.high - was.high < WORTH_A_WORD * scale ? [] : [{ name, was, is }];
  });
}
