import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import { type Blame, blameOf } from "./blame.ts";
import { bounceSteer } from "./bounceSteer.ts";
import { bumpSteer } from "./bumpSteer.ts";
import { camber } from "./camber.ts";
import { caster } from "./caster.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Pair, placeOf, type Span } from "./span.ts";
import { ROWS } from "./steerTable.ts";
import { toe } from "./toe.ts";
import { toeChange } from "./toeChange.ts";
import { trackChange } from "./trackChange.ts";

/** One wheel of a row; all null where this side does not close. Angles rad, lengths mm. */
export interface BumpSide {
  /** Toe-in positive. */
  readonly toe: number | null;
  /** From travel 0 at the same input; null too where that place does not close. */
  readonly toeChange: number | null;
  /** Top outward positive. */
  readonly camber: number | null;
  /** Top rearward positive. */
  readonly caster: number | null;
  /** Outboard displacement of the contact point from travel 0 at the same input. */
  readonly trackChange: number | null;
}

export interface BumpRow {
  /** Of both wheel centres, mm, bump positive. */
  readonly travel: number;
  readonly blame: Blame | null;
  readonly left: BumpSide;
  readonly right: BumpSide;
  /** Mean of both wheels' change of steer from travel 0, positive to the left. */
  readonly bounceSteer: number | null;
}

export interface BumpTable {
  /** mm of rack or rad of column. */
  readonly input: number;
  readonly rows: readonly BumpRow[];
  readonly summary: {
    /** d(toe)/d(travel) at travel 0, rad/mm. */
    readonly bumpSteer: Pair<number | null>;
    /** The largest size of toeChange of rows and sides, rad; null when there is none. */
    readonly worstToeChange: number | null;
    /** The bounceSteer of largest size among the rows, signed, rad. */
    readonly worstBounceSteer: number | null;
  };
}

/** Full droop to full bump. */
export function travelSpan(end: Pick<FrontEnd, "wheelTravel">): Span {
  return { from: -end.wheelTravel.droop, to: end.wheelTravel.bump, rows: ROWS };
}

/** The table of both wheels going up and down together at an input. Meaningless without suspension: ask Study. */
export function bumpTable(end: FrontEnd, input: number, span: Span): BumpTable {
  const ride = newPoses(1);
  solve(end.front, input, 0, 0, ride, 0);
  const poses = newPoses(1);
  const rows: BumpRow[] = [];
  for (let i = 0; i < span.rows; i++) {
    const travel = placeOf(span, i);
    solve(end.front, input, travel, travel, poses, 0);
    const blame = blameOf(poses, 0);
    rows.push({
      travel,
      blame,
      left: bumpSide(end, poses, ride, Pose.Left),
      right: bumpSide(end, poses, ride, Pose.Right),
      bounceSteer: blame === null && blameOf(ride, 0) === null ? bounceSteer(poses, 0, ride, 0) : null,
    });
  }
  return {
    input,
    rows,
    summary: {
      bumpSteer: { left: bumpSteerOrNull(ride, Pose.Left), right: bumpSteerOrNull(ride, Pose.Right) },
      worstToeChange: size(largest(rows.flatMap((row) => [row.left.toeChange, row.right.toeChange]))),
      worstBounceSteer: largest(rows.map((row) => row.bounceSteer)),
    },
  };
}

const NOWHERE: BumpSide = { toe: null, toeChange: null, camber: null, caster: null, trackChange: null };

function bumpSide(end: FrontEnd, poses: Float64Array, ride: Float64Array, side: number): BumpSide {
  if (poses[side + Side.Blame] !== 0) return NOWHERE;
  const fromRide = ride[side + Side.Blame] === 0;
  return {
    toe: toe(poses, side),
    toeChange: fromRide ? toeChange(poses, side, ride, side) : null,
    camber: camber(poses, side),
    caster: caster(poses, side),
    trackChange: fromRide ? trackChange(poses, side, ride, side, end.tireRadius) : null,
  };
}

function bumpSteerOrNull(ride: Float64Array, side: number): number | null {
  return ride[side + Side.Blame] === 0 ? bumpSteer(ride, side) : null;
}

/** The value of largest size, signed; the first of equals; null when all are. */
function largest(values: readonly (number | null)[]): number | null {
  let worst: number | null = null;
  for (const value of values) {
    if (value !== null && (worst === null || Math.abs(value) > Math.abs(worst))) worst = value;
  }
  return worst;
}

function size(value: number | null): number | null {
  return value === null ? null : Math.abs(value);
}
