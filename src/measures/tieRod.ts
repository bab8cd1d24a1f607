import { Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";

/** Length of the tie rod of one side, eye to eye, mm. */
export function tieRodLength(poses: Float64Array, at: number): number {
  const x = poses[at + Side.TieRodOuter] - poses[at + Side.TieRodInner];
  const y = poses[at + Side.TieRodOuter + 1] - poses[at + Side.TieRodInner + 1];
  const z = poses[at + Side.TieRodOuter + 2] - poses[at + Side.TieRodInner + 2];
  return Math.sqrt(x * x + y * y + z * z);
}

/**
 * Moment arm of the tie-rod force about the steering axis, mm, without a sign: |((O − L) × e) · k|, e along the rod.
 */
export function leverArm(poses: Float64Array, at: number): number {
  return Math.abs(poses[at + Side.Lever]);
}

/**
 * Rod-to-arm angle, rad: a right angle is best, 0 is the dead point. The angle whose sine is leverArm over the distance
 * of the tie rod's outer eye from the steering axis.
 *
 * With p = (O − L) − ((O − L)·k) k and the rod's direction e, the sine is |(p × e)·k| / |p|; e lies on the three
 * right-angled directions p, k and k × p, so the cosine is √((e·p)²/p² + (e·k)²). By atan2 of the two: asin alone is
 * ill-conditioned near a right angle.
 */
export function transmissionAngle(poses: Float64Array, at: number): number {
  const kx = poses[at + Side.Axis];
  const ky = poses[at + Side.Axis + 1];
  const kz = poses[at + Side.Axis + 2];
  const ex = poses[at + Side.TieRodInner] - poses[at + Side.TieRodOuter];
  const ey = poses[at + Side.TieRodInner + 1] - poses[at + Side.TieRodOuter + 1];
  const ez = poses[at + Side.TieRodInner + 2] - poses[at + Side.TieRodOuter + 2];
  const ox = poses[at + Side.TieRodOuter] - poses[at + Side.Lower];
  const oy = poses[at + Side.TieRodOuter + 1] - poses[at + Side.Lower + 1];
  const oz = poses[at + Side.TieRodOuter + 2] - poses[at + Side.Lower + 2];
  const along = ox * kx + oy * ky + oz * kz;
  const px = ox - along * kx;
  const py = oy - along * ky;
  const pz = oz - along * kz;
  const arm = Math.sqrt(px * px + py * py + pz * pz);
  const turning = (ex * (ky * pz - kz * py) + ey * (kz * px - kx * pz) + ez * (kx * py - ky * px)) / arm;
  const radial = (ex * px + ey * py + ez * pz) / arm;
  const axial = ex * kx + ey * ky + ez * kz;
  return Math.atan2(Math.abs(turning), Math.sqrt(radial * radial + axial * axial));
}

export const tieRodFigures: readonly WheelFigure[] = [
  {
    of: "wheel",
    id: "tieRodLength",
    kind: "length",
    label: "Tie rod, eye to eye",
    sign: "",
    explanation: "The length of the tie rod from the middle of one rod end's ball to the middle of the other's.",
    read: tieRodLength,
  },
  {
    of: "wheel",
    id: "leverArm",
    kind: "length",
    label: "Steering lever",
    sign: "",
    explanation:
      "The lever with which the tie rod turns the wheel about its steering axis. When it runs out, the rod can no longer turn the wheel.",
    read: leverArm,
  },
  {
    of: "wheel",
    id: "transmissionAngle",
    kind: "angle",
    label: "Rod-to-arm angle",
    sign: "",
    explanation:
      "The angle between tie rod and steering arm: 90° is best, at 0° the rod is at its dead point and may flip over. Under 30° is doubtful, under 20° dangerous.",
    read: transmissionAngle,
  },
];
