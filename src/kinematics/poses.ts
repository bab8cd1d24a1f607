import { Pose } from "./slots.ts";

/** Room for a number of poses, both sides each. The i-th starts at i × Pose.Stride. */
export function newPoses(count: number): Float64Array {
  return new Float64Array(count * Pose.Stride);
}

/**
 * Room for poses that one sweep after the other uses, each leaving nothing of it that is kept: searches study cars by the
 * thousand, and a tenth of their time went into getting such rooms and clearing them away.
 */
export function sweepRoom(): (count: number) => Float64Array {
  const rooms = new Map<number, Float64Array>();
  return (count) => {
    const known = rooms.get(count);
    if (known !== undefined) return known;
    const room = newPoses(count);
    rooms.set(count, room);
    return room;
  };
}
