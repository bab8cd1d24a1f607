import { probit } from "simple-statistics";
import { randomFrom } from "../search/random.ts";
import type { Held } from "./held.ts";

/** Of how many standard deviations a tolerance is: within it lie 95.4 of 100 of what is built to it. */
export const DEVIATIONS = 2;

/** The errors of one build, mm or rad, and the share of all errors that is less than each, from 0 to 1. */
export interface Drawn {
  readonly errors: Float64Array;
  readonly shares: Float64Array;
}

/**
 * The errors of one build after the other. Each is normal, about nothing, with the tolerance as two standard deviations, and
 * independent of all others: an error adds up from measuring, clamping, cutting and the weld's pull, and what adds up from
 * several small causes is normal (central limit); a builder who works to 1/16 in finds most of what he made within it, and a
 * few outside. The same seed gives the same errors. The library's quantile is good to a thousandth of itself from the 1st to
 * the 99th hundredth, which 10 000 builds cannot tell. `tightened`: how many times as closely held[i] is held.
 */
export function errorsFrom(
  seed: number,
  held: readonly Held[],
  tightened: (held: Held) => number = () => 1,
): () => Drawn {
  const random = randomFrom(seed);
  // The first numbers after a small seed are small themselves.
  for (let i = 0; i < 16; i++) random();
  const deviations = Float64Array.from(held, (each) => each.tolerance / DEVIATIONS / tightened(each));
  return () => {
    const shares = new Float64Array(held.length);
    const errors = new Float64Array(held.length);
    for (let i = 0; i < held.length; i++) {
      shares[i] = random();
      errors[i] = deviations[i] * probit(shares[i]);
    }
    return { errors, shares };
  };
}
