import { Corner, Work } from "./slots.ts";

/**
 * Where a search for the arm's angle starts: a polynomial in (travel, the corner's own input) for t = tan(θ/2), fitted
 * over the range that compile was given. Both are scaled to −1…1 over that range, so that the fit of a scaled car is
 * the same polynomial.
 */

/** Degrees in travel and in input. They make the start good to about 1e-6, and its rate to 1e-4, so that two places are enough. */
const TRAVEL_DEGREE = 5;
const INPUT_DEGREE = 6;
const INPUT_TERMS = INPUT_DEGREE + 1;

/** Beyond this share of the fitted range the polynomial is not to be trusted. */
export const FITTED = 1.02;

/**
 * The fitted start at a scaled travel z and scaled input s, both within ±FITTED, and its rate per mm of height: into a
 * corner's scratch.
 */
export function putStart(c: Float64Array, z: number, s: number, work: Float64Array): void {
  let at = Corner.StartTerms + TRAVEL_DEGREE * INPUT_TERMS;
  const s2 = s * s;
  let t = 0;
  let perZ = 0;
  for (let i = TRAVEL_DEGREE; i >= 0; i--) {
    // Even and odd powers apart: two short chains run side by side.
    const even = c[at] + s2 * (c[at + 2] + s2 * (c[at + 4] + s2 * c[at + 6]));
    const odd = c[at + 1] + s2 * (c[at + 3] + s2 * c[at + 5]);
    perZ = perZ * z + t;
    t = t * z + (even + s * odd);
    at -= INPUT_TERMS;
  }
  work[Work.HalfAngle] = t;
  work[Work.PerHeight] = perZ * c[Corner.Start + 1];
}

const zs = chebyshev(TRAVEL_DEGREE + 1);
const ss = chebyshev(INPUT_TERMS);

const throughZs = throughUnits(zs);
const throughSs = throughUnits(ss);
const values = new Float64Array((TRAVEL_DEGREE + 1) * INPUT_TERMS);

/**
 * Fits the start through the values of t at the Chebyshev places of both variables, and writes its coefficients.
 *
 * @param settled gives t at a scaled travel and scaled input, each in −1…1
 */
export function fitStart(c: Float64Array, settled: (z: number, s: number) => number): void {
  for (let i = 0; i <= TRAVEL_DEGREE; i++) {
    for (let j = 0; j < INPUT_TERMS; j++) values[i * INPUT_TERMS + j] = settled(zs[i], ss[j]);
  }
  c.fill(0, Corner.StartTerms, Corner.StartTerms + values.length);
  for (let i = 0; i <= TRAVEL_DEGREE; i++) {
    for (let j = 0; j < INPUT_TERMS; j++) {
      let alongInput = 0;
      for (let k = 0; k < INPUT_TERMS; k++) alongInput += throughSs[k][j] * values[i * INPUT_TERMS + k];
      for (let k = 0; k <= TRAVEL_DEGREE; k++)
        c[Corner.StartTerms + k * INPUT_TERMS + j] += throughZs[i][k] * alongInput;
    }
  }
}

/** For each place, the polynomial that is 1 there and 0 at the others: what a value there adds to each coefficient. */
function throughUnits(xs: readonly number[]): readonly (readonly number[])[] {
  return xs.map((_, at) =>
    monomials(
      xs,
      xs.map((_, i) => (i === at ? 1 : 0)),
    ),
  );
}

function chebyshev(count: number): number[] {
  return Array.from({ length: count }, (_, i) => Math.cos((Math.PI * (i + 0.5)) / count));
}

/** Coefficients, lowest power first, of the polynomial through the points (Newton's divided differences). */
function monomials(xs: readonly number[], ys: readonly number[]): number[] {
  const n = xs.length;
  const divided = [...ys];
  for (let k = 1; k < n; k++)
    for (let i = n - 1; i >= k; i--) divided[i] = (divided[i] - divided[i - 1]) / (xs[i] - xs[i - k]);
  const terms = new Array<number>(n).fill(0);
  for (let k = n - 1; k >= 0; k--) {
    for (let i = n - 1; i > 0; i--) terms[i] = terms[i - 1] - xs[k] * terms[i];
    terms[0] = divided[k] - xs[k] * terms[0];
  }
  return terms;
}
