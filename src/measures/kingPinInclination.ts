import { Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * King-pin (steering-axis) inclination of one wheel, rad, top inboard positive: atan2(k_y', k_z), k' taken inboard
 * (ISO 8855). The corner frame's y is outboard, hence the minus.
 */
export function kingPinInclination(poses: Float64Array, at: number): number {
  return Math.atan2(-poses[at + Side.Axis + 1], poses[at + Side.Axis + 2]);
}

export const kingPinInclinationFigure: WheelFigure = {
  of: "wheel",
  id: "kpi",
  kind: "angle",
  label: "King-pin inclination",
  sign: "top inboard positive",
  explanation:
    "How far the steering axis leans in, seen from the front. With the wheel's offset it sets the scrub radius.",
  read: kingPinInclination,
};
