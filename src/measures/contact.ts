import { Side } from "../kinematics/slots.ts";

/**
 * The contact point: the lowest point of the wheel disc of loaded radius r, in the corner frame, mm.
 *
 * C = W + r d, with d = (a_z a − z) / √(1 − a_z²) the unit vector in the disc that points most nearly down.
 * One function a coordinate, so that a sweep need not allocate.
 */
export function contactX(poses: Float64Array, at: number, radius: number): number {
  return poses[at + Side.WheelCenter] + radius * lean(poses, at) * poses[at + Side.Spin];
}

export function contactY(poses: Float64Array, at: number, radius: number): number {
  return poses[at + Side.WheelCenter + 1] + radius * lean(poses, at) * poses[at + Side.Spin + 1];
}

export function contactZ(poses: Float64Array, at: number, radius: number): number {
  return poses[at + Side.WheelCenter + 2] - radius * level(poses, at);
}

/** √(1 − a_z²): the length of the spin axis seen from above. */
function level(poses: Float64Array, at: number): number {
  const x = poses[at + Side.Spin];
  const y = poses[at + Side.Spin + 1];
  return Math.sqrt(x * x + y * y);
}

function lean(poses: Float64Array, at: number): number {
  return poses[at + Side.Spin + 2] / level(poses, at);
}
