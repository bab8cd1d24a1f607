/** A function of one number that has no value in places. */
type Scalar = (at: number) => number | null;

/** The search goes out in this many steps, halved this often where the function has no value. */
const STEPS = 16;
const HALVINGS = 6;
/** A bracket is halved or better each second round: this many bring it below the last bit. */
const ROUNDS = 120;

/**
 * The place nearest to `start` and no further than `reach` from it where a function is nothing: `start` itself, to the last
 * bit, where it is less than `nothing` there. Null when there is none, or none before the function stops having a value.
 */
export function nearestZero(of: Scalar, start: number, reach: number, nothing: number): number | null {
  const first = of(start);
  if (first === null) return null;
  if (Math.abs(first) < nothing) return start;
  const up = search(of, start, first, reach / STEPS, reach, reach);
  const down = search(of, start, first, -reach / STEPS, reach, up === null ? reach : Math.abs(up - start));
  if (up === null || down === null) return up ?? down;
  return Math.abs(down - start) < Math.abs(up - start) ? down : up;
}

/**
 * The zero nearest to `start` one way from it, by steps of `way`; null when there is none in reach, or the function
 * has no value before it. Not looked for once the steps are as far from `start` as `enough`.
 */
function search(
  of: Scalar,
  start: number,
  startValue: number,
  way: number,
  reach: number,
  enough: number,
): number | null {
  const end = start + Math.sign(way) * reach;
  let step = way;
  let low = start;
  let lowValue = startValue;
  let halvings = 0;
  while (low !== end && Math.abs(low - start) < enough) {
    // Steps that are added up end a last bit off the reach: the last one ends on it.
    const high = Math.abs(low + step - start) < reach * (1 - 1e-12) ? low + step : end;
    const highValue = of(high);
    if (highValue === null) {
      if (halvings++ === HALVINGS) return null;
      step /= 2;
    } else if (highValue * lowValue <= 0) {
      return closeIn(of, low, lowValue, high, highValue);
    } else {
      low = high;
      lowValue = highValue;
    }
  }
  return null;
}

/** False position with the stale end's weight halved (the Illinois rule), and a bisection each third round. */
function closeIn(of: Scalar, start: number, startValue: number, end: number, endValue: number): number | null {
  let [a, fa, b, fb] = [start, startValue, end, endValue];
  for (let round = 0; round < ROUNDS && fb !== 0; round++) {
    const middle = 0.5 * (a + b);
    const secant = b - (fb * (b - a)) / (fb - fa);
    const next = round % 3 === 2 || !((secant - a) * (secant - b) < 0) ? middle : secant;
    if (next === a || next === b) break;
    const value = of(next);
    if (value === null) return null;
    if (value > 0 !== fb > 0) {
      a = b;
      fa = fb;
    } else {
      fa *= 0.5;
    }
    b = next;
    fb = value;
  }
  return b;
}
