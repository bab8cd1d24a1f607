import type { Drawn } from "../kinematics/drawn.ts";
import type { Front } from "../kinematics/front.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Setting } from "./front.ts";
import type { Pair } from "./span.ts";
import type { Stop } from "./stops.ts";

/** What is known of a front end before any table is made. Lengths mm, angles rad; inputs mm of rack or rad of column. */
export interface FrontEnd extends Setting {
  /** How far the input goes to each side at ride height: to what stops it first. */
  readonly inputTravel: Pair<number>;
  /**
   * How far it goes at the travel that lets it go furthest: a wheel that bump steer turns back meets its stop later. What is
   * asked over the whole range is asked as far as this.
   */
  readonly furthestInput: Pair<number>;
  /** What stops it to each side. */
  readonly acting: Pair<Stop>;
  readonly drawn: Drawn;
  readonly front: Front;
  /** The input at which the car is drawn. */
  readonly straightAhead: number;
  /** The input at travel 0 where both steers add up to nothing; null when there is none in reach. */
  readonly zero: number | null;
  /** Both wheels' absolute steer there; null with zero. */
  readonly zeroSteer: Pair<number> | null;
  /** The way the road wheels turn as the input goes to the left; null when they cannot be told to turn either way. */
  readonly inputLeftTurns: Wheel | null;
  /** Tie rods, eye to eye: as given, or as they must be cut. */
  readonly rodLengths: Pair<number>;
  /** Lateral distance of the drawn contact points. */
  readonly track: number;
  /** Lateral distance between the places where the drawn steering axes meet the ground. */
  readonly kingPinSpacing: number;
  /** The solved pose at travel 0 at an input; its numbers are good until the next call. */
  readonly ridePose: (input: number) => Float64Array;
}
