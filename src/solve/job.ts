/**
 * Long work that is done in pieces, so that whoever drives it can show how far it is and stop it between two of them.
 * What "a piece" is, each job says.
 */
export interface Job<T> {
  /** Does at most so many pieces; true once there is nothing left to do. */
  readonly step: (budget: number) => boolean;
  /** How much is done, from 0 to 1. */
  readonly progress: () => number;
  /** The best that is known so far; the result, once all is done. */
  readonly best: () => T;
}
