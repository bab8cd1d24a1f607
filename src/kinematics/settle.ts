import type { Front } from "./front.ts";
import { Corner, Work } from "./slots.ts";
import { turnUpright } from "./upright.ts";

/** One march step from the drawn pose, rad; and the farthest the arm is ever turned from it. */
const STEP = Math.PI / 180;
const FARTHEST = (150 * Math.PI) / 180;
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
    if (miss <= tolerance && miss >= -tolerance)
      return rate * c[corner + Corner.Rise] > 0 && work[at + Work.UprightGap] === 0 && work[at + Work.TieRodGap] === 0;
    t -= (miss * (1 + t * t)) / (2 * rate);
    const strayed = t - start;
    if (!(strayed <= stray && strayed >= -stray)) return false;
  }
  return false;
}

/**
 * The slow, sure way to the arm's angle: from the drawn pose the arm is turned toward the asked height until the height
 * is passed, then the place is closed in on. Where links are too short they count as brought as near as they go, so
 * that the height is defined throughout and the blame falls on a link with a length to show. Leaves the scratch at the
 * place it ends in.
 *
 * @param target height of the wheel centre, mm
 * @returns t = tan(θ/2) at the place found, or nearest to it
 */
export function settle(front: Front, corner: number, at: number, target: number): number {
  const work = front.work;
  const heightAt = (angle: number): number => {
    evaluate(front, corner, at, Math.tan(0.5 * angle));
    return work[at + Work.Height] - target;
  };
  let here = 0;
  let miss = heightAt(0);
  if (miss === 0) return 0;
  const upward = miss < 0;
  const way = (upward ? 1 : -1) * front.constants[corner + Corner.Rise];
  let step = STEP;
  let halvings = 0;
  while (halvings < HALVINGS && Math.abs(here) < FARTHEST) {
    const there = here + way * step;
    const next = heightAt(there);
    if (upward ? next >= 0 : next <= 0) return closeIn(heightAt, here, miss, there, next);
    if (upward ? next > miss : next < miss) {
      here = there;
      miss = next;
    } else {
      // The wheel went the wrong way: it turns back within this step.
      step *= 0.5;
      halvings++;
    }
  }
  heightAt(here);
  return Math.tan(0.5 * here);
}

/** Bisection, sped up by the secant's place where that falls well inside. Ends where an angle has no finer bits. */
function closeIn(heightAt: (angle: number) => number, a: number, missA: number, b: number, missB: number): number {
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
    const miss = heightAt(inside);
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
  heightAt(best);
  return Math.tan(0.5 * best);
}
