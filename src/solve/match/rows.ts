import type { Study } from "../../measures/study.ts";
import { correlation } from "../least-squares/confidence.ts";
import type { Blunder, Snooped } from "../least-squares/snoop.ts";
import type { Entangled, PartRow, ReadingRow, Suspect } from "./matched.ts";
import type { Prediction } from "./predictions.ts";
import type { Unknown } from "./unknowns.ts";

/** A part known no better than this share of what it was built to is one that the readings cannot tell. */
export const UNTOLD = 0.9;
/** Two parts count as entangled from here on. */
const ENTANGLED = 0.8;

function sigmaOf({ tolerance }: { readonly tolerance: number }): number {
  return tolerance / 2;
}

/** The reading of that place among the equations: a number that was read, or a part's place on file. */
function suspectOf(at: number, unknowns: readonly Unknown[], predictions: readonly Prediction[]): Suspect {
  return at < predictions.length ? { prediction: predictions[at] } : { unknown: unknowns[at - predictions.length] };
}

export function partsOf(
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

export function readingRows(
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
export function entangledOf(parts: readonly PartRow[], { settled }: Snooped): readonly Entangled[] {
  const pairs: Entangled[] = [];
  parts.forEach((one, a) => {
    parts.slice(a + 1).forEach((other, k) => {
      const both = correlation(settled.confidence, a, a + 1 + k);
      if (both !== null && Math.abs(both) >= ENTANGLED) pairs.push({ parts: [one, other], correlation: both });
    });
  });
  return pairs.sort((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation));
}
