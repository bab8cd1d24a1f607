import { type Pieces, through } from "./pieces.ts";

/**
 * What is to be brought together: unknowns x, and readings each of which says something of them. A misfit is
 * (computed − read) / sigma, sigma the standard deviation of that reading, so that every misfit counts in the same unit. What
 * is known of an unknown beforehand is one more reading, of the unknown itself.
 */
export interface Equations {
  readonly unknowns: number;
  readonly readings: number;
  /**
   * Writes the misfits at x and, where it is wanted, their derivatives by x (row-major, readings × unknowns). False where
   * x cannot be evaluated (a linkage that does not close); what is in the buffers then does not count.
   */
  readonly evaluate: (x: Float64Array, misfits: Float64Array, jacobian: Float64Array | null) => boolean;
  /** The same in pieces, of equations that are dear. */
  readonly evaluating?: (x: Float64Array, misfits: Float64Array, jacobian: Float64Array | null) => Pieces<boolean>;
}

/** Evaluates equations, resting where they can. */
export function* evaluated(
  { evaluate, evaluating }: Equations,
  x: Float64Array,
  misfits: Float64Array,
  jacobian: Float64Array | null,
): Pieces<boolean> {
  return evaluating === undefined ? evaluate(x, misfits, jacobian) : yield* evaluating(x, misfits, jacobian);
}

/** Equations without some of their readings; `kept` are the places of those that stay. */
export function only(equations: Equations, kept: readonly number[]): Equations {
  const { unknowns, readings } = equations;
  const misfitsOfAll = new Float64Array(readings);
  const jacobianOfAll = new Float64Array(readings * unknowns);
  return whole({
    unknowns,
    readings: kept.length,
    *evaluating(x: Float64Array, misfits: Float64Array, jacobian: Float64Array | null): Pieces<boolean> {
      if (!(yield* evaluated(equations, x, misfitsOfAll, jacobian && jacobianOfAll))) return false;
      kept.forEach((from, to) => {
        misfits[to] = misfitsOfAll[from];
        jacobian?.set(jacobianOfAll.subarray(from * unknowns, (from + 1) * unknowns), to * unknowns);
      });
      return true;
    },
  });
}

/** Equations that are given in pieces, with all pieces done at once too. */
export function whole(equations: Required<Omit<Equations, "evaluate">>): Equations {
  return { ...equations, evaluate: (...asked) => through(equations.evaluating(...asked)) };
}
