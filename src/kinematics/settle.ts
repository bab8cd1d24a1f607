import type { Front } from "./front.ts";
import { Corner, Work } from "./slots.ts";
import { turnUpright } from "./upright.ts";

/** One march step from the drawn pose, rad; and the farthest the arm is ever turned from it. */
const STEP = Math.PI / 180;
const FARTHEST = (150 * Math.PI) / 180;
/** Where the front does not stand as drawn, how far about a place is looked for where it does, and in what strides, rad. */
const NEAR = Math.PI / 3;
const STRIDE = 2 * STEP;
/** Halvings of a step or a bracket: 60 of them bring a degree below the last bit of an angle. */
const HALVINGS = 60;

/** Evaluates one corner at t = tan(θ/2): everything in its scratch, the eye already there. */
export function evaluate(front: Front, corner: number, at: number, t: number): void {
  const { constants, work } = front;
  work[at + Work.HalfAngle] = t;
  front.carry(constants, corner, t, work, at);
  if (front.axisTurnsInUpright) turnUpright(constants, corner, work, at + Work.Upright, work, at);
  else turnUpright(constants, corner, constants, corner + Corner.Upright, work, at);
}

/** Newton steps before the slow way is taken; two evaluations are the rule from a fitted start. */
const NEWTON_STEPS = 8;

/**
 * The quick way to the arm's angle: Newton on the wheel's height in t, from a start that is trusted to `stray`. True
 * when it has come within the front's tolerance with every link met and the height still rising as drawn; else the
 * scratch is of no use and the slow way must be taken.
 */
export function approach(
  front: Front,
  corner: number,
  at: number,
  start: number,
  stray: number,
  target: number,
): boolean {
  const c = front.constants;
  const work = front.work;
  const tolerance = c[corner + Corner.Tolerance];
  let t = start;
  for (let i = 0; i < NEWTON_STEPS; i++) {
    evaluate(front, corner, at, t);
    const miss = work[at + Work.Height] - target;
    const rate = work[at + Work.HeightRate];
    if (miss <= tolerance && miss >= -tolerance) return stands(front, corner, at);
    t -= (miss * (1 + t * t)) / (2 * rate);
    const strayed = t - start;
    if (!(strayed <= stray && strayed >= -stray)) return false;
  }
  return false;
}

/**
 * The slow, sure way to the arm's angle. From the drawn place, or from the nearest at which the front stands, the arm is
 * turned toward the asked height, as long as every link is met and the wheel rises as drawn, until the height is passed;
 * then the place is closed in on. Where the links give out first, they count as brought as near as they go and the arm
 * is turned on, so that the link to blame is the one that is short where the wheel would stand, by what it is short
 * there. Leaves the scratch at the place it ends in.
 *
 * @param target height of the wheel centre, mm
 * @returns t = tan(θ/2) at the place found, or at the one to blame
 */
export function settle(front: Front, corner: number, at: number, target: number): number {
  const work = front.work;
  const rise = front.constants[corner + Corner.Rise];
  const missAt = (angle: number): number => {
    evaluate(front, corner, at, Math.tan(0.5 * angle));
    return work[at + Work.Height] - target;
  };
  const standsAt = (angle: number): boolean => {
    missAt(angle);
    return stands(front, corner, at);
  };
  const closesAt = (angle: number): boolean => {
    missAt(angle);
    return work[at + Work.UprightGap] === 0 && work[at + Work.TieRodGap] === 0;
  };
  const end = (angle: number): number => {
    missAt(angle);
    return Math.tan(0.5 * angle);
  };
  /** With a link that gives out brought as near as it goes; back at `instead` where that leads nowhere, or past the dead point. */
  const blame = (from: number, instead: number): number => {
    const there = reachAnyhow(missAt, from, rise);
    return there === from || closesAt(there) ? end(instead) : end(there);
  };

  const start = nearestStanding(standsAt);
  if (start === null) return blame(0, 0);
  const startMiss = missAt(start);
  const way = startMiss < 0 ? rise : -rise;
  let here = start;
  let miss = startMiss;
  while (Math.abs(here) < FARTHEST) {
    const there = here + way * STEP;
    const [last, beyond] = standsAt(there) ? [there, null] : edge(standsAt, here, there);
    const next = missAt(last);
    if (startMiss < 0 ? next >= 0 : next <= 0) return end(closeIn(missAt, here, miss, last, next));
    here = last;
    miss = next;
    if (beyond !== null) return closesAt(beyond) ? end(last) : blame(beyond, last);
  }
  return end(here);
}

/** What a corner's scratch holds after an evaluation: every link met, and the wheel rising with its arm as drawn. */
function stands(front: Front, corner: number, at: number): boolean {
  const work = front.work;
  return (
    work[at + Work.UprightGap] === 0 &&
    work[at + Work.TieRodGap] === 0 &&
    work[at + Work.HeightRate] * front.constants[corner + Corner.Rise] > 0
  );
}

/** The angle nearest to the drawn one at which the front stands, to a stride; null where there is none near. */
function nearestStanding(standsAt: (angle: number) => boolean): number | null {
  for (let angle = 0; angle < NEAR; angle += STRIDE) {
    if (standsAt(angle)) return angle;
    if (standsAt(-angle)) return -angle;
  }
  return null;
}

/** The last angle, from one that stands toward one that does not, at which it still stands, and the next that does not. */
function edge(standsAt: (angle: number) => boolean, from: number, to: number): readonly [number, number] {
  let last = from;
  let beyond = to;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = 0.5 * (last + beyond);
    if (middle === last || middle === beyond) break;
    if (standsAt(middle)) last = middle;
    else beyond = middle;
  }
  return [last, beyond];
}

/** From an angle toward the asked height whatever the links do: where it is met, or where the wheel turns back. */
function reachAnyhow(missAt: (angle: number) => number, from: number, rise: number): number {
  let here = from;
  let miss = missAt(from);
  const upward = miss < 0;
  const way = upward ? rise : -rise;
  while (Math.abs(here) < FARTHEST) {
    const there = here + way * STEP;
    const next = missAt(there);
    if (upward ? next >= 0 : next <= 0) return closeIn(missAt, here, miss, there, next);
    if (upward ? next <= miss : next >= miss) break;
    here = there;
    miss = next;
  }
  return here;
}

/** Bisection, sped up by the secant's place where that falls well inside. Ends where an angle has no finer bits. */
function closeIn(missAt: (angle: number) => number, a: number, missA: number, b: number, missB: number): number {
  let low = a;
  let lowMiss = missA;
  let high = b;
  let highMiss = missB;
  let best = Math.abs(lowMiss) < Math.abs(highMiss) ? low : high;
  let least = Math.min(Math.abs(lowMiss), Math.abs(highMiss));
  for (let i = 0; i < 2 * HALVINGS && least > 0; i++) {
    const secant = low - (lowMiss * (high - low)) / (highMiss - lowMiss);
    const middle = 0.5 * (low + high);
    const guess = i % 3 === 2 ? middle : secant;
    const inside = (guess - low) * (guess - high) < 0 ? guess : middle;
    if (inside === low || inside === high) break;
    const miss = missAt(inside);
    if (Math.abs(miss) < least) {
      best = inside;
      least = Math.abs(miss);
    }
    if (miss > 0 === highMiss > 0) {
      high = inside;
      highMiss = miss;
    } else {
      low = inside;
      lowMiss = miss;
    }
  }
  return best;
}
