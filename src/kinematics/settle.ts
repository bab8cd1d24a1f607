import type { Front, ReadyCorner } from "./front.ts";
import { Corner, Work } from "./slots.ts";
import { turnRates, turnUpright } from "./upright.ts";

/**
 * Which places count as poses. At an input the eyes stand where the mechanism puts them, and the corner has one thing
 * left free: the angle of its arm. It *stands* at an angle where every link reaches, each on the side that it is drawn
 * on, and the wheel rises with its arm as drawn. The angles at which it stands make intervals, and all along one the
 * wheel rises. From the interval that holds the drawn angle, or, where there is none, from the nearest, they are taken in
 * turn toward the asked height, until one holds it: that is the pose. Where the height lies before the first or is
 * passed between two, the side does not close. A pose behind a gap counts: the wheel gets there by way of another input.
 * Nothing depends on the way.
 *
 * How fine this is told: intervals are looked for as far as NEAR. Where the drawn angle does not stand, the nearest is
 * looked for in strides, so that one that is at least a STRIDE wide is not missed, and of two only those whose distances
 * differ by less than a STRIDE may be taken for each other. From there the march goes by a STEP: no interval that is a
 * STEP wide is missed, and no gap that is a STEP wide is taken for part of an interval.
 */

/** One march step from the drawn pose, rad; and the farthest the arm is ever turned from it. */
const STEP = Math.PI / 180;
const FARTHEST = (150 * Math.PI) / 180;
/** How far about the drawn angle places are looked for where the front stands; and in what strides, where it does not as drawn, rad. */
const NEAR = Math.PI / 3;
const STRIDE = 2 * STEP;
/** NEAR as a t = tan(θ/2): a place farther off is the slow way's to find, since the quick one does not ask by which interval it came there. */
export const NEAR_HALF = Math.tan(0.5 * NEAR);
/** Halvings of a step or a bracket: 60 of them bring a degree below the last bit of an angle. */
const HALVINGS = 60;

/** Places one corner at t = tan(θ/2), the eye already there: all of its scratch but the rates. */
export function place({ carry }: Front, corner: ReadyCorner, t: number): void {
  corner.work[Work.HalfAngle] = t;
  carry.place(corner.linkage, t, corner.work);
  turnUpright(corner);
}

/** The rates of a corner at the place where it stands. */
function rates({ carry }: Front, corner: ReadyCorner): void {
  carry.rates(corner.linkage, corner.work);
  turnRates(corner);
}

/** Everything in the scratch of one corner at t = tan(θ/2), the eye already there. */
export function evaluate(front: Front, corner: ReadyCorner, t: number): void {
  place(front, corner, t);
  rates(front, corner);
}

/** Steps before the slow way is taken; two places are the rule from a fitted start. */
const STEPS = 8;

/**
 * The quick way to the arm's angle: the wheel's height by secants, from the t and the dt per mm of height that the
 * scratch holds (Work.HalfAngle and PerHeight), trusted to `stray`. True when it has come within the front's tolerance
 * with every link met and the height still rising as drawn; else the scratch is of no use and the slow way must be taken.
 */
export function approach(front: Front, corner: ReadyCorner, stray: number, target: number): boolean {
  const work = corner.work;
  const tolerance = corner.constants[Corner.Tolerance];
  const start = work[Work.HalfAngle];
  let perHeight = work[Work.PerHeight];
  let t = start;
  let lastMiss = 0;
  let step = 0;
  for (let i = 0; i < STEPS; i++) {
    place(front, corner, t);
    const miss = work[Work.Height] - target;
    if (miss <= tolerance && miss >= -tolerance) return stands(front, corner);
    if (i > 0) perHeight = step / (miss - lastMiss);
    step = -miss * perHeight;
    lastMiss = miss;
    t += step;
    const strayed = t - start;
    if (!(strayed <= stray && strayed >= -stray)) return false;
  }
  return false;
}

/**
 * The slow, sure way to the arm's angle: the rule above, step by step. Where the height is not met, the gap at which the
 * wheel is nearest to it is to blame: the links count as brought as near as they go and the arm is turned on, so that the
 * link to blame is the one that is short where the wheel would stand, by what it is short there. Leaves the scratch at
 * the place it ends in.
 *
 * @param target height of the wheel centre, mm
 * @returns t = tan(θ/2) at the place found, or at the one to blame
 */
export function settle(front: Front, corner: ReadyCorner, target: number): number {
  const work = corner.work;
  const rise = corner.constants[Corner.Rise];
  const missAt = (angle: number): number => {
    place(front, corner, Math.tan(0.5 * angle));
    return work[Work.Height] - target;
  };
  const standsAt = (angle: number): boolean => {
    place(front, corner, Math.tan(0.5 * angle));
    return stands(front, corner);
  };
  const closesAt = (angle: number): boolean => {
    missAt(angle);
    return work[Work.UprightGap] === 0 && work[Work.TieRodGap] === 0;
  };
  const end = (angle: number): number => {
    const t = Math.tan(0.5 * angle);
    evaluate(front, corner, t);
    return t;
  };
  /** With a link that gives out brought as near as it goes; back at `instead` where that leads nowhere, or past the dead point. */
  const blame = (from: number, instead: number): number => {
    const there = reachAnyhow(missAt, from, rise);
    return there === from || closesAt(there) ? end(instead) : end(there);
  };

  const start = nearestStanding(standsAt);
  if (start === null) return blame(0, 0);
  const startMiss = missAt(start);
  const upward = startMiss < 0;
  const way = upward ? rise : -rise;
  let here = start;
  let miss = startMiss;
  let stop: readonly [number, number] | null = null;
  let nearestMiss = startMiss;
  while (Math.abs(here) < FARTHEST) {
    const there = here + way * STEP;
    const [last, beyond] = standsAt(there) ? [there, null] : edge(standsAt, here, there);
    const next = missAt(last);
    if (upward ? next >= 0 : next <= 0) return end(closeIn(missAt, here, miss, last, next));
    here = last;
    miss = next;
    if (beyond === null) continue;
    if (stop === null || (upward ? next > nearestMiss : next < nearestMiss)) {
      stop = [last, beyond];
      nearestMiss = next;
    }
    const again = nextStanding(standsAt, beyond, way);
    if (again === null) break;
    here = again;
    miss = missAt(here);
    if (upward ? miss > 0 : miss < 0) break;
  }
  if (stop === null) return end(here);
  const [last, beyond] = stop;
  return closesAt(beyond) ? end(last) : blame(beyond, last);
}

/**
 * The arm's angle for a height whatever the links do: that of `settle` where no link gives out on the way, and where one does
 * what runs on smoothly from there, for a start to be fitted through.
 *
 * @param target height of the wheel centre, mm
 * @returns t = tan(θ/2)
 */
export function reach(front: Front, corner: ReadyCorner, target: number): number {
  const missAt = (angle: number): number => {
    place(front, corner, Math.tan(0.5 * angle));
    return corner.work[Work.Height] - target;
  };
  const t = Math.tan(0.5 * reachAnyhow(missAt, 0, corner.constants[Corner.Rise]));
  evaluate(front, corner, t);
  return t;
}

/** Whether a placed corner has every link met and its wheel rising with its arm as drawn. Where it does, its rates are written. */
function stands(front: Front, corner: ReadyCorner): boolean {
  const { work, constants } = corner;
  if (work[Work.UprightGap] !== 0 || work[Work.TieRodGap] !== 0) return false;
  rates(front, corner);
  return work[Work.HeightRate] * constants[Corner.Rise] > 0;
}

/** The angle nearest to the drawn one at which the front stands, to a stride; null where there is none near. */
function nearestStanding(standsAt: (angle: number) => boolean): number | null {
  for (let angle = 0; angle < NEAR; angle += STRIDE) {
    if (standsAt(angle)) return angle;
    if (standsAt(-angle)) return -angle;
  }
  return null;
}

/** Beyond a gap, the first angle at which the front stands again; null where it does not as far as one is looked for. */
function nextStanding(standsAt: (angle: number) => boolean, gap: number, way: number): number | null {
  let before = gap;
  while (Math.abs(before) < NEAR) {
    const angle = before + way * STEP;
    if (standsAt(angle)) return edge(standsAt, angle, before)[0];
    before = angle;
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
