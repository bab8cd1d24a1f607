import { Pose, Side } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";
import { contactX, contactY } from "./contact.ts";

/**
 * Turning radius of a pose, mm: from the turn centre to the outer front wheel's contact point, at low speed, tyres not
 * slipping. The spindle lines (through the wheel centres along the spin axes, seen from above) meet the rear axle's
 * line x = −l at two places; the turn centre is midway between them. `turn` says which wheel is the outer one. Null
 * when a spindle line runs along the rear axle's line.
 *
 * For wheels that meet Ackermann's condition this is l/sin(outer) plus the scrub radius (form as in Reimpell, The
 * Automotive Chassis).
 */
export function turnRadius(
  poses: Float64Array,
  at: number,
  turn: Wheel,
  wheelbase: number,
  radius: number,
): number | null {
  const centre = turnCentre(poses, at, wheelbase);
  if (centre === null) return null;
  const outer = turn === "left" ? at + Pose.Right : at + Pose.Left;
  const x = contactX(poses, outer, radius) + wheelbase;
  const y = contactY(poses, outer, radius);
  return Math.hypot(x, turn === "left" ? y + centre : y - centre);
}

/** How far to the driver's left of the centreline the centre of the turn lies, on the rear axle's line, mm. See turnRadius. */
export function turnCentre(poses: Float64Array, at: number, wheelbase: number): number | null {
  const left = spindleAtRearAxle(poses, at + Pose.Left, wheelbase);
  const right = spindleAtRearAxle(poses, at + Pose.Right, wheelbase);
  return left === null || right === null ? null : (left - right) / 2;
}

/** Where a spindle line meets the rear axle's line, outboard from the centreline on the wheel's own side, mm. */
function spindleAtRearAxle(poses: Float64Array, at: number, wheelbase: number): number | null {
  const ahead = poses[at + Side.Spin];
  if (ahead === 0) return null;
  const along = (-wheelbase - poses[at + Side.WheelCenter]) / ahead;
  return poses[at + Side.WheelCenter + 1] + along * poses[at + Side.Spin + 1];
}
