import { Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * Caster of one wheel, rad, top of the steering axis rearward positive: atan2(−k_x, k_z), k the unit vector from the
 * lower to the upper joint (ISO 8855).
 */
export function caster(poses: Float64Array, at: number): number {
  return Math.atan2(-poses[at + Side.Axis], poses[at + Side.Axis + 2]);
}

export const casterFigure: WheelFigure = {
  of: "wheel",
  id: "caster",
  kind: "angle",
  label: "Caster",
  sign: "top rearward positive",
  explanation:
    "How far the steering axis leans back, seen from the side. It makes the wheels run straight and lean into a turn.",
  read: caster,
};
