import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import { type Blame, blameOf } from "./blame.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Pair, placeOf, type Span } from "./span.ts";
import { transmissionAngle } from "./tieRod.ts";

/** Places a way in the first sweep of rack × travel. */
const GRID = 21;
/** Each round after it looks at this many places a way about the best one, half as far apart as before. */
const NEAR = 5;
const ROUNDS = 4;

/** The least rod-to-arm angle of one wheel over all rack and all travel, and where. */
export interface LeastRodAngle {
  /** rad: a right angle is best, 0 is the dead point. */
  readonly angle: number;
  /** mm. */
  readonly rack: number;
  readonly travel: number;
}

/** A whole sweep of rack × travel: the dead points looked for, and the place that is worst out of reach. */
export interface RangeSweep {
  /** Per wheel; null when it closes nowhere in the range. */
  readonly rodAngle: Pair<LeastRodAngle | null>;
  /** The place within the range whose gap is largest; null when all of it can be reached. */
  readonly blame: Blame | null;
}

/**
 * Sweeps rack × travel for the least rod-to-arm angle of each wheel. The tie rod's outer eye keeps its distance from the
 * steering axis, so the angle is least where the lever arm is: the sweep only compares lever arms.
 */
export function sweepRange(end: FrontEnd): RangeSweep {
  const racks: Span = { from: -end.rackTravel.right, to: end.rackTravel.left, rows: GRID };
  const travels: Span = { from: -end.wheelTravel.droop, to: end.wheelTravel.bump, rows: GRID };
  const poses = newPoses(1);
  const least = { left: nothingYet(), right: nothingYet() };
  let gap = 0;
  let blame: Blame | null = null;
  for (let i = 0; i < GRID; i++) {
    const rack = placeOf(racks, i);
    for (let j = 0; j < GRID; j++) {
      const travel = placeOf(travels, j);
      solve(end.front, rack, travel, travel, poses, 0);
      keepLess(least.left, poses, Pose.Left, rack, travel);
      keepLess(least.right, poses, Pose.Right, rack, travel);
      const here = Math.max(Math.abs(poses[Pose.Left + Side.Gap]), Math.abs(poses[Pose.Right + Side.Gap]));
      if (here > gap) {
        gap = here;
        blame = blameOf(poses, 0);
      }
    }
  }
  refine(end, racks, travels, poses, least.left, Pose.Left);
  refine(end, racks, travels, poses, least.right, Pose.Right);
  return {
    rodAngle: { left: angleAt(end, poses, least.left, Pose.Left), right: angleAt(end, poses, least.right, Pose.Right) },
    blame,
  };
}

interface Least {
  lever: number;
  rack: number;
  travel: number;
}

function nothingYet(): Least {
  return { lever: Number.POSITIVE_INFINITY, rack: 0, travel: 0 };
}

function keepLess(least: Least, poses: Float64Array, side: number, rack: number, travel: number): void {
  const lever = Math.abs(poses[side + Side.Lever]);
  if (poses[side + Side.Blame] === 0 && lever < least.lever) {
    least.lever = lever;
    least.rack = rack;
    least.travel = travel;
  }
}

/** Looks about the best place, within the range, ever nearer. */
function refine(end: FrontEnd, racks: Span, travels: Span, poses: Float64Array, least: Least, side: number): void {
  if (least.lever === Number.POSITIVE_INFINITY) return;
  let rackStep = (racks.to - racks.from) / (GRID - 1);
  let travelStep = (travels.to - travels.from) / (GRID - 1);
  for (let round = 0; round < ROUNDS; round++) {
    rackStep *= 0.5;
    travelStep *= 0.5;
    const { rack: midRack, travel: midTravel } = least;
    for (let i = 0; i < NEAR; i++) {
      const rack = within(midRack + (i - 2) * rackStep, racks);
      for (let j = 0; j < NEAR; j++) {
        const travel = within(midTravel + (j - 2) * travelStep, travels);
        solve(end.front, rack, travel, travel, poses, 0);
        keepLess(least, poses, side, rack, travel);
      }
    }
  }
}

function within(place: number, span: Span): number {
  return Math.min(Math.max(place, span.from), span.to);
}

function angleAt(end: FrontEnd, poses: Float64Array, least: Least, side: number): LeastRodAngle | null {
  if (least.lever === Number.POSITIVE_INFINITY) return null;
  solve(end.front, least.rack, least.travel, least.travel, poses, 0);
  return { angle: transmissionAngle(poses, side), rack: least.rack, travel: least.travel };
}
