import { Pose } from "./slots.ts";

/** Room for a number of poses, both sides each. The i-th starts at i × Pose.Stride. */
export function newPoses(count: number): Float64Array {
  return new Float64Array(count * Pose.Stride);
}
