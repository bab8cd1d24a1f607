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
}

/** Equations without some of their readings; `kept` are the places of those that stay. */
export function only(equations: Equations, kept: readonly number[]): Equations {
  const { unknowns, readings } = equations;
  const misfitsOfAll = new Float64Array(readings);
  const jacobianOfAll = new Float64Array(readings * unknowns);
  return {
    unknowns,
    readings: kept.length,
    evaluate: (x, misfits, jacobian) => {
      if (!equations.evaluate(x, misfitsOfAll, jacobian && jacobianOfAll)) return false;
      kept.forEach((from, to) => {
        misfits[to] = misfitsOfAll[from];
        jacobian?.set(jacobianOfAll.subarray(from * unknowns, (from + 1) * unknowns), to * unknowns);
      });
      return true;
    },
  };
}
