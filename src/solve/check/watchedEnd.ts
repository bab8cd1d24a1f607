import { Side } from "../../kinematics/slots.ts";
import { sideAt } from "../../measures/points.ts";
import { type RodEndInPlace, swing } from "../../measures/range/rodEnds.ts";
import type { Watched } from "../../measures/range/watched.ts";
import { PLACES } from "./sweep.ts";

/** A rod end that is watched: what is left of its rated angle, rad; and all its shank's directions over the range. */
export interface WatchedEnd extends Watched {
  readonly end: RodEndInPlace;
  readonly shanks: Float64Array;
  /** How many of them are noted so far. */
  count: number;
}

/** Watches what is left of a rod end's rated angle. */
export function watchEnd(end: RodEndInPlace): WatchedEnd {
  return {
    wheel: end.wheel,
    end,
    shanks: new Float64Array(3 * PLACES * PLACES),
    count: 0,
    read: (poses, at) => end.end.angle - swing(end.shankIn(poses, at), end.bolt),
  };
}

/** Notes where the shank points in a pose. */
export function noteShank(watched: WatchedEnd, poses: Float64Array): void {
  const at = sideAt(watched.wheel);
  if (poses[at + Side.Blame] !== 0) return;
  const { x, y, z } = watched.end.shankIn(poses, at);
  const i = 3 * watched.count++;
  watched.shanks[i] = x;
  watched.shanks[i + 1] = y;
  watched.shanks[i + 2] = z;
}

/** The directions noted so far. */
export function shanksOf({ shanks, count }: WatchedEnd): Float64Array {
  return shanks.subarray(0, 3 * count);
}
