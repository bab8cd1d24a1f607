import type { Study } from "../../measures/study.ts";
import { type Job, jobOf } from "../job.ts";
import type { NoTolerance, Tolerance } from "./result.ts";
import { toleranceJob } from "./tolerance.ts";

/** Builds that the screen tries: a chance is then known to two or three of 100, and keys need not wait for it to be told. */
const BUILDS = 2000;

/** What is known is told anew each time that there is so many times as much of it: telling takes longer than a piece. */
const GROWN = 2;

/** The trials of a car's builds as a screen shows them, told now and then. */
export function shownJob(study: Study): Job<Tolerance | NoTolerance> {
  const job = toleranceJob(study, { builds: BUILDS, seed: 1 });
  if ("refused" in job) return jobOf<Tolerance | NoTolerance>(job, [].values());
  let known = { progress: 0, best: job.best() };
  return {
    ...job,
    best: () => {
      const progress = job.progress();
      const isNew = known.best.tried === 0 ? progress > 0.1 : progress >= GROWN * known.progress || progress === 1;
      if (isNew && progress > known.progress) known = { progress, best: job.best() };
      return known.best;
    },
  };
}
