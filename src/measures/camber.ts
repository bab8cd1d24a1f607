import { Side } from "../kinematics/slots.ts";
import { ofSuspension, type WheelFigure } from "./figure.ts";

/**
 * Camber of one wheel, rad, top outward positive: −asin(a_z), a the spin axis pointing outboard (ISO 8855).
 * By atan2, since asin loses digits near a right angle.
 */
export function camber(poses: Float64Array, at: number): number {
  const x = poses[at + Side.Spin];
  const y = poses[at + Side.Spin + 1];
  return Math.atan2(-poses[at + Side.Spin + 2], Math.sqrt(x * x + y * y));
}

/**
 * d(camber)/d(travel) at fixed steering, rad per mm, from the upright's angular velocity ω: a' = ω × a, so
 * camber' = −a_z' / √(a_x² + a_y²). Negative where the top goes in as the wheel goes up.
 */
export function camberGain(poses: Float64Array, at: number): number {
  const x = poses[at + Side.Spin];
  const y = poses[at + Side.Spin + 1];
  const rise = poses[at + Side.Turn] * y - poses[at + Side.Turn + 1] * x;
  return -rise / Math.sqrt(x * x + y * y);
}

export const camberFigures: readonly WheelFigure[] = [
  {
    of: "wheel",
    id: "camber",
    kind: "angle",
    label: "Camber",
    sign: "top outward positive",
    explanation: "How far the wheel leans, seen from the front. A little negative helps grip in a corner.",
    read: camber,
  },
  ofSuspension({
    of: "wheel",
    id: "camberGain",
    kind: "angle-per-length",
    label: "Camber gain",
    sign: "top outward in bump positive",
    explanation:
      "How fast the wheel's lean changes as the wheel goes up. Negative: the top goes in as the wheel rises.",
    read: camberGain,
  }),
];
