import type { Front } from "./front.ts";
import { approach, evaluate, settle } from "./settle.ts";
import { Corner, Link, Pose, Side, Upright, Work } from "./slots.ts";
import { FITTED, startAt } from "./start.ts";

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
  front.innerEyes(front.constants, asked, front.work);
  solveSide(front, 0, 0, asked, bounded(left), poses, at + Pose.Left);
  solveSide(front, Corner.Stride, Work.Stride, -asked, bounded(right), poses, at + Pose.Right);
  poses[at + Pose.Left + Side.Input] = asked;
  poses[at + Pose.Right + Side.Input] = asked;
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
  const target = c[corner + Corner.Height] + travel;
  if (c[corner + Corner.Rise] === 0) {
    evaluate(front, corner, w, 0);
    write(front, corner, w, travel, travel, poses, at);
    return;
  }
  const z = (travel - c[corner + Corner.Start]) * c[corner + Corner.Start + 1];
  const s = (input - c[corner + Corner.Start + 2]) * c[corner + Corner.Start + 3];
  const fitted = z <= FITTED && z >= -FITTED && s <= FITTED && s >= -FITTED;
  const met = fitted && approach(front, corner, w, startAt(c, corner, z, s), STRAY, target);
  if (!met) settle(front, corner, w, target);
  write(front, corner, w, target - front.work[w + Work.Height], travel, poses, at);
}

/** The pose that the scratch holds, into the caller's buffer. miss: what the wheel lacks to the height asked for, mm. */
function write(
  front: Front,
  corner: number,
  w: number,
  miss: number,
  travel: number,
  poses: Float64Array,
  at: number,
): void {
  const c = front.constants;
  const work = front.work;
  const places = front.axisTurnsInUpright ? work : c;
  const place = front.axisTurnsInUpright ? w + Work.Upright : corner + Corner.Upright;
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
  if (work[w + Work.CentreLinkGap] !== 0) {
    link = Link.CentreLink;
    gap = work[w + Work.CentreLinkGap];
  } else if (work[w + Work.UprightGap] !== 0) {
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
  const along = places[place + Upright.TieRodAlong];
  poses[at + Side.TieRodOuter] = lx + (along * kx + rx);
  poses[at + Side.TieRodOuter + 1] = ly + (along * ky + ry);
  poses[at + Side.TieRodOuter + 2] = lz + (along * kz + rz);
  poses[at + Side.TieRodInner] = work[w + Work.Eye];
  poses[at + Side.TieRodInner + 1] = work[w + Work.Eye + 1];
  poses[at + Side.TieRodInner + 2] = work[w + Work.Eye + 2];
  const wk = places[place + Upright.Wheel];
  const wr = places[place + Upright.Wheel + 1];
  const wq = places[place + Upright.Wheel + 2];
  poses[at + Side.WheelCenter] = lx + (wk * kx + wr * rx + wq * qx);
  poses[at + Side.WheelCenter + 1] = ly + (wk * ky + wr * ry + wq * qy);
  poses[at + Side.WheelCenter + 2] = work[w + Work.Height];
  const ak = places[place + Upright.Spin];
  const ar = places[place + Upright.Spin + 1];
  const aq = places[place + Upright.Spin + 2];
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
