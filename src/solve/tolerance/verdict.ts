import type { Study } from "../../measures/study.ts";
import { type Judge, meets } from "./judged.ts";

/** Whether a build meets every aim, every limit, and all that the car keeps as drawn, of what every build is held against. */
export interface Verdict {
  readonly aim: boolean;
  readonly limit: boolean;
  readonly kept: boolean;
}

/** Of a build that does not go together. */
export const failed: Verdict = { aim: false, limit: false, kept: false };

/** The tighter end that the car keeps as drawn, its aim or its limit; null where it misses both: then no jig helps. */
export function keptOf(judge: Judge, set: number | null): number | null {
  if (meets(judge, set, judge.aim)) return judge.aim;
  return meets(judge, set, judge.limit) ? judge.limit : null;
}

export type Judging = (values: readonly (number | null)[]) => Verdict;

/** How builds are judged beside the car as drawn, by what judges read of each. */
export function judging(judges: readonly Judge[], set: Study): Judging {
  const always = judges.flatMap((judge, i) => (judge.dear ? [] : [{ judge, i, kept: keptOf(judge, judge.read(set)) }]));
  return (values) => ({
    aim: always.every(({ judge, i }) => meets(judge, values[i], judge.aim)),
    limit: always.every(({ judge, i }) => meets(judge, values[i], judge.limit)),
    kept: always.every(({ judge, i, kept }) => kept === null || meets(judge, values[i], kept)),
  });
}
