import { type Equations, whole } from "./equations.ts";
import type { Pieces } from "./pieces.ts";

/**
 * Equations whose derivatives are central differences, for what has none written out. `steps`: half the difference of each
 * unknown, in its unit: its cube root of rounding times the size that matters, so that an entry is good to about 1e-8.
 * Derivatives are dear, rested at after each unknown, and kept for the place where they were taken last: whoever goes on
 * from there has them for nothing.
 */
export function differenced(
  unknowns: number,
  readings: number,
  steps: Float64Array,
  misfitsAt: (x: Float64Array, misfits: Float64Array) => boolean,
): Equations {
  const above = new Float64Array(readings);
  const below = new Float64Array(readings);
  const kept = { x: new Float64Array(unknowns).fill(Number.NaN), jacobian: new Float64Array(readings * unknowns) };
  return whole({
    unknowns,
    readings,
    *evaluating(x: Float64Array, misfits: Float64Array, jacobian: Float64Array | null): Pieces<boolean> {
      if (!misfitsAt(x, misfits)) return false;
      if (jacobian === null) return true;
      if (x.every((value, j) => value === kept.x[j])) {
        jacobian.set(kept.jacobian);
        return true;
      }
      const moved = Float64Array.from(x);
      for (let j = 0; j < unknowns; j++) {
        yield;
        moved[j] = x[j] + steps[j];
        const up = misfitsAt(moved, above);
        moved[j] = x[j] - steps[j];
        const down = misfitsAt(moved, below);
        moved[j] = x[j];
        if (!up && !down) return false;
        const [to, from] = [up ? above : misfits, down ? below : misfits];
        const width = (up ? steps[j] : 0) + (down ? steps[j] : 0);
        for (let i = 0; i < readings; i++) jacobian[i * unknowns + j] = (to[i] - from[i]) / width;
      }
      kept.x.set(x);
      kept.jacobian.set(jacobian);
      return true;
    },
  });
}
