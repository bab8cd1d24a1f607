import { Side } from "../kinematics/slots.ts";
import { contactX, contactY, contactZ } from "./contact.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * Caster trail, mm: how far ahead of the contact point C the steering axis meets the horizontal plane through C, along
 * the wheel's heading, ahead positive (ISO 8855, castor offset at ground).
 *
 * P = L + k (C_z − L_z)/k_z, trail = (P − C) · h, h = (a_y, −a_x)/|(a_x, a_y)| in the corner frame.
 */
export function trail(poses: Float64Array, at: number, radius: number): number {
  const a = at + Side.Spin;
  const k = at + Side.Axis;
  const up = (contactZ(poses, at, radius) - poses[at + Side.Lower + 2]) / poses[k + 2];
  const x = poses[at + Side.Lower] + up * poses[k] - contactX(poses, at, radius);
  const y = poses[at + Side.Lower + 1] + up * poses[k + 1] - contactY(poses, at, radius);
  return (x * poses[a + 1] - y * poses[a]) / Math.sqrt(poses[a] * poses[a] + poses[a + 1] * poses[a + 1]);
}

export const trailFigure: WheelFigure = {
  of: "wheel",
  id: "trail",
  kind: "length",
  label: "Trail",
  sign: "steering axis ahead of the tyre positive",
  explanation:
    "How far the steering axis meets the ground ahead of the tyre's contact. It pulls the wheels straight; too much makes the steering heavy.",
  read: (poses, at, end) => trail(poses, at, end.tireRadius),
};
