import { Pose, Side } from "../kinematics/slots.ts";
import type { PoseFigure } from "./figure.ts";
import { steer } from "./steer.ts";

/**
 * Bounce steer, rad, positive to the left: the mean of both wheels' change of steer from travel 0 at the same input,
 * when both travel alike.
 */
export function bounceSteer(poses: Float64Array, at: number, ride: Float64Array, rideAt: number): number {
  const left = steer(poses, at + Pose.Left) - steer(ride, rideAt + Pose.Left);
  const right = steer(poses, at + Pose.Right) - steer(ride, rideAt + Pose.Right);
  return (left + right) / 2;
}

export const bounceSteerFigure: PoseFigure = {
  of: "pose",
  id: "bounceSteer",
  kind: "angle",
  label: "Bounce steer",
  sign: "to the left positive",
  explanation:
    "How far both wheels steer the same way when both go up or down together with the steering held still. Tie rods of unequal length cause it; only moving the inner joints to the middle cures it.",
  read: (poses, at, end) => {
    const ride = end.ridePose(poses[at + Side.Input]);
    const closes = ride[Pose.Left + Side.Blame] === 0 && ride[Pose.Right + Side.Blame] === 0;
    const alike = poses[at + Pose.Left + Side.Travel] === poses[at + Pose.Right + Side.Travel];
    return closes && alike ? bounceSteer(poses, at, ride, 0) : null;
  },
};
