import { CholeskyDecomposition, Matrix } from "ml-matrix";
import { type Equations, evaluated } from "./equations.ts";
import { type Pieces, through } from "./pieces.ts";

/** The unknowns that fit the readings best, as far as was looked. */
export interface Descent {
  readonly x: Float64Array;
  /** In sigmas of each reading: computed less read. */
  readonly misfits: Float64Array;
  /** Of the misfits by the unknowns at x, row-major. */
  readonly jacobian: Float64Array;
  /** The sum of the squares of the misfits. */
  readonly cost: number;
  /** How often the unknowns were moved or a move was refused. */
  readonly steps: number;
  /** False where the steps ran out first: x is then the best so far, not the best. */
  readonly converged: boolean;
}

export interface Patience {
  /** No more steps than this. */
  readonly steps?: number;
  /** Done once a step alters all misfits together by no more than this, in sigmas. */
  readonly enough?: number;
}

const STEPS = 200;
/** A millionth of what the gauge is good for. */
const ENOUGH = 1e-6;
/**
 * Damping at the start and at least, where the columns of the jacobian are scaled to length 1. Below the least, what
 * rounding leaves in a direction that nothing determines would carry x away along it.
 */
const FIRST_DAMPING = 1e-3;
const LEAST_DAMPING = 1e-12;
/** So strongly damped, a short step says nothing of how near the end is. */
const WEAK_DAMPING = 1e-3;
/** A cost that falls by less than this share of itself falls by rounding only. */
const ROUNDING = 1e-15;

/**
 * The least sum of squares near `start`, by Levenberg and Marquardt's method (Levenberg, Quarterly of Applied Mathematics 2,
 * 1944; Marquardt, Journal of the Society for Industrial and Applied Mathematics 11, 1963) with unknowns scaled by the
 * longest column seen (Moré 1978) and damping by the gain ratio (Madsen, Nielsen and Tingleff, Methods for Non-Linear Least
 * Squares Problems, 2004, algorithm 3.16); sources recalled, not looked up. Directions that no reading determines stay where
 * they were at the start. Null where even the start cannot be evaluated.
 */
export function* descending(
  equations: Equations,
  start: Float64Array,
  { steps = STEPS, enough = ENOUGH }: Patience = {},
): Pieces<Descent | null> {
  const { unknowns, readings } = equations;
  let x = Float64Array.from(start);
  let misfits = new Float64Array(readings);
  let trialMisfits = new Float64Array(readings);
  let jacobian = new Float64Array(readings * unknowns);
  let trialJacobian = new Float64Array(readings * unknowns);
  if (!(yield* evaluated(equations, x, misfits, jacobian))) return null;
  const scale = new Float64Array(unknowns);
  let normal = normalOf(jacobian, misfits, scale);
  let cost = squares(misfits);
  let damping = FIRST_DAMPING;
  let growth = 2;
  for (let step = 1; step <= steps; step++) {
    const move = damped(normal, damping);
    const { linear, predicted } = gains(normal, move, damping);
    const trial = x.map((value, j) => value + move[j] / scale[j]);
    const reached = yield* evaluated(equations, trial, trialMisfits, null);
    const trialCost = reached ? squares(trialMisfits) : Number.POSITIVE_INFINITY;
    const gain = (cost - trialCost) / predicted;
    const nothingLeft = predicted <= ROUNDING * cost || predicted === 0;
    if (!(gain > 0 && (yield* evaluated(equations, trial, trialMisfits, trialJacobian)))) {
      if (nothingLeft) return { x, misfits, jacobian, cost, steps: step, converged: true };
      damping *= growth;
      growth *= 2;
      continue;
    }
    x = trial;
    [misfits, trialMisfits] = [trialMisfits, misfits];
    [jacobian, trialJacobian] = [trialJacobian, jacobian];
    cost = trialCost;
    normal = normalOf(jacobian, misfits, scale);
    const short = linear <= enough * enough;
    if (nothingLeft || (short && damping <= WEAK_DAMPING))
      return { x, misfits, jacobian, cost, steps: step, converged: true };
    damping = Math.max(damping * Math.max(1 / 3, 1 - (2 * gain - 1) ** 3), LEAST_DAMPING);
    growth = 2;
  }
  return { x, misfits, jacobian, cost, steps, converged: false };
}

/** The same, done at once. */
export function descend(equations: Equations, start: Float64Array, patience: Patience = {}): Descent | null {
  return through(descending(equations, start, patience));
}

function squares(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value * value;
  return sum;
}

/** JᵀJ, whole and row-major, and Jᵀ misfits, of scaled unknowns. */
interface Normal {
  readonly matrix: Float64Array;
  readonly gradient: Float64Array;
}

/** The normal equations, with each unknown scaled by the longest that its column has been: `scale` grows to that. */
function normalOf(jacobian: Float64Array, misfits: Float64Array, scale: Float64Array): Normal {
  const many = scale.length;
  const matrix = new Float64Array(many * many);
  const gradient = new Float64Array(many);
  misfits.forEach((misfit, i) => {
    const row = i * many;
    for (let j = 0; j < many; j++) {
      const entry = jacobian[row + j];
      if (entry === 0) continue;
      gradient[j] += entry * misfit;
      for (let k = 0; k <= j; k++) matrix[j * many + k] += entry * jacobian[row + k];
    }
  });
  for (let j = 0; j < many; j++) {
    scale[j] = Math.max(scale[j], Math.sqrt(matrix[j * many + j]));
    if (scale[j] === 0) scale[j] = 1;
  }
  for (let j = 0; j < many; j++) {
    gradient[j] /= scale[j];
    for (let k = 0; k <= j; k++) {
      const value = matrix[j * many + k] / (scale[j] * scale[k]);
      matrix[j * many + k] = value;
      matrix[k * many + j] = value;
    }
  }
  return { matrix, gradient };
}

/** The move of (JᵀJ + damping) move = −Jᵀ misfits. */
function damped({ matrix, gradient }: Normal, damping: number): Float64Array {
  const many = gradient.length;
  const weighted = Matrix.from1DArray(many, many, Array.from(matrix));
  for (let j = 0; j < many; j++) weighted.set(j, j, weighted.get(j, j) + damping);
  const solved = new CholeskyDecomposition(weighted).solve(
    Matrix.columnVector(Array.from(gradient, (value) => -value)),
  );
  return Float64Array.from(solved.to1DArray());
}

/** What a move does by the linearised equations: the square of what it alters the misfits by, and what the cost falls by. */
function gains({ gradient }: Normal, move: Float64Array, damping: number): { linear: number; predicted: number } {
  let along = 0;
  let length = 0;
  move.forEach((value, j) => {
    along -= value * gradient[j];
    length += value * value;
  });
  const linear = Math.max(along - damping * length, 0);
  return { linear, predicted: along + damping * length };
}
