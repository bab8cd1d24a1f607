import type { Study } from "../../measures/study.ts";
import { limitOf } from "../../vehicle/sections/limits.ts";
import { finished, type Job, jobOf, type Piece } from "../job.ts";
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

/** Whether a rod is broken by the check's own limit with a remedy, or the front end no longer goes together. */
function isBroken({ car, worst }: Study): boolean {
  const { broken } = limitOf(car.sections.limits, "rod-to-arm");
  const angles = [worst.rodAngle.left, worst.rodAngle.right].map((least) => least?.angle ?? broken);
  return worst.blame !== null || Math.min(...angles) < broken;
}

/** Percent by which left and right Ackermann may differ before the car turns another way left than right. Common practice, no source. */
const LOPSIDED = 50;

/** Whether equal locks were bought with wheels that no longer turn alike: one scrubs where the other follows. */
function isLopsided({ locks: { left, right } }: Study): boolean {
  const [one, other] = [left?.ackermann ?? null, right?.ackermann ?? null];
  return one !== null && other !== null && Math.abs(one - other) > LOPSIDED;
}

/**
 * Where a remedy stands: first the free one; then what the answers speak for; what they do not speak of; and last what
 * they speak against. Of those that stand alike the ones that leave or bring something broken, or turn the wheels unlike
 * each other, come last.
 */
function rankOf({ key, needs, after }: Remedy, { columnCanMove, uprightsToMake }: Answers): number {
  if (key === "recut") return 0;
  const answer = needs === "column" ? columnCanMove : needs === "uprights" ? uprightsToMake : null;
  return (answer === true ? 1 : answer === false ? 3 : 2) + (isBroken(after) || isLopsided(after) ? 0.5 : 0);
}

/** Remedies in the order that the answers speak for. */
export function ranked({ offered, not }: Remedies, answers: Answers): Remedies {
  return { offered: [...offered].sort((a, b) => rankOf(a, answers) - rankOf(b, answers)), not };
}

function* made(study: Study): Iterator<Piece<Remedies>, void> {
  const patient = patientOf(study);
  const offered: Remedy[] = [];
  const not: NoRemedy[] = [];
  for (const [i, cure] of cures.entries()) {
    const each = cure(patient);
    if ("after" in each) offered.push(each);
    else not.push(each);
    yield { progress: (i + 1) / cures.length, best: { offered: [...offered], not: [...not] } };
  }
}

/** The cures for a car's unequal locks, each worked out as an edit of its text; a piece of the job is one cure. */
export function remediesJob(study: Study): Job<Remedies> {
  return jobOf({ offered: [], not: [] }, made(study));
}

/** All of them, ranked by the answers to two questions. */
export function remediesFor(study: Study, answers: Answers): Remedies {
  return ranked(finished(remediesJob(study)), answers);
}
