import type { Confidence } from "./confidence.ts";
import { dot, through } from "./row.ts";

/** What the best further reading does. */
export type Next =
  /** It determines something that nothing did; `deviation`: how well, along the direction it sees. */
  | { readonly candidate: number; readonly gives: "a new direction"; readonly deviation: number }
  /** The sum of the variances of the chosen unknowns, before and after. */
  | { readonly candidate: number; readonly gives: "less spread"; readonly before: number; readonly after: number };

/** Less of a reading than this, as a share of it, in the loose directions is rounding. */
const SEEN = 1e-6;

/**
 * Which further reading settles most: one that sees what nothing determines yet, else the one that takes most off the sum of
 * the variances of the `chosen` unknowns (all, if none are named; they should be of one kind, since mm² and rad² do not add
 * up). `candidates`: for each, the derivatives of its misfit by the unknowns, in its sigmas. One more reading with the row a
 * takes (Q a)(Q a)ᵀ / (1 + aᵀ Q a) off the covariance Q (Sherman and Morrison 1950; recalled, not looked up). Null where no
 * candidate says anything.
 */
export function nextReading(
  confidence: Confidence,
  candidates: readonly Float64Array[],
  chosen: readonly number[] = confidence.deviations.map((_, j) => j),
): Next | null {
  const { covariance, loose, deviations } = confidence;
  const fresh = best(candidates, (row) => {
    const seen = Math.hypot(...loose.map((direction) => dot(row, direction)));
    return seen > SEEN * Math.hypot(...row) ? seen : 0;
  });
  if (fresh !== null) return { candidate: fresh.candidate, gives: "a new direction", deviation: 1 / fresh.gain };
  const many = deviations.length;
  const before = chosen.reduce((sum, j) => sum + covariance[j * many + j], 0);
  const narrower = best(candidates, (row) => {
    const spread = through(confidence, row);
    return chosen.reduce((sum, j) => sum + spread[j] ** 2, 0) / (1 + dot(row, spread));
  });
  if (narrower === null) return null;
  return { candidate: narrower.candidate, gives: "less spread", before, after: before - narrower.gain };
}

function best(
  candidates: readonly Float64Array[],
  gainOf: (row: Float64Array) => number,
): { candidate: number; gain: number } | null {
  let most: { candidate: number; gain: number } | null = null;
  candidates.forEach((row, candidate) => {
    const gain = gainOf(row);
    if (gain > (most?.gain ?? 0)) most = { candidate, gain };
  });
  return most;
}
