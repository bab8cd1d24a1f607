import { newPoses } from "../kinematics/poses.ts";
import { Link, Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import { type Blame, blameOfSide } from "./blame.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Pair, placeOf, type Span } from "./span.ts";
import { transmissionAngle } from "./tieRod.ts";

/** Places a way in the first sweep of input × travel; and in a second one, where the first finds places out of reach. */
const GRID = 11;
const FINE_GRID = 21;
/** Each round after it looks at the best place and its neighbours, half as far apart as before. */
const ROUNDS = 6;
/** Halvings of the way to a dead point: they bring a foot of rack or a turn of column below the last bit that matters. */
const HALVINGS = 40;

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
 * lowers it faster than its arm lifts it: the least angle is then the one that is left where it stops.
 */
export function sweepRange(end: FrontEnd): RangeSweep {
  const coarse = sweep(end, GRID);
  return coarse.blame === null ? coarse : sweep(end, FINE_GRID);
}

function sweep(end: FrontEnd, rows: number): RangeSweep {
  const inputs: Span = { from: -end.furthestInput.right, to: end.furthestInput.left, rows };
  const travels: Span = { from: -end.wheelTravel.droop, to: end.wheelTravel.bump, rows: end.suspended ? rows : 1 };
  const poses = newPoses(1);
  const left = searchOf(Pose.Left);
  const right = searchOf(Pose.Right);
  for (let i = 0; i < rows; i++) {
    const input = placeOf(inputs, i);
    for (let j = 0; j < travels.rows; j++) {
      const travel = placeOf(travels, j);
      solve(end.front, input, travel, travel, poses, 0);
      look(left, poses);
      look(right, poses);
    }
  }
  return {
    rodAngle: {
      left: finish(end, inputs, travels, poses, left),
      right: finish(end, inputs, travels, poses, right),
    },
    blame: widest(left, right),
  };
}

/** What one wheel's sweep has found so far. */
interface Search {
  readonly side: number;
  angle: number;
  input: number;
  travel: number;
  /** The largest gap, and its blame. */
  gap: number;
  blame: Blame | null;
  /** A place that the tie rod does not reach. */
  past: { readonly input: number; readonly travel: number } | null;
}

function searchOf(side: number): Search {
  return { side, angle: Number.POSITIVE_INFINITY, input: 0, travel: 0, gap: 0, blame: null, past: null };
}

function look(search: Search, poses: Float64Array): void {
  const at = search.side;
  const link = poses[at + Side.Blame];
  if (link === Link.None) {
    const angle = transmissionAngle(poses, at);
    if (angle >= search.angle) return;
    search.angle = angle;
    search.input = poses[at + Side.Input];
    search.travel = poses[at + Side.Travel];
    return;
  }
  const gap = Math.abs(poses[at + Side.Gap]);
  if (gap > search.gap) {
    search.gap = gap;
    search.blame = blameOfSide(poses, at);
  }
  if (link === Link.TieRod && search.past === null) {
    search.past = { input: poses[at + Side.Input], travel: poses[at + Side.Travel] };
  }
}

function widest(left: Search, right: Search): Blame | null {
  return right.gap > left.gap ? right.blame : left.blame;
}

/** Closes in on the least angle of one wheel, and reads it. */
function finish(end: FrontEnd, inputs: Span, travels: Span, poses: Float64Array, search: Search): LeastRodAngle | null {
  if (search.angle === Number.POSITIVE_INFINITY) return null;
  if (search.past === null) refine(end, inputs, travels, poses, search);
  else approach(end, poses, search, search.past);
  return { angle: search.angle, input: search.input, travel: search.travel };
}

/** Looks about the best place, within the range, ever nearer. */
function refine(end: FrontEnd, inputs: Span, travels: Span, poses: Float64Array, search: Search): void {
  let inputStep = (inputs.to - inputs.from) / (inputs.rows - 1);
  let travelStep = (travels.to - travels.from) / (inputs.rows - 1);
  for (let round = 0; round < ROUNDS; round++) {
    inputStep *= 0.5;
    travelStep *= 0.5;
    const { input: midInput, travel: midTravel } = search;
    for (let i = -1; i <= 1; i++) {
      const input = within(midInput + i * inputStep, inputs);
      for (let j = -1; j <= 1; j++) {
        const travel = within(midTravel + j * travelStep, travels);
        solve(end.front, input, travel, travel, poses, 0);
        look(search, poses);
      }
    }
  }
}

function within(place: number, span: Span): number {
  return Math.min(Math.max(place, span.from), span.to);
}

/** Halves the way from the best place toward one that the tie rod does not reach: the wheel stops between them. */
function approach(end: FrontEnd, poses: Float64Array, search: Search, past: { input: number; travel: number }): void {
  let { input: nearInput, travel: nearTravel } = search;
  let { input: farInput, travel: farTravel } = past;
  for (let i = 0; i < HALVINGS; i++) {
    const input = 0.5 * (nearInput + farInput);
    const travel = 0.5 * (nearTravel + farTravel);
    solve(end.front, input, travel, travel, poses, 0);
    if (poses[search.side + Side.Blame] === Link.None) {
      nearInput = input;
      nearTravel = travel;
      look(search, poses);
    } else {
      farInput = input;
      farTravel = travel;
    }
  }
}
