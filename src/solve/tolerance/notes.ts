import type { Study } from "../../measures/study.ts";
import { readings } from "../sensitivity/readings.ts";
import { type Curves, curvesOf } from "./curves.ts";
import type { Drawn } from "./errors.ts";
import type { Held } from "./held.ts";
import { type Judge, judgesOf } from "./judged.ts";
import { newSample, put, type Sample } from "./sample.ts";
import { classOf } from "./shares.ts";
import { failed, type Judging, judging, type Verdict } from "./verdict.ts";

/** All that is noted of builds while they are tried. */
export interface Notes {
  readonly judges: readonly Judge[];
  readonly verdict: Judging;
  readonly figures: readonly Sample[];
  readonly values: readonly Sample[];
  /** Which builds each judge looked at. */
  readonly looked: readonly Uint8Array[];
  /** By size: the class of its error in each build. */
  readonly classes: readonly Uint8Array[];
  readonly verdicts: Verdict[];
  readonly curves: Curves;
  apart: number;
}

/** Notes a build; `withDear`: what takes long to read is read of it too. */
export function note(notes: Notes, build: number, { shares }: Drawn, study: Study | null, withDear: boolean): void {
  const { judges, figures, values, looked, classes, curves } = notes;
  for (const [i, of] of classes.entries()) of[build] = classOf(shares[i]);
  const judged = judges.map((judge, i) => {
    if (judge.dear && !withDear) return null;
    looked[i][build] = 1;
    return study === null ? null : judge.read(study);
  });
  for (const [i, value] of judged.entries()) put(values[i], build, value);
  notes.verdicts.push(study === null ? failed : notes.verdict(judged));
  if (study === null) {
    notes.apart++;
    return;
  }
  for (const [i, reading] of readings.entries()) put(figures[i], build, reading.read(study));
  curves.note(study, build);
}

/** Room for the notes of so many builds. */
export function newNotes(set: Study, held: readonly Held[], builds: number): Notes {
  const judges = judgesOf(set);
  return {
    judges,
    verdict: judging(judges, set),
    figures: readings.map(() => newSample(builds)),
    values: judges.map(() => newSample(builds)),
    looked: judges.map(() => new Uint8Array(builds)),
    classes: held.map(() => new Uint8Array(builds)),
    verdicts: [],
    curves: curvesOf(set, builds),
    apart: 0,
  };
}
