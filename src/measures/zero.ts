import type { Front } from "../kinematics/front.ts";
import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { Wheel } from "../vehicle/car.ts";
import { nearestZero } from "./nearestZero.ts";
import { steer } from "./steer.ts";

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
  return nearestZero((input) => steerSum(front, input), start, reach, NOTHING);
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
