import { Side } from "../../kinematics/slots.ts";
import { sideAt } from "../../measures/points.ts";
import { steer } from "../../measures/steer.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";

/** Enough for a secant that takes four or five rounds. */
const ROUNDS = 40;
/** A wheel's turn is met to this, rad: rounding of a pose that is solved. */
const MET = 1e-13;

/**
 * How far a wheel has turned from straight ahead at an input, travel 0, to the left positive, rad; null where it does not
 * close.
 */
export function turnAt(study: Study, wheel: Wheel, input: number): number | null {
  if (study.zeroSteer === null) return null;
  const poses = study.ridePose(input);
  const at = sideAt(wheel);
  return poses[at + Side.Blame] === 0 ? steer(poses, at) - study.zeroSteer[wheel] : null;
}

/**
 * The input, mm of rack or rad of column, at which a wheel has turned so far from straight ahead, to the left positive, rad,
 * by the secant rule from straight ahead; null where the wheel does not get there.
 */
export function inputTurning(study: Study, wheel: Wheel, turn: number): number | null {
  const { zero, inputLeftTurns, inputTravel } = study;
  if (zero === null || inputLeftTurns === null) return null;
  const way = turn > 0 === (inputLeftTurns === "left") ? 1 : -1;
  const reach = Math.max(inputTravel.left, inputTravel.right);
  let [a, fa] = [zero, -turn];
  let b = zero + (way * reach) / 4;
  for (let round = 0; round < ROUNDS; round++) {
    const turned = turnAt(study, wheel, b);
    if (turned === null) {
      b = (a + b) / 2;
      continue;
    }
    const fb = turned - turn;
    if (Math.abs(fb) < MET || fb === fa) return Math.abs(fb) < 1e-9 ? b : null;
    const next = b - (fb * (b - a)) / (fb - fa);
    // A step further than the rack is long has met the dead point.
    const step = Math.max(-reach, Math.min(reach, next - b));
    [a, fa, b] = [b, fb, b + step];
  }
  return null;
}
