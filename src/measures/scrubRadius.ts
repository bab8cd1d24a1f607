import { Side } from "../kinematics/slots.ts";
import { contactX, contactY, contactZ } from "./contact.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * Scrub radius, mm: from where the steering axis meets the horizontal plane through the contact point C to C, sideways
 * in the wheel's own heading frame, positive when the contact is outboard (the kingpin offset at ground of ISO 8855).
 *
 * P = L + k (C_z − L_z)/k_z, scrub = (C − P) · (a_x, a_y)/|(a_x, a_y)|, since a points outboard.
 */
export function scrubRadius(poses: Float64Array, at: number, radius: number): number {
  const a = at + Side.Spin;
  const k = at + Side.Axis;
  const up = (contactZ(poses, at, radius) - poses[at + Side.Lower + 2]) / poses[k + 2];
  const x = contactX(poses, at, radius) - poses[at + Side.Lower] - up * poses[k];
  const y = contactY(poses, at, radius) - poses[at + Side.Lower + 1] - up * poses[k + 1];
  return (x * poses[a] + y * poses[a + 1]) / Math.sqrt(poses[a] * poses[a] + poses[a + 1] * poses[a + 1]);
}

export const scrubRadiusFigure: WheelFigure = {
  of: "wheel",
  id: "scrubRadius",
  kind: "length",
  label: "Scrub radius",
  sign: "tyre outside the steering axis positive",
  explanation:
    "How far the tyre's contact stands outside the steering axis at the ground. The larger, the harder one wheel's bumps and brakes pull at the steering.",
  read: (poses, at, end) => scrubRadius(poses, at, end.tireRadius),
};
