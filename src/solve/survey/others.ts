import type { Surveyed } from "./survey.ts";

/** What all the other readings make of one, and how well they know it: one standard deviation; mm or rad. */
export interface ByOthers {
  readonly value: number;
  readonly deviation: number;
}

/**
 * Every reading as the others have it, in the sheet's order; null where no other checks it. A reading with the redundancy r
 * draws the points its way, so that only the share r of what it is off by shows as its misfit. Without it the points say
 * value − misfit/r, with the variance σ² (1 − r)/r (Sherman and Morrison 1950; recalled, not looked up): exact where the
 * readings are straight-line functions of the points, else as good as that is. One that was set aside is judged by the
 * others already.
 */
export function byOthers({ readings, blunders }: Surveyed): readonly (ByOthers | null)[] {
  const aside = new Map(blunders.map((blunder) => [blunder.reading, blunder]));
  return readings.map(({ reading: { value, sigma }, computed, check }, i) => {
    const blunder = aside.get(i);
    if (blunder !== undefined)
      return { value: computed, deviation: sigma * Math.sqrt(Math.max(blunder.deviation ** 2 - 1, 0)) };
    if (check === null || !check.checked) return null;
    const { redundancy } = check;
    return {
      value: value - (value - computed) / redundancy,
      deviation: sigma * Math.sqrt(Math.max(1 - redundancy, 0) / redundancy),
    };
  });
}
