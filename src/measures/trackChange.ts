import { Pose, Side } from "../kinematics/slots.ts";
import { contactY } from "./contact.ts";
import type { WheelFigure } from "./figure.ts";
import { isRight } from "./steer.ts";

/**
 * Outboard displacement of the contact point from travel 0 at the same input, mm; rideAt is the same side of the pose
 * at travel 0.
 */
export function trackChange(
  poses: Float64Array,
  at: number,
  ride: Float64Array,
  rideAt: number,
  radius: number,
): number {
  return contactY(poses, at, radius) - contactY(ride, rideAt, radius);
}

export const trackChangeFigure: WheelFigure = {
  of: "wheel",
  id: "trackChange",
  kind: "length",
  label: "Track change",
  sign: "outboard positive",
  explanation:
    "How far the tyre's contact has moved outboard from where it stands at ride height. It scrubs the tyre sideways.",
  read: (poses, at, end) => {
    const ride = end.ridePose(poses[at + Side.Input]);
    const rideAt = isRight(at) ? Pose.Right : Pose.Left;
    return ride[rideAt + Side.Blame] === 0 ? trackChange(poses, at, ride, rideAt, end.tireRadius) : null;
  },
};
