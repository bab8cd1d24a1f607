import type { Study } from "../../measures/study.ts";
import type { CarReadings } from "../../vehicle/car-readings/reading.ts";
import { correlation } from "../least-squares/confidence.ts";
import type { Equations } from "../least-squares/equations.ts";
import { varianceAlong } from "../least-squares/row.ts";
import { type Blunder, type Snooped, snoop } from "../least-squares/snoop.ts";
import { equationsOf, studyAt } from "./equations.ts";
import { type Prediction, predictionsOf } from "./predictions.ts";
import { type Unknown, unknownsOf } from "./unknowns.ts";

/** A number that was read, beside what the car on file and the matched one give. mm or rad. */
export interface ReadingRow {
  readonly prediction: Prediction;
  readonly onFile: number;
  readonly matched: number;
  /** By how much it reads too much, where it does not go with the others. */
  readonly wrong: Wrong | null;
  /** False where nothing else says what it says: wrong or right, it would not show. */
  readonly checked: boolean;
  /** True of an angle that does not go with the file, and would with its sign the other way. */
  readonly flipped: boolean;
}

/** Something that does not go with all else; `or`: what could be wrong in its place, which these readings cannot tell. */
export interface Wrong {
  /** mm or rad, with one standard deviation. */
  readonly by: number;
  readonly deviation: number;
  readonly or: readonly Suspect[];
}

/** A number that was read, or a place on file. */
export type Suspect = { readonly prediction: Prediction } | { readonly unknown: Unknown };

/** A part of the car, beside its file. */
export interface PartRow {
  readonly unknown: Unknown;
  /** As it is most likely, less as it is on file, mm or rad. */
  readonly moved: number;
  /** One standard deviation of that, mm or rad. */
  readonly deviation: number;
  /** The same as a share of what it was before anything was read: near 1 the readings say nothing of it. */
  readonly share: number;
  /** Where it is further off than a car is built to. */
  readonly off: Wrong | null;
  /**
   * If it were off by more than this, mm or rad, it would most likely be called so (4 of 5 times); null where it would not
   * show.
   */
  readonly leastFound: number | null;
  /**
   * By how much `moved` may be wrong besides, mm or rad, where one place not called off is further off than it is built to,
   * but by less than its leastFound.
   */
  readonly hidden: number;
  /** True where it has moved by more than it is built to, and yet is not surely off. */
  readonly beyond: boolean;
  /** True where it is off, has moved by as much as it is known to, or was not known before. */
  readonly standsOut: boolean;
}

/** Two parts of which the readings tell little but what they do together. */
export interface Entangled {
  readonly parts: readonly [PartRow, PartRow];
  /** −1 to 1. Near 1 they move alike, near −1 against each other. */
  readonly correlation: number;
}

export interface Matched {
  /** The car on file, and as it most likely is. */
  readonly onFile: Study;
  readonly after: Study;
  readonly readings: readonly ReadingRow[];
  /** Those that the readings have a say in, as in the list of inputs. */
  readonly parts: readonly PartRow[];
  /** Parts that could be anywhere in their tolerance for all that was read. */
  readonly untold: readonly Unknown[];
  readonly entangled: readonly Entangled[];
  /** Where the rack or the column stands straight ahead, with one standard deviation; null where nowhere. */
  readonly zero: { readonly value: number; readonly deviation: number } | null;
  /** How likely readings as good as their tolerances fit no better; null where nothing checks anything. */
  readonly chance: number | null;
  readonly converged: boolean;
}

/** Readings that the car on file cannot be brought to. */
export interface NoMatch {
  readonly unreached: readonly Prediction[];
}

/** Less of an effect on all readings together than this, in their deviations for one of its own, leaves a part out. */
const NO_EFFECT = 0.03;
/** A part known no better than this share of what it was built to is one that the readings cannot tell. */
export const UNTOLD = 0.9;
/** Two parts count as entangled from here on. */
const ENTANGLED = 0.8;
/** The chance that a sound car with sound readings has anything called wrong. */
const FALSE_ALARM = 0.02;
/** Differences are good to this. */
const ENTRY_ERROR = 1e-6;

/**
 * What a built car most likely is: the places on file, each good to what it was built to, and what was read on the car,
 * brought together by least squares. What does not go with all else, a reading or a place, is taken out one at a time.
 */
export function matchOf(study: Study, { readings, builtTo }: CarReadings): Matched | NoMatch {
  const predictions = predictionsOf(readings, study);
  const unreached = predictions.filter(({ predict }) => predict(study) === null);
  if (unreached.length > 0) return { unreached };
  const every = unknownsOf(study, builtTo);
  const heard = heardBy(equationsOf(study, every, predictions), predictions.length);
  const unknowns = every.filter((_, j) => heard[j]);
  const equations = equationsOf(study, unknowns, predictions);
  const found = snoop(equations, new Float64Array(unknowns.length), {
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
    zero: zeroOf(study, after, unknowns, found),
    chance: found.settled.chance,
    converged: found.settled.converged,
  };
}

function isTold({ share, off }: PartRow): boolean {
  return share <= UNTOLD || off !== null;
}

/** Which unknowns any reading has a say in. */
function heardBy(equations: Equations, readings: number): readonly boolean[] {
  const { unknowns } = equations;
  const jacobian = new Float64Array(equations.readings * unknowns);
  equations.evaluate(new Float64Array(unknowns), new Float64Array(equations.readings), jacobian);
  return Array.from({ length: unknowns }, (_, j) => {
    const column = Array.from({ length: readings }, (_, i) => jacobian[i * unknowns + j]);
    return Math.hypot(...column) > NO_EFFECT;
  });
}

function sigmaOf({ tolerance }: { readonly tolerance: number }): number {
  return tolerance / 2;
}

/** The reading of that place among the equations: a number that was read, or a part's place on file. */
function suspectOf(at: number, unknowns: readonly Unknown[], predictions: readonly Prediction[]): Suspect {
  return at < predictions.length ? { prediction: predictions[at] } : { unknown: unknowns[at - predictions.length] };
}

function partsOf(
  unknowns: readonly Unknown[],
  predictions: readonly Prediction[],
  { settled, blunders, kept }: Snooped,
): readonly PartRow[] {
  return unknowns.map((unknown, j) => {
    const sigma = sigmaOf(unknown);
    const deviation = settled.confidence.deviations[j];
    // A place that was taken out lacks nothing but its own reading: what says that it is off determines it.
    const share = deviation === "undetermined" ? Number.POSITIVE_INFINITY : deviation;
    const blunder = blunders.find(({ reading }) => reading === predictions.length + j);
    const own = settled.confidence.checks[kept.indexOf(predictions.length + j)];
    const moved = settled.x[j] * sigma;
    const isBeyond = blunder === undefined && !unknown.open && Math.abs(moved) > unknown.tolerance;
    return {
      unknown,
      moved,
      deviation: share * sigma,
      share,
      off: blunder === undefined ? null : { by: moved, deviation: share * sigma, or: others(blunder) },
      leastFound: own?.checked ? own.leastFound * sigma : null,
      hidden: hiddenIn(j, unknowns.length, predictions.length, { settled, kept }) * sigma,
      beyond: isBeyond,
      standsOut: blunder !== undefined || isBeyond || unknown.open || Math.abs(moved) >= share * sigma,
    };
  });
  function others({ or }: Blunder): readonly Suspect[] {
    return or.map((at) => suspectOf(at, unknowns, predictions));
  }
}

/**
 * The most that an unnoticed error of one place on file moves an unknown, in the unknown's deviations on file: how fast that
 * place moves it, which is their covariance, by the largest error that is likely to be overlooked (Baarda's external
 * reliability, A testing procedure for use in geodetic networks, 1968; recalled, not looked up). Of places that the readings
 * tell; of the others any error could be overlooked.
 */
function hiddenIn(
  j: number,
  unknowns: number,
  readings: number,
  { settled: { confidence }, kept }: Pick<Snooped, "settled" | "kept">,
): number {
  const { covariance, checks } = confidence;
  let most = 0;
  for (let k = 0; k < unknowns; k++) {
    const check = checks[kept.indexOf(readings + k)];
    if (!check?.checked || Math.sqrt(covariance[k * unknowns + k]) > UNTOLD) continue;
    most = Math.max(most, Math.abs(covariance[j * unknowns + k]) * check.leastFound);
  }
  return most;
}

/** An angle whose sign may have been slipped: it is far from the file, and the other way round it is not. */
function isFlipped({ reading, read, tolerance }: Prediction, onFile: number): boolean {
  return (
    ["toe", "camber", "caster"].includes(reading.kind) &&
    Math.abs(read - onFile) > 2 * tolerance &&
    Math.abs(read + onFile) <= tolerance
  );
}

function readingRows(
  study: Study,
  after: Study,
  unknowns: readonly Unknown[],
  predictions: readonly Prediction[],
  { blunders, unchecked }: Snooped,
): readonly ReadingRow[] {
  return predictions.map((prediction, i) => {
    const blunder = blunders.find(({ reading }) => reading === i);
    const sigma = sigmaOf(prediction);
    const wrong =
      blunder === undefined
        ? null
        : {
            by: blunder.by * sigma,
            deviation: blunder.deviation * sigma,
            or: blunder.or.map((at) => suspectOf(at, unknowns, predictions)),
          };
    const onFile = prediction.predict(study);
    const matched = prediction.predict(after);
    if (onFile === null || matched === null) throw new Error("what was settled can be evaluated");
    const flipped = isFlipped(prediction, onFile);
    return { prediction, onFile, matched, wrong, checked: !unchecked.includes(i), flipped };
  });
}

/** Pairs of parts that are told together rather than each by itself, the most entangled first. */
function entangledOf(parts: readonly PartRow[], { settled }: Snooped): readonly Entangled[] {
  const pairs: Entangled[] = [];
  parts.forEach((one, a) => {
    parts.slice(a + 1).forEach((other, k) => {
      const both = correlation(settled.confidence, a, a + 1 + k);
      if (both !== null && Math.abs(both) >= ENTANGLED) pairs.push({ parts: [one, other], correlation: both });
    });
  });
  return pairs.sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}

/**
 * Where the matched car's rack or column stands straight ahead, and how well that is known: its derivatives by the unknowns,
 * through their covariance.
 */
function zeroOf(study: Study, after: Study, unknowns: readonly Unknown[], { settled }: Snooped): Matched["zero"] {
  if (after.zero === null) return null;
  const { x, confidence } = settled;
  const rates = unknowns.map((_, j) => {
    const at = (by: number) =>
      studyAt(
        study,
        unknowns,
        x.map((value, k) => (k === j ? value + by : value)),
      )?.zero ?? null;
    const [more, less] = [at(HALF_STEP), at(-HALF_STEP)];
    return more === null || less === null ? 0 : (more - less) / (2 * HALF_STEP);
  });
  return { value: after.zero, deviation: Math.sqrt(varianceAlong(confidence, Float64Array.from(rates))) };
}

/** In deviations of an unknown. */
const HALF_STEP = 0.05;
