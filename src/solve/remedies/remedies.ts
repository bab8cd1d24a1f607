import type { Study } from "../../measures/study.ts";
import { collar } from "./collar.ts";
import { type Cure, patientOf } from "./cure.ts";
import { offMiddle, recut } from "./middle.ts";
import { eyesMoved, housing } from "./rack.ts";
import type { Answers, NoRemedy, Remedy } from "./remedy.ts";
import { oneTab } from "./tab.ts";

/** Every remedy, in the order of a shop that knows nothing of column and uprights: a new one is one line here. */
const cures: readonly Cure[] = [
  recut,
  housing(1),
  housing(0.5),
  oneTab,
  offMiddle("inner"),
  offMiddle("turnRadius"),
  collar,
  eyesMoved("bracket"),
  eyesMoved("extender"),
];

export interface Remedies {
  /** Best first. */
  readonly offered: readonly Remedy[];
  readonly not: readonly NoRemedy[];
}

/**
 * Where a remedy stands: first the free one; then what the answers speak for; what they do not speak of; and last what
 * they speak against.
 */
function rankOf({ key, needs }: Remedy, { columnCanMove, uprightsToMake }: Answers): number {
  if (key === "recut") return 0;
  const answer = needs === "column" ? columnCanMove : needs === "uprights" ? uprightsToMake : null;
  return answer === true ? 1 : answer === false ? 3 : 2;
}

/** The cures for a car's unequal locks, each worked out as an edit of its text, ranked by the answers to two questions. */
export function remediesFor(study: Study, answers: Answers): Remedies {
  const patient = patientOf(study);
  const made = cures.map((cure) => cure(patient));
  const offered = made.filter((each): each is Remedy => "after" in each);
  return {
    offered: [...offered].sort((a, b) => rankOf(a, answers) - rankOf(b, answers)),
    not: made.filter((each): each is NoRemedy => "why" in each),
  };
}
