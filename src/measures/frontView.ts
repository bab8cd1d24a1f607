import { Side } from "../kinematics/slots.ts";
import { contactX, contactY, contactZ } from "./contact.ts";

/**
 * Velocity of the upright's material point at the contact point, mm per mm of wheel travel at fixed steering, in the
 * corner frame, seen from the front: v = v_L + ω × (C − L), L the lower joint, ω the upright's angular velocity.
 */
export function contactRateOut(poses: Float64Array, at: number, radius: number): number {
  const x = contactX(poses, at, radius) - poses[at + Side.Lower];
  const z = contactZ(poses, at, radius) - poses[at + Side.Lower + 2];
  return poses[at + Side.LowerRate + 1] + poses[at + Side.Turn + 2] * x - poses[at + Side.Turn] * z;
}

/** The same velocity's part upward. */
export function contactRateUp(poses: Float64Array, at: number, radius: number): number {
  const x = contactX(poses, at, radius) - poses[at + Side.Lower];
  const y = contactY(poses, at, radius) - poses[at + Side.Lower + 1];
  return poses[at + Side.LowerRate + 2] + poses[at + Side.Turn] * y - poses[at + Side.Turn + 1] * x;
}
