import type { Study } from "../measures/study.ts";
import { degrees, type Length, outOfReach, rodAngleGrade, steersBackwards } from "./words.ts";

/** Less than this, rad, nobody could tell at the bench. */
const LITTLE = (0.5 * Math.PI) / 180;

/** The least rod-to-arm angle of either wheel over the whole range, rad; none where no wheel closes. */
function leastAngle({ worst: { rodAngle } }: Study): number {
  return Math.min(rodAngle.left?.angle ?? Number.POSITIVE_INFINITY, rodAngle.right?.angle ?? Number.POSITIVE_INFINITY);
}

/** Said where a rod comes, or stays, nearer its dead point than is good; and how near it came before. */
function nearDead(before: Study, after: Study): readonly string[] {
  const [was, is] = [leastAngle(before), leastAngle(after)];
  const grade = rodAngleGrade(is);
  if (grade === "good") return [];
  return [
    `${is < was ? "" : "still "}${grade.toUpperCase()}: a rod comes to ${degrees(is)} from its dead point somewhere in the travel, ${degrees(was)} before`,
  ];
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
