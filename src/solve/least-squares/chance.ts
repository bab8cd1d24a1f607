import { errorFunction, probit } from "simple-statistics";

/** Newton steps from a quantile good to some 1e-3 to one as good as the error function, 1e-7. */
const STEPS = 4;

/** The chance of a normal deviate above z, 0 to 1. */
export function above(z: number): number {
  return (1 - errorFunction(z / Math.SQRT2)) / 2;
}

/** The z above which a normal deviate is with that chance. `chance`: from about 1e-12 to 1/2. */
export function deviateAbove(chance: number): number {
  let z = -probit(chance);
  for (let i = 0; i < STEPS; i++) {
    const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
    z += (above(z) - chance) / density;
  }
  return z;
}

/** So many standard deviations either way hold a normal deviate with that chance: 1.96 for 0.95. */
export function deviationsHolding(chance: number): number {
  return deviateAbove((1 - chance) / 2);
}

/**
 * The size that no normalised misfit of a sheet without a wrong reading goes over, but for the given chance: that of one
 * reading is 1 − (1 − α)^(1/n) (Šidák, Journal of the American Statistical Association 62, 1967; recalled, not looked up).
 * It is exact for misfits that have nothing to do with each other, and on the safe side for any others.
 */
export function criticalSize(falseAlarm: number, readings: number): number {
  return deviationsHolding((1 - falseAlarm) ** (1 / Math.max(readings, 1)));
}

/**
 * The chance that a sum of squares of so many normal deviates comes out above a value: the finite sums of Abramowitz and
 * Stegun, Handbook of Mathematical Functions, 26.4.4 and 26.4.5 (recalled, not looked up).
 */
export function chanceAbove(sumOfSquares: number, freedom: number): number {
  const half = sumOfSquares / 2;
  const odd = freedom % 2 === 1;
  let sum = odd ? 2 * above(Math.sqrt(sumOfSquares)) : 0;
  let term = odd ? Math.exp(-half) * Math.sqrt(half / Math.PI) * 2 : Math.exp(-half);
  for (let k = odd ? 3 : 2; k <= freedom; k += 2) {
    sum += term;
    term *= sumOfSquares / k;
  }
  return Math.min(sum, 1);
}
