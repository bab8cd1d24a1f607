import { CircleSlot, circleAbout, putCircle, putCircleRate } from "../circle.ts";
import type { PivotingBeamPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { minus } from "../math.ts";
import { Work } from "../slots.ts";

/**
 * A beam turns about one axis on the body (its pivot and the far end of its radius arm) and carries both ends of the
 * king pin:
 *     L(θ) = C + u cos θ + v sin θ,   U(θ) likewise about the same axis,   k = (U − L)/|U − L|, of constant length.
 * Rates are those of the circles. Elementary geometry.
 */
const enum Beam {
  Lower = 0,
  Upper = 9,
  OverSpan = 18,
}

/** Writes a corner's beam into its constants. Gives the ends of the king pin as drawn, or a refusal. */
export function compilePivotingBeam(
  points: PivotingBeamPoints,
  wheel: Refusal["wheel"],
  own: Float64Array,
): Joints | Refusal {
  const axis = minus(points.beamFront, points.beamRear);
  const lower = circleAbout(points.beamRear, axis, points.lowerJoint);
  const upper = circleAbout(points.beamRear, axis, points.upperJoint);
  if (lower === "no-axis" || upper === "no-axis") return { refused: "beam-has-no-axis", wheel };
  if (lower === "on-axis" || upper === "on-axis") return { refused: "king-pin-on-beam-axis", wheel };
  putCircle(own, Beam.Lower, lower);
  putCircle(own, Beam.Upper, upper);
  const { x, y, z } = minus(points.upperJoint, points.lowerJoint);
  own[Beam.OverSpan] = 1 / Math.sqrt(x * x + y * y + z * z);
  return { lower: points.lowerJoint, upper: points.upperJoint };
}

/** See Carry. */
export const carryPivotingBeam: Carry = { place, rates, axisTurnsInUpright: false };

function place(own: Float64Array, t: number, w: Float64Array): void {
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  for (let i = 0; i < 3; i++) {
    const lower = Beam.Lower + i;
    const upper = Beam.Upper + i;
    const l = own[lower] + (own[lower + CircleSlot.U] * cos + own[lower + CircleSlot.V] * sin);
    const u = own[upper] + (own[upper + CircleSlot.U] * cos + own[upper + CircleSlot.V] * sin);
    w[Work.Lower + i] = l;
    w[Work.Upper + i] = u;
    w[Work.Axis + i] = (u - l) * own[Beam.OverSpan];
  }
  w[Work.UprightGap] = 0;
}

function rates(own: Float64Array, w: Float64Array): void {
  const t = w[Work.HalfAngle];
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  putCircleRate(own, Beam.Lower, cos, sin, w, Work.LowerRate);
  // Lean = k × k′: the least angular velocity that turns the axis as it turns.
  putCircleRate(own, Beam.Upper, cos, sin, w, Work.Lean);
  const kx = w[Work.Axis];
  const ky = w[Work.Axis + 1];
  const kz = w[Work.Axis + 2];
  const dx = (w[Work.Lean] - w[Work.LowerRate]) * own[Beam.OverSpan];
  const dy = (w[Work.Lean + 1] - w[Work.LowerRate + 1]) * own[Beam.OverSpan];
  const dz = (w[Work.Lean + 2] - w[Work.LowerRate + 2]) * own[Beam.OverSpan];
  w[Work.Lean] = ky * dz - kz * dy;
  w[Work.Lean + 1] = kz * dx - kx * dz;
  w[Work.Lean + 2] = kx * dy - ky * dx;
}
