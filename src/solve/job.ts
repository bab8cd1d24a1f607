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

/** What a piece of work leaves behind: how much is done, and the best so far. */
export interface Piece<T> {
  readonly progress: number;
  readonly best: T;
}

/** A job from a generator that yields after each piece; `first` is the best before any is done. */
export function jobOf<T>(first: T, pieces: Iterator<Piece<T>, void>): Job<T> {
  let last: Piece<T> = { progress: 0, best: first };
  let done = false;
  return {
    step: (budget) => {
      for (let i = 0; i < budget && !done; i++) {
        const next = pieces.next();
        if (next.done) done = true;
        else last = next.value;
      }
      return done;
    },
    progress: () => (done ? 1 : last.progress),
    best: () => last.best,
  };
}

/** Runs a job through, and gives its result. */
export function finished<T>(job: Job<T>): T {
  job.step(Number.POSITIVE_INFINITY);
  return job.best();
}
