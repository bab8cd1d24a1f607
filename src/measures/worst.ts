import { newPoses, sweepRoom } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { Blame } from "./blame.ts";
import { bounceSteer } from "./bounceSteer.ts";
import { travelSpan } from "./bumpTable.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Detail, type LeastRodAngle, sweepRange } from "./leastRodAngle.ts";
import { type Pair, placeOf } from "./span.ts";
import { toeChange } from "./toeChange.ts";
import { type WorstToe, worstToeOf } from "./worstToe.ts";

/**
 * Places along the travel: a bow's peak between two of 41 is missed by less than a thousandth of it, between two of 11 by
 * less than a hundredth.
 */
const places: Readonly<Record<Detail, number>> = { whole: 41, coarse: 11 };

/** The largest bounce steer over the whole travel, wheels straight ahead. */
export interface WorstBounce {
  /** Signed, rad, positive to the left. */
  readonly bounceSteer: number;
  /** mm, bump positive. */
  readonly travel: number;
}

/** The worst there is over the whole of the steering's and the wheels' travel; null where nothing closes. */
export interface Worst {
  /** Over steering and travel. */
  readonly rodAngle: Pair<LeastRodAngle | null>;
  /** Straight ahead, over travel; null without suspension, as bounce. */
  readonly toe: Pair<WorstToe | null>;
  readonly bounce: WorstBounce | null;
  /** The place within steering and travel that is furthest out of reach; null when all can be reached. */
  readonly blame: Blame | null;
}

/** The worst values of a front end over its whole range. */
export function worstOf(end: FrontEnd, detail: Detail = "whole"): Worst {
  const { rodAngle, blame } = sweepRange(end, detail);
  return { rodAngle, ...(end.suspended ? worstOfTravel(end, detail) : UNSUSPENDED), blame };
}

export type WorstOfTravel = Pick<Worst, "toe" | "bounce">;

/** What of a front end the worst over its travel is worked out from. */
type Travelled = Pick<FrontEnd, "front" | "zero" | "straightAhead" | "wheelTravel" | "tireRadius">;

const UNSUSPENDED: WorstOfTravel = { toe: { left: null, right: null }, bounce: null };

const travelRoom = sweepRoom();
const ride = newPoses(1);

/** The worst over the travel alone, wheels straight ahead, of a front end with suspension. */
export function worstOfTravel(end: Travelled, detail: Detail): WorstOfTravel {
  const rows = places[detail];
  const input = end.zero ?? end.straightAhead;
  solve(end.front, input, 0, 0, ride, 0);
  const poses = travelRoom(rows);
  const span = { ...travelSpan(end), rows };
  for (let i = 0; i < rows; i++) {
    const travel = placeOf(span, i);
    solve(end.front, input, travel, travel, poses, i * Pose.Stride);
  }
  return {
    toe: {
      left: toeOf(poses, ride, Pose.Left, end.tireRadius),
      right: toeOf(poses, ride, Pose.Right, end.tireRadius),
    },
    bounce: bounceOf(poses, ride),
  };
}

function toeOf(poses: Float64Array, ride: Float64Array, side: number, tireRadius: number): WorstToe | null {
  if (ride[side + Side.Blame] !== 0) return null;
  const rows = poses.length / Pose.Stride;
  const travels = new Float64Array(rows);
  const changes = new Float64Array(rows);
  let count = 0;
  for (let at = side; at < poses.length; at += Pose.Stride) {
    if (poses[at + Side.Blame] !== 0) continue;
    travels[count] = poses[at + Side.Travel];
    changes[count] = toeChange(poses, at, ride, side);
    count++;
  }
  return worstToeOf(travels, changes, count, tireRadius);
}

function bounceOf(poses: Float64Array, ride: Float64Array): WorstBounce | null {
  if (!closes(ride, 0)) return null;
  let worst: WorstBounce | null = null;
  for (let at = 0; at < poses.length; at += Pose.Stride) {
    if (!closes(poses, at)) continue;
    const here = bounceSteer(poses, at, ride, 0);
    if (worst === null || Math.abs(here) > Math.abs(worst.bounceSteer)) {
      worst = { bounceSteer: here, travel: poses[at + Side.Travel] };
    }
  }
  return worst;
}

function closes(poses: Float64Array, at: number): boolean {
  return poses[at + Pose.Left + Side.Blame] === 0 && poses[at + Pose.Right + Side.Blame] === 0;
}
