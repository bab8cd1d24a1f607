import type { Front } from "../kinematics/front.ts";
import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { Wheel } from "../vehicle/car.ts";
import { steer } from "./steer.ts";

/** The search goes out in this many steps, halved this often where the wheels stop closing. */
const STEPS = 16;
const HALVINGS = 6;
/** A bracket is halved or better each second round: this many bring it below the last bit. */
const ROUNDS = 120;

/**
 * Steers that add up to less than this, rad, add up to nothing: the wheels' heights are met to 1e-11 of the car's half
 * width, and a steer changes by some hundredths of a rad over a mm of it.
 */
const NOTHING = 1e-9;

const poses = newPoses(1);

/** Both steers added up at an input, travel 0, rad; null where a side does not close. */
function steerSum(front: Front, input: number): number | null {
  solve(front, input, 0, 0, poses, 0);
  if (poses[Pose.Left + Side.Blame] !== 0 || poses[Pose.Right + Side.Blame] !== 0) return null;
  return steer(poses, Pose.Left) + steer(poses, Pose.Right);
}

/**
 * The input (mm of rack or rad of column) at travel 0 where both wheels have the same toe (their steers add up to
 * nothing), nearest to `start` and no further than `reach` from it: `start` itself, to the last bit, where they add
 * up to nothing there. Null when there is none or the wheels stop closing on the way.
 */
export function findZero(front: Front, start: number, reach: number): number | null {
  const sumAt = (input: number) => steerSum(front, input);
  const first = sumAt(start);
  if (first === null) return null;
  if (Math.abs(first) < NOTHING) return start;
  const oneWay = search(sumAt, start, first, reach / STEPS, reach);
  const other = search(sumAt, start, first, -reach / STEPS, oneWay === null ? reach : Math.abs(oneWay - start));
  return other ?? oneWay;
}

/**
 * The zero nearest to `start` one way from it, by steps of `way`; null when there is none in reach or the wheels stop
 * closing before it.
 */
function search(
  sumAt: (input: number) => number | null,
  start: number,
  startSum: number,
  way: number,
  reach: number,
): number | null {
  let step = way;
  let low = start;
  let lowSum = startSum;
  let halvings = 0;
  while (Math.abs(low + step - start) <= reach) {
    const high = low + step;
    const highSum = sumAt(high);
    if (highSum === null) {
      if (halvings++ === HALVINGS) return null;
      step /= 2;
    } else if (highSum > 0 !== lowSum > 0) {
      return closeIn(sumAt, low, lowSum, high, highSum);
    } else {
      low = high;
      lowSum = highSum;
    }
  }
  return null;
}

/** False position with the stale end's weight halved (the Illinois rule), and a bisection each third round. */
function closeIn(
  sumAt: (input: number) => number | null,
  start: number,
  startSum: number,
  end: number,
  endSum: number,
): number | null {
  let [a, fa, b, fb] = [start, startSum, end, endSum];
  for (let round = 0; round < ROUNDS && fb !== 0; round++) {
    const middle = 0.5 * (a + b);
    const secant = b - (fb * (b - a)) / (fb - fa);
    const next = round % 3 === 2 || !((secant - a) * (secant - b) < 0) ? middle : secant;
    if (next === a || next === b) break;
    const sum = sumAt(next);
    if (sum === null) return null;
    if (sum > 0 !== fb > 0) {
      a = b;
      fa = fb;
    } else {
      fa *= 0.5;
    }
    b = next;
    fb = sum;
  }
  return b;
}

/**
 * The way the road wheels turn at travel 0 as the input goes to the left from a place: by the steers `step` to each side
 * of it. Null when a side does not close there or the wheels do not turn.
 */
export function turnOfInputLeft(front: Front, from: number, step: number): Wheel | null {
  const left = steerSum(front, from + step);
  const right = steerSum(front, from - step);
  if (left === null || right === null || left === right) return null;
  return left > right ? "left" : "right";
}
