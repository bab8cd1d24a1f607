import type { Study } from "../../measures/study.ts";
import type { CarReadings } from "../../vehicle/car-readings/reading.ts";
import { finished, type Job, jobOf, type Piece } from "../job.ts";
import { type Equations, evaluated } from "../least-squares/equations.ts";
import type { Pieces } from "../least-squares/pieces.ts";
import { varianceAlong } from "../least-squares/row.ts";
import { type Snooped, snooping } from "../least-squares/snoop.ts";
import { equationsOf, studyAt } from "./equations.ts";
import type { Matched, NoMatch, PartRow } from "./matched.ts";
import { predictionsOf } from "./predictions.ts";
import { entangledOf, partsOf, readingRows, UNTOLD } from "./rows.ts";
import { type Unknown, unknownsOf } from "./unknowns.ts";

/** Less of an effect on all readings together than this, in their deviations for one of its own, leaves a part out. */
const NO_EFFECT = 0.03;
/** The chance that a sound car with sound readings has anything called wrong. */
const FALSE_ALARM = 0.02;
/** Differences are good to this. */
const ENTRY_ERROR = 1e-6;
/**
 * Each rod whose length nobody wrote down takes up one reading. The next one more only shows that something is off, and it
 * takes another to tell what: the two that do not agree could each be the wrong one.
 */
const TO_SPARE = 2;

/**
 * What a built car most likely is: the places on file, each good to what it was built to, and what was read on the car,
 * brought together by least squares. What does not go with all else, a reading or a place, is taken out one at a time.
 * Until the last of those is out, each may bend every number: there is no best before the end. A piece is one part moved
 * either way, all readings worked out.
 */
export function matchJob(study: Study, readings: CarReadings): Job<Matched | NoMatch | null> {
  return jobOf<Matched | NoMatch | null>(null, matching(study, readings));
}

/** The same, done at once. */
export function matchOf(study: Study, readings: CarReadings): Matched | NoMatch {
  const matched = finished(matchJob(study, readings));
  if (matched === null) throw new Error("what is finished has a result");
  return matched;
}

/** After so many times that all parts were moved, half of the work is done, by and large: nobody knows what is still wrong. */
const HALFWAY = 4;

function* matching(study: Study, readings: CarReadings): Generator<Piece<Matched | NoMatch | null>, void> {
  const pieces = matchedIn(study, readings);
  const half = HALFWAY * unknownsOf(study, readings.builtTo).length;
  for (let done = 0; ; done++) {
    const next = pieces.next();
    if (next.done === true) {
      yield { progress: 1, best: next.value };
      return;
    }
    yield { progress: done / (done + half), best: null };
  }
}

function* matchedIn(study: Study, { readings, builtTo }: CarReadings): Pieces<Matched | NoMatch> {
  const predictions = predictionsOf(readings, study);
  const unreached = predictions.filter(({ predict }) => predict(study) === null);
  if (unreached.length > 0) return { unreached };
  const every = unknownsOf(study, builtTo);
  const heard = yield* heardBy(equationsOf(study, every, predictions), predictions.length);
  const unknowns = every.filter((_, j) => heard[j]);
  const equations = equationsOf(study, unknowns, predictions);
  const found = yield* snooping(equations, new Float64Array(unknowns.length), {
    falseAlarm: FALSE_ALARM,
    entryError: ENTRY_ERROR,
  });
  const after = found === null ? null : studyAt(study, unknowns, found.settled.x);
  if (found === null || after === null) return { unreached: predictions };
  const parts = partsOf(unknowns, predictions, found);
  return {
    onFile: study,
    after,
    readings: readingRows(study, after, unknowns, predictions, found),
    parts: parts.filter(isTold),
    untold: [
      ...every.filter((_, j) => !heard[j]),
      ...parts.filter((part) => !isTold(part)).map(({ unknown }) => unknown),
    ],
    entangled: entangledOf(parts, found),
    zero: yield* zeroOf(study, after, unknowns, found),
    chance: found.settled.chance,
    converged: found.settled.converged,
    few: predictions.length - parts.filter((part) => part.unknown.open && isTold(part)).length < TO_SPARE,
  };
}

function isTold({ share, off }: PartRow): boolean {
  return share <= UNTOLD || off !== null;
}

/** Which unknowns any reading has a say in. */
function* heardBy(equations: Equations, readings: number): Pieces<readonly boolean[]> {
  const { unknowns } = equations;
  const jacobian = new Float64Array(equations.readings * unknowns);
  yield* evaluated(equations, new Float64Array(unknowns), new Float64Array(equations.readings), jacobian);
  return Array.from({ length: unknowns }, (_, j) => {
    const column = Array.from({ length: readings }, (_, i) => jacobian[i * unknowns + j]);
    return Math.hypot(...column) > NO_EFFECT;
  });
}

/**
 * Where the matched car's rack or column stands straight ahead, and how well that is known: its derivatives by the unknowns,
 * through their covariance.
 */
function* zeroOf(
  study: Study,
  after: Study,
  unknowns: readonly Unknown[],
  { settled }: Snooped,
): Pieces<Matched["zero"]> {
  if (after.zero === null) return null;
  const { x, confidence } = settled;
  const rates = new Float64Array(unknowns.length);
  for (let j = 0; j < rates.length; j++) {
    yield;
    const at = (by: number) =>
      studyAt(
        study,
        unknowns,
        x.map((value, k) => (k === j ? value + by : value)),
      )?.zero ?? null;
    const [more, less] = [at(HALF_STEP), at(-HALF_STEP)];
    rates[j] = more === null || less === null ? 0 : (more - less) / (2 * HALF_STEP);
  }
  return { value: after.zero, deviation: Math.sqrt(varianceAlong(confidence, rates)) };
}

/** In deviations of an unknown. */
const HALF_STEP = 0.05;
