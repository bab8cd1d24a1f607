import type { Drawn } from "../../src/kinematics/drawn.ts";
import { type Placed, type PlacedAt, placedBy } from "./armScan.ts";
import type { SideName } from "./corner.ts";
import { cornerOf } from "./newton.ts";

/**
 * Which places of a corner count as its poses, by the kernel's rule but by other means: a scan of the arm's angle at one input, five times as dense as
 * the kernel's march. A corner stands at an angle where every link reaches on its drawn side and the wheel rises with its arm as drawn; the angles at
 * which it stands make intervals. From the one at the drawn angle, or the nearest, they are taken in turn toward the asked height until one holds it.
 * Where two things lie nearer together than the march's own steps, the rule leaves open which it takes, and so does the scan.
 */
export type Ruled = Placed | null | "too near to tell";

const degree = Math.PI / 180;
const scanStep = 0.2 * degree;
/** How far a place is looked for from the drawn one, how far an arm is turned, and the steps and strides of the march: the rule's own. */
const near = 60 * degree;
const farthest = 150 * degree;
const marchStep = degree;
const marchStride = 2 * degree;
/** Between the angles whose heights tell whether the wheel rises. */
const rateStep = 1e-6;
/** Heights nearer to an interval's end than this, mm, are not told apart from it. The march ends at the last bit of an angle: less than this of height. */
const endMargin = 1e-4;

/** One corner by the rule: its places at an input and a travel, null where it does not close. */
export function ruledBy(drawn: Drawn, side: SideName): (input: number, travel: number) => Ruled {
  const corner = cornerOf(drawn, side);
  const rise = riseAt(placedBy(drawn, side, corner.drawn.at.rod)(drawn.mechanism.straightAhead), 0);
  const placed = placedBy(drawn, side, corner.rod);
  return (input, travel) => placeIn(placed(input), rise, drawn[side].wheelCenter.z + travel);
}

/** Whether the wheel rises (1) or falls (-1) as the angle grows; by one difference where the links end beside it. */
function riseAt(placedAt: PlacedAt, angle: number): number {
  const height = (at: number) => placedAt(at)?.wheelCenter.z;
  const here = height(angle) ?? 0;
  return Math.sign((height(angle + rateStep) ?? here) - (height(angle - rateStep) ?? here));
}

function placeIn(placedAt: PlacedAt, rise: number, target: number): Ruled {
  const stands = (angle: number) => placedAt(angle) !== null && riseAt(placedAt, angle) === rise;
  const past = (angle: number) => (placedAt(angle)?.wheelCenter.z ?? Number.NaN) - target;
  const start = nearest(stands);
  if (typeof start !== "number") return start;
  const way = past(start) < 0 ? rise : -rise;
  const upward = way === rise;
  const beyond = (angle: number) => (upward ? past(angle) : -past(angle));
  let from = start;
  while (true) {
    const end = lastStanding(stands, from, way);
    if (Math.abs(beyond(end)) < endMargin || Math.abs(end) > farthest - marchStep) return "too near to tell";
    if (beyond(end) > 0) return halved(placedAt, beyond, from, end);
    const again = nextStanding(stands, end, way);
    if (again === null) return null;
    const tooNear = Math.abs(again - end) < marchStep || Math.abs(Math.abs(again) - near) < marchStride;
    if (tooNear || Math.abs(beyond(again)) < endMargin) return "too near to tell";
    if (Math.abs(again) > near || beyond(again) > 0) return null;
    if (!standsFor(stands, again, way, marchStep)) return "too near to tell";
    from = again;
  }
}

/** The nearest angle at which the corner stands, where no other is nearly as near on the other side. */
function nearest(stands: (angle: number) => boolean): number | null | "too near to tell" {
  if (stands(0)) return 0;
  for (let far = scanStep; far < near + marchStride; far += scanStep) {
    for (const hand of [1, -1]) {
      if (!stands(hand * far)) continue;
      if (far > near - marchStride) return "too near to tell";
      for (let more = far; more < far + marchStride; more += scanStep)
        if (stands(-hand * more)) return "too near to tell";
      return standsFor(stands, hand * far, hand, marchStride) ? hand * far : "too near to tell";
    }
  }
  return null;
}

/** Whether the corner stands all along a turn. */
function standsFor(stands: (angle: number) => boolean, from: number, way: number, turn: number): boolean {
  for (let far = 0; far < turn; far += scanStep) if (!stands(from + way * far)) return false;
  return true;
}

function lastStanding(stands: (angle: number) => boolean, from: number, way: number): number {
  let last = from;
  while (stands(last + way * scanStep) && Math.abs(last) < farthest) last += way * scanStep;
  return edge(stands, last, last + way * scanStep);
}

/** Beyond a gap, the first angle at which the corner stands again, looked for a little farther than the rule does. */
function nextStanding(stands: (angle: number) => boolean, end: number, way: number): number | null {
  for (let angle = end + way * scanStep; Math.abs(angle) < near + marchStride; angle += way * scanStep) {
    if (stands(angle)) return edge(stands, angle, angle - way * scanStep);
  }
  return null;
}

function edge(stands: (angle: number) => boolean, standing: number, not: number): number {
  let [last, next] = [standing, not];
  for (let i = 0; i < 60; i++) {
    const middle = 0.5 * (last + next);
    if (stands(middle)) last = middle;
    else next = middle;
  }
  return last;
}

/** The place at the asked height, between an angle before it and one beyond: by halving, since the wheel rises all along. */
function halved(placedAt: PlacedAt, beyond: (angle: number) => number, from: number, to: number): Placed | null {
  let [before, after] = [from, to];
  for (let i = 0; i < 80; i++) {
    const middle = 0.5 * (before + after);
    if (beyond(middle) < 0) before = middle;
    else after = middle;
  }
  return placedAt(after);
}
