import type { Study } from "../measures/study.ts";
import { degrees, type Length, leastOfBoth, nearDeadPoint, outOfReach, steersBackwards } from "./words.ts";

/** Less than this, rad, nobody could tell at the bench. */
const LITTLE = (0.5 * Math.PI) / 180;

/** Said where a rod comes, or stays, nearer its dead point than is good; and how near it came before. */
function nearDead(before: Study, after: Study): readonly string[] {
  const words = nearDeadPoint(after);
  const was = leastOfBoth(before);
  return words === null ? [] : [`${leastOfBoth(after) < was ? "" : "still "}${words}, ${degrees(was)} before`];
}

function apart(before: Study, after: Study): readonly string[] {
  const [was, is] = [before, after].map(({ locks }) => locks.difference.inner);
  if (was === null || is === null || Math.abs(is) < Math.abs(was) + LITTLE) return [];
  return [`the inner locks come to stand ${degrees(Math.abs(is))} apart, ${degrees(Math.abs(was))} before`];
}

/**
 * What to beware of in a car that was changed: it no longer goes together over its range, steers backwards, has a rod nearer
 * its dead point than is good, or its locks further apart than before. Without full stops; nothing where there is none of it.
 */
export function bewareOf(before: Study, after: Study, length: Length): readonly string[] {
  const { blame } = after.worst;
  const backwards = before.steersBackwards === true ? null : steersBackwards(after);
  return [
    ...(backwards === null ? [] : [backwards]),
    ...(blame === null || before.worst.blame !== null
      ? []
      : [`DOES NOT REACH: it ${outOfReach(after, blame, length)}`]),
    ...nearDead(before, after),
    ...apart(before, after),
  ];
}
