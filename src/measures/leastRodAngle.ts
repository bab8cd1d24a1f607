import { newPoses, sweepRoom } from "../kinematics/poses.ts";
import { Link, Pose, Side } from "../kinematics/slots.ts";
import { solve, solveSide } from "../kinematics/solve.ts";
import { type Blame, blameOfSide } from "./blame.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Pair, placeOf, type Span } from "./span.ts";
import { transmissionAngle } from "./tieRod.ts";

/** How closely a range is looked at: as figures are told, or as a search does, which only has to tell cars apart. */
export type Detail = "whole" | "coarse";

interface Closeness {
  /** Places a way in the sweep of input × travel. */
  readonly grid: number;
  /** Each round after it looks about the best place, half as far apart as before. */
  readonly rounds: number;
  /**
   * Halvings of the way to a place out of reach. The angle falls there by some ten degrees a step of the grid, as the root
   * of the distance that is left: 24 leave less than a hundredth of a degree.
   */
  readonly halvings: number;
}

const closeness: Readonly<Record<Detail, Closeness>> = {
  whole: { grid: 11, rounds: 6, halvings: 24 },
  coarse: { grid: 5, rounds: 2, halvings: 4 },
};

/** Places a way in each round. */
const NEAR = 3;
/** An angle below this, rad, is a dead point, and none is looked for below it: no builder can tell it from 0. */
const DEAD_POINT = 1e-4;

/** The least rod-to-arm angle of one wheel over all steering and all travel, and where. */
export interface LeastRodAngle {
  /** rad: a right angle is best, 0 is the dead point. */
  readonly angle: number;
  /** mm of rack or rad of column. */
  readonly input: number;
  /** mm. */
  readonly travel: number;
}

/** A whole sweep of input × travel: the dead points looked for, and the place that is worst out of reach. */
export interface RangeSweep {
  /** Per wheel; null when it closes nowhere in the range. */
  readonly rodAngle: Pair<LeastRodAngle | null>;
  /** The place within the range whose gap is largest; null when all of it can be reached. */
  readonly blame: Blame | null;
}

/**
 * Sweeps input × travel for the least rod-to-arm angle of each wheel.
 *
 * Where a tie rod cannot reach, it comes to its dead point on the way there, or so near it that turning the wheel
 * lowers it faster than its arm lifts it. The angle falls ever faster on that way, so that no grid tells it: the least
 * one is that on the border of what can be reached, and between any two neighbours of which the wheel stands at one
 * only, that border is closed in on.
 */
export function sweepRange(end: FrontEnd, detail: Detail = "whole"): RangeSweep {
  const how = closeness[detail];
  const inputs: Span = { from: -end.furthestInput.right, to: end.furthestInput.left, rows: how.grid };
  const travels: Span = { from: -end.wheelTravel.droop, to: end.wheelTravel.bump, rows: end.suspended ? how.grid : 1 };
  const poses = gridRoom(inputs.rows * travels.rows);
  putGrid(inputs, travels, (input, travel, at) => solve(end.front, input, travel, travel, poses, at));
  return {
    rodAngle: {
      left: leastOf({ end, side: Pose.Left, how }, inputs, travels, poses),
      right: leastOf({ end, side: Pose.Right, how }, inputs, travels, poses),
    },
    blame: widest(poses),
  };
}

const gridRoom = sweepRoom();
const onePose = newPoses(1);
const nearRoom = sweepRoom();

/** Has every place of a grid put where its pose belongs: the places of one input together. */
function putGrid(inputs: Span, travels: Span, put: (input: number, travel: number, at: number) => void): void {
  for (let i = 0; i < inputs.rows; i++) {
    const input = placeOf(inputs, i);
    for (let j = 0; j < travels.rows; j++) {
      put(input, placeOf(travels, j), (i * travels.rows + j) * Pose.Stride);
    }
  }
}

/** The place whose gap is largest, of both wheels. */
function widest(poses: Float64Array): Blame | null {
  let widest: number | null = null;
  let gap = 0;
  for (const side of [Pose.Left, Pose.Right]) {
    for (let at = side; at < poses.length; at += Pose.Stride) {
      if (poses[at + Side.Blame] === Link.None || Math.abs(poses[at + Side.Gap]) <= gap) continue;
      gap = Math.abs(poses[at + Side.Gap]);
      widest = at;
    }
  }
  return widest === null ? null : blameOfSide(poses, widest);
}

/** What one wheel's search has found so far. */
interface Search {
  readonly end: FrontEnd;
  readonly side: number;
  readonly how: Closeness;
  /** For single poses. */
  readonly pose: Float64Array;
  angle: number;
  input: number;
  travel: number;
}

/** The least angle of one wheel, from the poses of a grid on. */
function leastOf(
  of: Pick<Search, "end" | "side" | "how">,
  inputs: Span,
  travels: Span,
  poses: Float64Array,
): LeastRodAngle | null {
  const search: Search = { ...of, pose: onePose, angle: Number.POSITIVE_INFINITY, input: 0, travel: 0 };
  lookOver(search, poses, inputs.rows, travels.rows);
  if (search.angle === Number.POSITIVE_INFINITY) return null;
  let inputStep = (inputs.to - inputs.from) / (inputs.rows - 1);
  let travelStep = (travels.to - travels.from) / Math.max(travels.rows - 1, 1);
  for (let round = 0; round < of.how.rounds && search.angle > DEAD_POINT; round++) {
    inputStep *= 0.5;
    travelStep *= 0.5;
    const nearInputs = about(search.input, inputStep, inputs);
    const nearTravels = about(search.travel, travelStep, travels);
    const near = nearRoom(nearInputs.rows * nearTravels.rows);
    putGrid(nearInputs, nearTravels, (input, travel, at) => solveSide(of.end.front, of.side, input, travel, near, at));
    lookOver(search, near, nearInputs.rows, nearTravels.rows);
  }
  return { angle: search.angle, input: search.input, travel: search.travel };
}

/** A step to each side of a place, within the range. */
function about(place: number, step: number, { from, to, rows }: Span): Span {
  return rows === 1
    ? { from, to, rows }
    : { from: Math.max(place - step, from), to: Math.min(place + step, to), rows: NEAR };
}

/** Looks at all places of a grid, and at the border of what can be reached wherever it runs between two neighbours. */
function lookOver(search: Search, poses: Float64Array, rows: number, columns: number): void {
  for (let i = 0; i < rows; i++) {
    for (let j = 0; j < columns; j++) {
      const at = (i * columns + j) * Pose.Stride + search.side;
      look(search, poses, at);
      if (i > 0) lookBetween(search, poses, at, at - columns * Pose.Stride);
      if (j > 0) lookBetween(search, poses, at, at - Pose.Stride);
    }
  }
}

function look(search: Search, poses: Float64Array, at: number): void {
  if (poses[at + Side.Blame] !== Link.None) return;
  const angle = transmissionAngle(poses, at);
  if (angle >= search.angle) return;
  search.angle = angle;
  search.input = poses[at + Side.Input];
  search.travel = poses[at + Side.Travel];
}

/** Between two places of which the wheel stands at one only, halves the way from that one to where it stops. */
function lookBetween(search: Search, poses: Float64Array, one: number, other: number): void {
  const stands = poses[one + Side.Blame] === Link.None;
  if (stands === (poses[other + Side.Blame] === Link.None)) return;
  const [near, far] = stands ? [one, other] : [other, one];
  const { end, side, pose, how } = search;
  let nearInput = poses[near + Side.Input];
  let nearTravel = poses[near + Side.Travel];
  let farInput = poses[far + Side.Input];
  let farTravel = poses[far + Side.Travel];
  for (let i = 0; i < how.halvings && search.angle > DEAD_POINT; i++) {
    const input = 0.5 * (nearInput + farInput);
    const travel = 0.5 * (nearTravel + farTravel);
    solveSide(end.front, side, input, travel, pose, 0);
    if (pose[side + Side.Blame] === Link.None) {
      look(search, pose, side);
      nearInput = input;
      nearTravel = travel;
    } else {
      farInput = input;
      farTravel = travel;
    }
  }
}
