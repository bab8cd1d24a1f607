import { Pose } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";
import { toe } from "./toe.ts";

/** Whether a side that starts at `at` is a pose's right side. */
export function isRight(at: number): boolean {
  return at % Pose.Stride === Pose.Right;
}

/**
 * Steer angle of one wheel, rad, positive to the driver's left on both sides (ISO 8855), static toe included: −toe on
 * the left, +toe on the right.
 */
export function steer(poses: Float64Array, at: number): number {
  const toeIn = toe(poses, at);
  return isRight(at) ? toeIn : -toeIn;
}

export const steerFigure: WheelFigure = {
  of: "wheel",
  id: "steer",
  kind: "angle",
  label: "Steer",
  sign: "to the left positive",
  explanation:
    "Which way the wheel points, seen from above. Static toe is in it, so the two wheels differ when straight.",
  read: steer,
};
