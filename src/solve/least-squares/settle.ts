import { chanceAbove } from "./chance.ts";
import { type Confidence, confidenceOf, type Doubt } from "./confidence.ts";
import { type Descent, descending, type Patience } from "./descend.ts";
import type { Equations } from "./equations.ts";
import { type Pieces, through } from "./pieces.ts";

export interface Settled extends Omit<Descent, "jacobian"> {
  readonly confidence: Confidence;
  /**
   * The chance that a sum of squares as great as this comes from readings that are as good as their sigmas say; null where no
   * reading is checked by another. Next to nothing: a reading is wrong, a sigma is too small, or the model is not the car.
   */
  readonly chance: number | null;
}

/** The unknowns that fit the readings best, and how well they are known. Null where the start cannot be evaluated. */
export function* settling(
  equations: Equations,
  start: Float64Array,
  options: Patience & Doubt = {},
): Pieces<Settled | null> {
  const descent = yield* descending(equations, start, options);
  if (descent === null) return null;
  const { jacobian, ...rest } = descent;
  const confidence = confidenceOf(jacobian, descent.misfits, options);
  const chance = confidence.freedom > 0 ? chanceAbove(descent.cost, confidence.freedom) : null;
  return { ...rest, confidence, chance };
}

/** The same, done at once. */
export function settle(equations: Equations, start: Float64Array, options: Patience & Doubt = {}): Settled | null {
  return through(settling(equations, start, options));
}
