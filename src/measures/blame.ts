import type { Wheel } from "../vehicle/car.ts";

/** What can be in the way: the words of the part that does not reach. */
export type BlamedLink = "upper arm" | "tie rod" | "travel";

/** A place the front end cannot get to: which wheel's link is in the way there, and by how much. A value, never thrown. */
export interface Blame {
  readonly wheel: Wheel;
  readonly link: BlamedLink;
  /** The link's length less the nearest or farthest distance it could have, mm: negative when the link is too short. */
  readonly gap: number;
  /** Rack displacement and wheel travel asked for, mm. */
  readonly rack: number;
  readonly travel: number;
}
