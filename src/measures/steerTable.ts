import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import { type Blame, blameOf } from "./blame.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { placeOf, type Span } from "./span.ts";
import { steer } from "./steer.ts";
import { type Turning, turningOf, turnRadiusOf } from "./turning.ts";

/**
 * The wheels at one input, travel 0. Angles rad, lengths mm. Where a side does not close, its numbers and
 * every number made from both are null and blame says why.
 */
export interface SteerRow extends Turning {
  /** mm of rack or rad of column, positive to the driver's left. */
  readonly input: number;
  readonly blame: Blame | null;
  /** Absolute, static toe included, positive to the left. */
  readonly left: { readonly steer: number | null };
  readonly right: { readonly steer: number | null };
  /** Of the outer front wheel's contact point, mm; null while outer is under 2 degrees. */
  readonly turnRadius: number | null;
}

export interface SteerTable {
  readonly rows: readonly SteerRow[];
}

/** Rows a table has unless others are asked for. */
export const ROWS = 21;

/** Lock to lock. */
export function inputSpan(end: FrontEnd): Span {
  return { from: -end.inputTravel.right, to: end.inputTravel.left, rows: ROWS };
}

/** The steer table of a front end over a span of inputs, mm of rack or rad of column. */
export function steerTable(end: FrontEnd, span: Span): SteerTable {
  const poses = newPoses(1);
  const rows: SteerRow[] = [];
  for (let i = 0; i < span.rows; i++) {
    const input = placeOf(span, i);
    solve(end.front, input, 0, 0, poses, 0);
    rows.push(steerRow(end, input, poses, 0));
  }
  return { rows };
}

/** The row of a solved pose. */
export function steerRow(end: FrontEnd, input: number, poses: Float64Array, at: number): SteerRow {
  const way = turningOf(end, poses, at);
  return {
    input,
    blame: blameOf(poses, at),
    left: { steer: steerOrNull(poses, at + Pose.Left) },
    right: { steer: steerOrNull(poses, at + Pose.Right) },
    ...way,
    turnRadius: turnRadiusOf(end, poses, at, way),
  };
}

function steerOrNull(poses: Float64Array, at: number): number | null {
  return poses[at + Side.Blame] === 0 ? steer(poses, at) : null;
}
