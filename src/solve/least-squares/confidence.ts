import { Matrix, SingularValueDecomposition } from "ml-matrix";
import { criticalSize, deviateAbove } from "./chance.ts";

/** How well one unknown is known: its standard deviation, or that the readings do not determine it. */
export type Deviation = number | "undetermined";

/**
 * How far the other readings check one: `redundancy` from 0 (nothing else says it) to 1 (all else says it). Where it is next
 * to nothing a wrong reading goes wholly into the unknowns and cannot be seen: unchecked.
 */
export type Check =
  | { readonly checked: false; readonly redundancy: number }
  | {
      readonly checked: true;
      readonly redundancy: number;
      /** Its misfit in the misfit's own standard deviations. */
      readonly normalised: number;
      /** How much it reads too much if it alone is wrong, in its sigmas. */
      readonly blunder: number;
      /** In its sigmas: a smaller blunder is likely to be overlooked. */
      readonly leastFound: number;
    };

/** What a sheet of readings says of its unknowns, near the place where it was settled. */
export interface Confidence {
  readonly rank: number;
  /** Readings beyond those that are needed. */
  readonly freedom: number;
  /** Of the unknowns, row-major; of directions that nothing determines, nothing (pseudo-inverse of the scaled jacobian). */
  readonly covariance: Float64Array;
  readonly deviations: readonly Deviation[];
  /** Moves of the unknowns that no reading notices, each of length 1. */
  readonly loose: readonly Float64Array[];
  readonly checks: readonly Check[];
  /** The size of a normalised misfit over which a reading counts as wrong. */
  readonly critical: number;
  /** What unknowns can do to readings: an orthonormal basis, row-major readings × rank. */
  readonly reachable: Float64Array;
}

export interface Doubt {
  /**
   * How far each unknown could be off at all, in its unit. One that the readings know no better counts as undetermined, and
   * a move of that size that no reading notices as loose.
   */
  readonly within?: Float64Array;
  /** The relative error of the jacobian's entries. */
  readonly entryError?: number;
  /** The chance that a sheet without a wrong reading has one called wrong. */
  readonly falseAlarm?: number;
  /** The chance that a blunder of the least size that is called found is. */
  readonly power?: number;
}

/** Derivatives written out, of places whose differences lose up to six of sixteen digits. */
const ENTRY_ERROR = 1e-10;
const FALSE_ALARM = 0.01;
const POWER = 0.8;
/** With less redundancy only blunders of more than 130 sigmas would show: more than any tape is misread by. */
const CHECKED = 1e-3;

/**
 * What a jacobian and the misfits at the settled place say. Deviations are from the sigmas that the readings were given, not
 * from how well they happened to fit. The rank comes from the singular values of the jacobian with its columns scaled (by
 * `within`, or to length 1): an error of each entry of so much moves no singular value by more than that times the norm of
 * all (Weyl). Redundancy, normalised misfits and least detectable blunders are Baarda's (A testing procedure for use in
 * geodetic networks, 1968; recalled, not looked up): r = diag(I − J Q Jᵀ), w = misfit / √r, blunder = −misfit / r.
 */
export function confidenceOf(
  jacobian: Float64Array,
  misfits: Float64Array,
  { within, entryError = ENTRY_ERROR, falseAlarm = FALSE_ALARM, power = POWER }: Doubt = {},
): Confidence {
  const readings = misfits.length;
  const unknowns = jacobian.length / readings;
  const scale = within ?? columnScales(jacobian, readings, unknowns);
  const { values, left, right } = decomposed(jacobian, readings, unknowns, scale);
  const noise = entryError * Math.hypot(...values);
  const rank = values.filter((value) => value > noise).length;
  const last = rank > 0 ? values[rank - 1] : 1;
  // A null direction is known to the noise over the least value that counts (Wedin): less of an unknown in it is noise.
  const leak = noise / last;

  const covariance = new Float64Array(unknowns * unknowns);
  for (let k = 0; k < rank; k++) {
    for (let i = 0; i < unknowns; i++) {
      const one = (scale[i] * right.get(i, k)) / values[k] ** 2;
      for (let j = 0; j < unknowns; j++) covariance[i * unknowns + j] += one * scale[j] * right.get(j, k);
    }
  }
  const deviations = Array.from({ length: unknowns }, (_, j): Deviation => {
    for (let k = rank; k < unknowns; k++) if (Math.abs(right.get(j, k)) > leak) return "undetermined";
    const deviation = Math.sqrt(covariance[j * unknowns + j]);
    return within !== undefined && deviation > within[j] ? "undetermined" : deviation;
  });
  const loose = Array.from({ length: unknowns }, (_, k) => k)
    .filter((k) => k >= rank || (within !== undefined && values[k] < 1))
    .map((k) => unit(Float64Array.from({ length: unknowns }, (_, j) => scale[j] * right.get(j, k))));

  const reachable = new Float64Array(readings * rank);
  for (let i = 0; i < readings; i++) for (let k = 0; k < rank; k++) reachable[i * rank + k] = left.get(i, k);
  const redundancies = Array.from(misfits, (_, i) => {
    let fitted = 0;
    for (let k = 0; k < rank; k++) fitted += reachable[i * rank + k] ** 2;
    return Math.max(1 - fitted, 0);
  });
  const critical = criticalSize(falseAlarm, redundancies.filter((r) => r > CHECKED).length);
  const least = critical + deviateAbove(1 - power);
  const checks = redundancies.map((redundancy, i): Check => {
    if (redundancy <= CHECKED) return { checked: false, redundancy };
    return {
      checked: true,
      redundancy,
      normalised: misfits[i] / Math.sqrt(redundancy),
      blunder: -misfits[i] / redundancy,
      leastFound: least / Math.sqrt(redundancy),
    };
  });
  return { rank, freedom: readings - rank, covariance, deviations, loose, checks, critical, reachable };
}

/** How the normalised misfits of two checked readings go together, −1 to 1: near either end they cannot be told apart. */
export function together({ reachable, rank, checks }: Confidence, a: number, b: number): number {
  let fitted = 0;
  for (let k = 0; k < rank; k++) fitted += reachable[a * rank + k] * reachable[b * rank + k];
  return ((a === b ? 1 : 0) - fitted) / Math.sqrt(checks[a].redundancy * checks[b].redundancy);
}

/** How two unknowns go together, −1 to 1; null where either is not known from anything. */
export function correlation({ covariance, deviations }: Confidence, a: number, b: number): number | null {
  const many = deviations.length;
  const size = Math.sqrt(covariance[a * many + a] * covariance[b * many + b]);
  return size > 0 ? covariance[a * many + b] / size : null;
}

function columnScales(jacobian: Float64Array, readings: number, unknowns: number): Float64Array {
  return Float64Array.from({ length: unknowns }, (_, j) => {
    let sum = 0;
    for (let i = 0; i < readings; i++) sum += jacobian[i * unknowns + j] ** 2;
    return sum > 0 ? 1 / Math.sqrt(sum) : 1;
  });
}

interface Decomposed {
  /** Falling. */
  readonly values: readonly number[];
  readonly left: Matrix;
  readonly right: Matrix;
}

/** Rows of nothing are added where readings are fewer than unknowns, so that there is a direction for every unknown. */
function decomposed(jacobian: Float64Array, readings: number, unknowns: number, scale: Float64Array): Decomposed {
  const rows = Array.from({ length: Math.max(readings, unknowns) }, (_, i) =>
    Array.from({ length: unknowns }, (_, j) => (i < readings ? jacobian[i * unknowns + j] * scale[j] : 0)),
  );
  const { diagonal, leftSingularVectors, rightSingularVectors } = new SingularValueDecomposition(new Matrix(rows));
  return { values: diagonal, left: leftSingularVectors, right: rightSingularVectors };
}

function unit(vector: Float64Array): Float64Array {
  const length = Math.hypot(...vector);
  return vector.map((value) => value / length);
}
