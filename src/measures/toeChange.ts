import { Pose, Side } from "../kinematics/slots.ts";
import type { WheelFigure } from "./figure.ts";
import { isRight } from "./steer.ts";
import { toe } from "./toe.ts";

/** Change of toe from travel 0 at the same input, rad, toe-in positive; rideAt is the same side of the pose at travel 0. */
export function toeChange(poses: Float64Array, at: number, ride: Float64Array, rideAt: number): number {
  return toe(poses, at) - toe(ride, rideAt);
}

export const toeChangeFigure: WheelFigure = {
  of: "wheel",
  id: "toeChange",
  kind: "angle",
  label: "Toe change",
  sign: "toe-in positive",
  explanation:
    "How far the wheel has toed from ride height, with the steering held still. Least is best, over the whole travel.",
  read: (poses, at, end) => {
    const ride = end.ridePose(poses[at + Side.Input]);
    const rideAt = isRight(at) ? Pose.Right : Pose.Left;
    return ride[rideAt + Side.Blame] === 0 ? toeChange(poses, at, ride, rideAt) : null;
  },
};
