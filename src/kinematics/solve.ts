import type { Front } from "./front.ts";
import { innerEye } from "./mechanisms/rack.ts";
import { approach, settle } from "./settle.ts";
import { Corner, Link, Pose, Side, Work } from "./slots.ts";
import { FITTED, startAt } from "./start.ts";

/** A fitted start is never this far off; a search that strays as far has left the drawn pose's own interval. */
const STRAY = 0.05;
/** What is asked for beyond this, mm, is taken as this: a kilometre is as far out of reach as anything. */
const FAR = 1e6;

/**
 * Solves one pose: both sides at a rack displacement and a wheel travel each. Writes Pose.Stride doubles at `at`.
 * Never throws and never allocates; a side that does not close has its Blame set, its Gap in mm, and its numbers are
 * those of the links brought as near as they go. A pose depends on nothing but the front and these three numbers.
 *
 * @param input rack displacement from mid-travel, mm, positive to the driver's left
 * @param left wheel travel on the left, mm, bump positive
 * @param right wheel travel on the right, mm, bump positive
 */
export function solve(front: Front, input: number, left: number, right: number, poses: Float64Array, at: number): void {
  const rack = bounded(input);
  solveSide(front, 0, 0, rack, bounded(left), poses, at + Pose.Left);
  solveSide(front, Corner.Stride, Work.Stride, -rack, bounded(right), poses, at + Pose.Right);
  poses[at + Pose.Left + Side.Input] = rack;
  poses[at + Pose.Right + Side.Input] = rack;
}

function bounded(value: number): number {
  return Number.isNaN(value) ? FAR : Math.min(Math.max(value, -FAR), FAR);
}

function solveSide(
  front: Front,
  corner: number,
  w: number,
  input: number,
  travel: number,
  poses: Float64Array,
  at: number,
): void {
  const c = front.constants;
  const work = front.work;
  const target = c[corner + Corner.Height] + travel;
  const z = (travel - c[corner + Corner.Start]) * c[corner + Corner.Start + 1];
  const s = (input - c[corner + Corner.Start + 2]) * c[corner + Corner.Start + 3];
  innerEye(c, corner, input, work, w);

  const fitted = z <= FITTED && z >= -FITTED && s <= FITTED && s >= -FITTED;
  const met = fitted && approach(front, corner, w, startAt(c, corner, z, s), STRAY, target);
  if (!met) settle(front, corner, w, target);
  write(front, corner, w, target, travel, poses, at);
}

/** The pose that the scratch holds, into the caller's buffer. */
function write(
  front: Front,
  corner: number,
  w: number,
  target: number,
  travel: number,
  poses: Float64Array,
  at: number,
): void {
  const c = front.constants;
  const work = front.work;
  const kx = work[w + Work.Axis];
  const ky = work[w + Work.Axis + 1];
  const kz = work[w + Work.Axis + 2];
  const rx = work[w + Work.Radius];
  const ry = work[w + Work.Radius + 1];
  const rz = work[w + Work.Radius + 2];
  const qx = work[w + Work.Across];
  const qy = work[w + Work.Across + 1];
  const qz = work[w + Work.Across + 2];
  const lx = work[w + Work.Lower];
  const ly = work[w + Work.Lower + 1];
  const lz = work[w + Work.Lower + 2];

  let link = Link.None;
  let gap = 0;
  const miss = target - work[w + Work.Height];
  if (work[w + Work.UprightGap] !== 0) {
    link = Link.Upright;
    gap = work[w + Work.UprightGap];
  } else if (work[w + Work.TieRodGap] !== 0) {
    link = Link.TieRod;
    gap = work[w + Work.TieRodGap];
  } else if (Math.abs(miss) > SETTLED * c[corner + Corner.Tolerance]) {
    link = Link.Travel;
    gap = miss;
  }
  poses[at + Side.Blame] = link;
  poses[at + Side.Gap] = gap;
  poses[at + Side.Travel] = travel;

  poses[at + Side.Lower] = lx;
  poses[at + Side.Lower + 1] = ly;
  poses[at + Side.Lower + 2] = lz;
  poses[at + Side.Upper] = work[w + Work.Upper];
  poses[at + Side.Upper + 1] = work[w + Work.Upper + 1];
  poses[at + Side.Upper + 2] = work[w + Work.Upper + 2];
  poses[at + Side.Axis] = kx;
  poses[at + Side.Axis + 1] = ky;
  poses[at + Side.Axis + 2] = kz;
  const along = c[corner + Corner.TieRodAlong];
  poses[at + Side.TieRodOuter] = lx + (along * kx + rx);
  poses[at + Side.TieRodOuter + 1] = ly + (along * ky + ry);
  poses[at + Side.TieRodOuter + 2] = lz + (along * kz + rz);
  poses[at + Side.TieRodInner] = work[w + Work.Eye];
  poses[at + Side.TieRodInner + 1] = work[w + Work.Eye + 1];
  poses[at + Side.TieRodInner + 2] = work[w + Work.Eye + 2];
  const wk = c[corner + Corner.Wheel];
  const wr = c[corner + Corner.Wheel + 1];
  const wq = c[corner + Corner.Wheel + 2];
  poses[at + Side.WheelCenter] = lx + (wk * kx + wr * rx + wq * qx);
  poses[at + Side.WheelCenter + 1] = ly + (wk * ky + wr * ry + wq * qy);
  poses[at + Side.WheelCenter + 2] = work[w + Work.Height];
  const ak = c[corner + Corner.Spin];
  const ar = c[corner + Corner.Spin + 1];
  const aq = c[corner + Corner.Spin + 2];
  poses[at + Side.Spin] = ak * kx + ar * rx + aq * qx;
  poses[at + Side.Spin + 1] = ak * ky + ar * ry + aq * qy;
  poses[at + Side.Spin + 2] = ak * kz + ar * rz + aq * qz;

  const rate = work[w + Work.HeightRate];
  const per = link === Link.None && rate !== 0 ? 1 / rate : 0;
  poses[at + Side.LowerRate] = work[w + Work.LowerRate] * per;
  poses[at + Side.LowerRate + 1] = work[w + Work.LowerRate + 1] * per;
  poses[at + Side.LowerRate + 2] = work[w + Work.LowerRate + 2] * per;
  poses[at + Side.Turn] = work[w + Work.Turn] * per;
  poses[at + Side.Turn + 1] = work[w + Work.Turn + 1] * per;
  poses[at + Side.Turn + 2] = work[w + Work.Turn + 2] * per;
  poses[at + Side.Lever] = work[w + Work.Lever];
}

/** The slow way ends at the last bit of the angle; near a dead point that is this many tolerances of height. */
const SETTLED = 1e3;
