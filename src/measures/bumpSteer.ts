import { Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * Bump steer of one wheel: d(toe)/d(travel) at fixed steering, rad per mm, toe-in in bump positive.
 *
 * Exact, from the upright's angular velocity ω: a' = ω × a and toe = atan2(a_x, a_y), so
 * toe' = (a_x' a_y − a_x a_y') / (a_x² + a_y²).
 */
export function bumpSteer(poses: Float64Array, at: number): number {
  const x = poses[at + Side.Spin];
  const y = poses[at + Side.Spin + 1];
  const z = poses[at + Side.Spin + 2];
  const turnX = poses[at + Side.Turn];
  const turnY = poses[at + Side.Turn + 1];
  const turnZ = poses[at + Side.Turn + 2];
  const rateX = turnY * z - turnZ * y;
  const rateY = turnZ * x - turnX * z;
  return (rateX * y - x * rateY) / (x * x + y * y);
}

export const bumpSteerFigure: WheelFigure = {
  of: "wheel",
  id: "bumpSteer",
  kind: "angle-per-length",
  label: "Bump steer here",
  sign: "toe-in as the wheel rises positive",
  explanation:
    "How fast the wheel toes as it goes up, at this place of the travel only. Judge by the worst toe change over the whole travel instead: a small slope here can hide a large change at full droop.",
  read: bumpSteer,
};
