import type { Study } from "../measures/study.ts";
import type { CheckReport } from "../solve/check/report.ts";
import type { Met } from "../solve/goals/score.ts";
import { assumedWords } from "./assumed.ts";
import { bewareOf } from "./beware.ts";
import { itemBrief } from "./check.ts";
import { missedAims } from "./sheet/aims.ts";
import type { Writing } from "./sheet/writing.ts";
import { nearDeadPoint, outOfReach, steersBackwards, wildToe } from "./words.ts";

/** What tells whether a car may be built as it is drawn: its checks, and the goals of its own search that it misses. */
export interface Judged {
  readonly study: Study;
  readonly checks: CheckReport;
  readonly missed: readonly Met[];
}

/**
 * What has to be put right, or known, before anything is cut, whole sentences, the worst first; what the car as it is now
 * (`from`) suffers from already is not said as news of the new one.
 */
export function beforeCutting(
  { study, checks, missed }: Judged,
  writing: Writing,
  from: Study | null,
): readonly string[] {
  const { unit, length } = writing;
  const loud = [
    steersBackwards(study),
    wildToe(study),
    study.worst.blame === null ? null : `DOES NOT REACH: it ${outOfReach(study, study.worst.blame, length)}`,
    from === null ? nearDeadPoint(study) : null,
  ].filter((each) => each !== null);
  const beware = from === null ? [] : bewareOf(from, study, length).filter((each) => !loud.includes(each));
  const broken = checks.items.filter(({ state }) => state === "broken");
  const named = broken.map((item) => itemBrief(item, unit, length)).join("; ");
  const assumed = assumedWords(study.car);
  return [
    ...loud,
    ...beware,
    missedAims(missed, writing),
    broken.length === 0
      ? null
      : `${broken.length} of the checks ${broken.length === 1 ? "is" : "are"} BROKEN: ${named}`,
    assumed === null ? null : `${assumed}. Measure these first: what is assumed is not to be welded by`,
    ...study.car.warnings.map(({ message }) => message),
  ].flatMap((each) => (each === null ? [] : [`${each}.`]));
}
