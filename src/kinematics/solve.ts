import type { Front, ReadyCorner } from "./front.ts";
import { approach, evaluate, NEAR_HALF, place, settle } from "./settle.ts";
import { Corner, Link, Pose, Side, Upright, Work } from "./slots.ts";
import { FITTED, putStart } from "./start.ts";

/** A fitted start is never this far off; a search that strays as far has left the drawn pose's own interval. */
const STRAY = 0.05;
/** What is asked for beyond this, mm or rad, is taken as this: a kilometre is as far out of reach as anything. */
const FAR = 1e6;

/**
 * Solves one pose: both sides at an input of the steering mechanism and a wheel travel each. Writes Pose.Stride doubles at `at`.
 * Never throws and never allocates; a side that does not close has its Blame set, its Gap in mm, and its numbers are
 * those of the links brought as near as they go. A pose depends on nothing but the front and these three numbers.
 *
 * @param input rack displacement from mid-travel, mm, positive to the driver's left; or column angle, rad, positive as
 *   the steering wheel is turned left
 * @param left wheel travel on the left, mm, bump positive
 * @param right wheel travel on the right, mm, bump positive
 */
export function solve(front: Front, input: number, left: number, right: number, poses: Float64Array, at: number): void {
  const asked = bounded(input);
  const leftTravel = bounded(left);
  const rightTravel = bounded(right);
  front.innerEyes(front.mechanism, asked, front.left.work, front.right.work);
  // The corners take turns: no step waits for the one before it, so that a processor has two at a time in hand.
  const leftNear = stepped(front, front.left, asked, leftTravel);
  const rightNear = stepped(front, front.right, -asked, rightTravel);
  arrive(front, front.left, leftNear, leftTravel);
  arrive(front, front.right, rightNear, rightTravel);
  write(front.left, asked, leftTravel, poses, at + Pose.Left);
  write(front.right, asked, rightTravel, poses, at + Pose.Right);
}

/**
 * One side of a pose, as `solve` solves it; the other side's doubles are left as they are.
 *
 * @param side Pose.Left or Pose.Right
 */
export function solveSide(
  front: Front,
  side: number,
  input: number,
  travel: number,
  poses: Float64Array,
  at: number,
): void {
  const isLeft = side === Pose.Left;
  const corner = isLeft ? front.left : front.right;
  const asked = bounded(input);
  const ownTravel = bounded(travel);
  front.innerEyes(front.mechanism, asked, front.left.work, front.right.work);
  const near = stepped(front, corner, isLeft ? asked : -asked, ownTravel);
  arrive(front, corner, near, ownTravel);
  write(corner, asked, ownTravel, poses, at + side);
}

function bounded(value: number): number {
  return Number.isNaN(value) ? FAR : Math.min(Math.max(value, -FAR), FAR);
}

/** The first step of a corner toward its place, from the fitted start; false where that is not to be trusted. */
function stepped(front: Front, corner: ReadyCorner, input: number, travel: number): boolean {
  const { constants: c, work } = corner;
  const z = (travel - c[Corner.Start]) * c[Corner.Start + 1];
  const s = (input - c[Corner.Start + 2]) * c[Corner.Start + 3];
  if (!(c[Corner.Rise] !== 0 && z <= FITTED && z >= -FITTED && s <= FITTED && s >= -FITTED)) return false;
  putStart(c, z, s, work);
  const start = work[Work.HalfAngle];
  if (!(start <= NEAR_HALF && start >= -NEAR_HALF)) return false;
  place(front, corner, start);
  const step = (c[Corner.Height] + travel - work[Work.Height]) * work[Work.PerHeight];
  work[Work.HalfAngle] = start + step;
  return step <= STRAY && step >= -STRAY;
}

/** The rest of the way. Without suspension there is none. */
function arrive(front: Front, corner: ReadyCorner, near: boolean, travel: number): void {
  const target = corner.constants[Corner.Height] + travel;
  if (corner.constants[Corner.Rise] === 0) evaluate(front, corner, 0);
  else if (!(near && approach(front, corner, STRAY, target))) settle(front, corner, target);
}

/** The pose that the scratch holds, into the caller's buffer. */
function write(
  { constants, places, work }: ReadyCorner,
  input: number,
  travel: number,
  poses: Float64Array,
  at: number,
): void {
  const kx = work[Work.Axis];
  const ky = work[Work.Axis + 1];
  const kz = work[Work.Axis + 2];
  const rx = work[Work.Radius];
  const ry = work[Work.Radius + 1];
  const rz = work[Work.Radius + 2];
  const qx = work[Work.Across];
  const qy = work[Work.Across + 1];
  const qz = work[Work.Across + 2];
  const lx = work[Work.Lower];
  const ly = work[Work.Lower + 1];
  const lz = work[Work.Lower + 2];

  // What the wheel lacks to the height asked for, mm; without suspension, all of it.
  const miss = constants[Corner.Rise] === 0 ? travel : constants[Corner.Height] + travel - work[Work.Height];
  let link = Link.None;
  let gap = 0;
  if (work[Work.CentreLinkGap] !== 0) {
    link = Link.CentreLink;
    gap = work[Work.CentreLinkGap];
  } else if (work[Work.UprightGap] !== 0) {
    link = Link.Upright;
    gap = work[Work.UprightGap];
  } else if (work[Work.TieRodGap] !== 0) {
    link = Link.TieRod;
    gap = work[Work.TieRodGap];
  } else if (Math.abs(miss) > SETTLED * constants[Corner.Tolerance]) {
    link = Link.Travel;
    gap = miss;
  }
  poses[at + Side.Blame] = link;
  poses[at + Side.Gap] = gap;
  poses[at + Side.Input] = input;
  poses[at + Side.Travel] = travel;

  poses[at + Side.Lower] = lx;
  poses[at + Side.Lower + 1] = ly;
  poses[at + Side.Lower + 2] = lz;
  poses[at + Side.Upper] = work[Work.Upper];
  poses[at + Side.Upper + 1] = work[Work.Upper + 1];
  poses[at + Side.Upper + 2] = work[Work.Upper + 2];
  poses[at + Side.Axis] = kx;
  poses[at + Side.Axis + 1] = ky;
  poses[at + Side.Axis + 2] = kz;
  const along = places[Upright.TieRodAlong];
  poses[at + Side.TieRodOuter] = lx + (along * kx + rx);
  poses[at + Side.TieRodOuter + 1] = ly + (along * ky + ry);
  poses[at + Side.TieRodOuter + 2] = lz + (along * kz + rz);
  poses[at + Side.TieRodInner] = work[Work.Eye];
  poses[at + Side.TieRodInner + 1] = work[Work.Eye + 1];
  poses[at + Side.TieRodInner + 2] = work[Work.Eye + 2];
  const wk = places[Upright.Wheel];
  const wr = places[Upright.Wheel + 1];
  const wq = places[Upright.Wheel + 2];
  poses[at + Side.WheelCenter] = lx + (wk * kx + wr * rx + wq * qx);
  poses[at + Side.WheelCenter + 1] = ly + (wk * ky + wr * ry + wq * qy);
  poses[at + Side.WheelCenter + 2] = work[Work.Height];
  const ak = places[Upright.Spin];
  const ar = places[Upright.Spin + 1];
  const aq = places[Upright.Spin + 2];
  poses[at + Side.Spin] = ak * kx + ar * rx + aq * qx;
  poses[at + Side.Spin + 1] = ak * ky + ar * ry + aq * qy;
  poses[at + Side.Spin + 2] = ak * kz + ar * rz + aq * qz;

  const rate = work[Work.HeightRate];
  const per = link === Link.None && rate !== 0 ? 1 / rate : 0;
  poses[at + Side.LowerRate] = work[Work.LowerRate] * per;
  poses[at + Side.LowerRate + 1] = work[Work.LowerRate + 1] * per;
  poses[at + Side.LowerRate + 2] = work[Work.LowerRate + 2] * per;
  poses[at + Side.Turn] = work[Work.Turn] * per;
  poses[at + Side.Turn + 1] = work[Work.Turn + 1] * per;
  poses[at + Side.Turn + 2] = work[Work.Turn + 2] * per;
  poses[at + Side.Lever] = work[Work.LeverRod] / constants[Corner.RodLength];
}

/** The slow way ends at the last bit of the angle; near a dead point that is this many tolerances of height. */
const SETTLED = 1e3;
