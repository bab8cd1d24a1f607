import jstat from "jstat";
import { loadPreset } from "../../../src/files/presets.ts";
import { type Study, studyOf } from "../../../src/measures/study.ts";
import { finished } from "../../../src/solve/job.ts";
import type { Asked, Tolerance } from "../../../src/solve/tolerance/result.ts";
import { toleranceJob } from "../../../src/solve/tolerance/tolerance.ts";
import { readCar } from "../../../src/vehicle/read.ts";

export function textOf(preset: string): string {
  const loaded = loadPreset(preset);
  if ("complaints" in loaded) throw new Error(preset);
  return loaded.text;
}

export function studyOfText(text: string): Study {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints.map(({ part, message }) => `${part}: ${message}`).join("; "));
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

/** A preset built to these tolerances, as lines of YAML flow; every other size is exact. */
export function heldTo(preset: string, tolerances: string): Study {
  return studyOfText(`${textOf(preset)}\ntolerances: { length: 0, angle: 0, ${tolerances} }\n`);
}

export function trialsOf(study: Study, asked: Asked): Tolerance {
  const job = toleranceJob(study, asked);
  if ("refused" in job) throw new Error(job.refused);
  return finished(job);
}

export function figureOf({ figures }: Tolerance, id: string) {
  const figure = figures.find(({ reading }) => reading.id === id);
  if (figure === undefined) throw new Error(id);
  return figure;
}

/** How seldom a right program may fail a check by chance. */
const SELDOM = 1e-6;

/**
 * Between which two counts of n builds the number of those that have a chance p lies, but once in 500 000 times: from the
 * binomial distribution, by a library that the program does not use.
 */
export function countsOf(n: number, p: number): readonly [least: number, most: number] {
  let least = 0;
  while (jstat.binomial.cdf(least, n, p) < SELDOM) least++;
  let most = n;
  while (most > 0 && 1 - jstat.binomial.cdf(most - 1, n, p) < SELDOM) most--;
  return [least, most];
}

/**
 * Between which two numbers of standard deviations the sample quantile of n normal values lies, but once in 500 000 times: a
 * value below which p of all lie has a binomial number of the sample below it (order statistics).
 */
export function quantileBounds(n: number, p: number): readonly [least: number, most: number] {
  const [least, most] = countsOf(n, p);
  const at = (count: number) => jstat.normal.inv(Math.min(1 - 0.5 / n, Math.max(0.5 / n, count / n)), 0, 1);
  return [at(least - 1), at(most + 1)];
}
