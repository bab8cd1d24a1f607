import { Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";

/**
 * Toe of one wheel, rad, toe-in positive; `at` is where its side starts.
 *
 * ISO 8855: the heading is h = normalise(a × z), a the spin axis. In the corner frame a points outboard, so that on
 * both sides toe = atan2(a_x, a_y).
 */
export function toe(poses: Float64Array, at: number): number {
  return Math.atan2(poses[at + Side.Spin], poses[at + Side.Spin + 1]);
}

export const toeFigure: WheelFigure = {
  of: "wheel",
  id: "toe",
  kind: "angle",
  label: "Toe",
  sign: "toe-in positive",
  explanation:
    "How far the front of the wheel points toward the middle of the car, seen from above. Static toe and steering are both in it.",
  read: toe,
};
