import { CircleSlot, circleAbout, putCircle } from "../circle.ts";
import type { PivotingBeamPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { minus } from "../math.ts";
import { Corner, Work } from "../slots.ts";

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
  constants: Float64Array,
  corner: number,
): Joints | Refusal {
  const axis = minus(points.beamFront, points.beamRear);
  const lower = circleAbout(points.beamRear, axis, points.lowerJoint);
  const upper = circleAbout(points.beamRear, axis, points.upperJoint);
  if (lower === "no-axis" || upper === "no-axis") return { refused: "beam-has-no-axis", wheel };
  if (lower === "on-axis" || upper === "on-axis") return { refused: "king-pin-on-beam-axis", wheel };
  const own = corner + Corner.Linkage;
  putCircle(constants, own + Beam.Lower, lower);
  putCircle(constants, own + Beam.Upper, upper);
  const { x, y, z } = minus(points.upperJoint, points.lowerJoint);
  constants[own + Beam.OverSpan] = 1 / Math.sqrt(x * x + y * y + z * z);
  return { lower: points.lowerJoint, upper: points.upperJoint };
}

/** The steering axis at t = tan(θ/2), with its rates per rad of θ. See Carry. */
export const carryPivotingBeam: Carry = (c, corner, t, w, at) => {
  const lower = corner + Corner.Linkage + Beam.Lower;
  const upper = corner + Corner.Linkage + Beam.Upper;
  const overSpan = c[corner + Corner.Linkage + Beam.OverSpan];
  const half = 1 / (1 + t * t);
  const cos = (1 - t * t) * half;
  const sin = 2 * t * half;
  for (let i = 0; i < 3; i++) {
    const u = c[lower + CircleSlot.U + i];
    const v = c[lower + CircleSlot.V + i];
    const pu = c[upper + CircleSlot.U + i];
    const pv = c[upper + CircleSlot.V + i];
    const l = c[lower + i] + (u * cos + v * sin);
    const rate = v * cos - u * sin;
    const p = c[upper + i] + (pu * cos + pv * sin);
    w[at + Work.Lower + i] = l;
    w[at + Work.Upper + i] = p;
    w[at + Work.Axis + i] = (p - l) * overSpan;
    w[at + Work.LowerRate + i] = rate;
    w[at + Work.Lean + i] = (pv * cos - pu * sin - rate) * overSpan;
  }
  const kx = w[at + Work.Axis];
  const ky = w[at + Work.Axis + 1];
  const kz = w[at + Work.Axis + 2];
  const dx = w[at + Work.Lean];
  const dy = w[at + Work.Lean + 1];
  const dz = w[at + Work.Lean + 2];
  // Lean = k × k′: the least angular velocity that turns the axis as it turns.
  w[at + Work.Lean] = ky * dz - kz * dy;
  w[at + Work.Lean + 1] = kz * dx - kx * dz;
  w[at + Work.Lean + 2] = kx * dy - ky * dx;
  w[at + Work.UprightGap] = 0;
};
