import type { Drawn, Point } from "./drawn.ts";

/**
 * How a linkage carries an upright, from its own constants into a corner's scratch. It always writes finite numbers:
 * what cannot be met is brought as near as it goes, and the gap is written.
 */
export interface Carry {
  /** From t, the tangent of half the arm's angle from the drawn place, to the steering axis. */
  readonly place: (own: Float64Array, t: number, work: Float64Array) => void;
  /** The rates of the steering axis at the place that was last written. */
  readonly rates: (own: Float64Array, work: Float64Array) => void;
  /** True where the steering axis turns in the upright, so that the upright's places are written too. */
  readonly axisTurnsInUpright: boolean;
}

/** The ends of the steering axis as drawn, in the corner's frame. */
export interface Joints {
  readonly lower: Point;
  readonly upper: Point;
}

/** How a steering mechanism places both inner eyes at an input: from its own constants into both corners' scratch. */
export type InnerEyes = (own: Float64Array, input: number, left: Float64Array, right: Float64Array) => void;

/** One corner made ready to solve: Corner slots, what the linkage keeps for itself, and scratch. */
export interface ReadyCorner {
  readonly constants: Float64Array;
  readonly linkage: Float64Array;
  /** Nothing in it outlives a call of solve. */
  readonly work: Float64Array;
  /** Where the upright's places about its axis stand (Upright slots): in constants, or in work. */
  readonly places: Float64Array;
}

/** A front end made ready to solve. Opaque but for what it was drawn as: use solve and readPose. */
export interface Front {
  readonly drawn: Drawn;
  readonly left: ReadyCorner;
  readonly right: ReadyCorner;
  readonly carry: Carry;
  readonly mechanism: Float64Array;
  readonly innerEyes: InnerEyes;
}

/** Why a drawn front end is no mechanism, and on which wheel. A value: compile never throws on a drawing. */
export interface Refusal {
  readonly refused:
    | "lower-arm-has-no-axis"
    | "upper-arm-has-no-axis"
    | "lower-joint-on-its-axis"
    | "upper-joint-on-its-axis"
    | "joints-coincide"
    | "tie-rod-on-steering-axis"
    | "tie-rod-has-no-length"
    | "drawn-on-dead-point"
    | "arms-in-line"
    | "wheel-does-not-rise"
    | "beam-has-no-axis"
    | "king-pin-on-beam-axis"
    | "strut-has-no-axis"
    | "top-mount-on-lower-joint"
    | "eye-on-column-axis"
    | "pitman-has-no-axis"
    | "pitman-joint-on-its-axis"
    | "idler-has-no-axis"
    | "idler-joint-on-its-axis"
    | "centre-link-in-line"
    | "centre-link-along-shaft"
    | "centre-link-twists";
  /** null where the steering mechanism, which serves both, is meant. */
  readonly wheel: "left" | "right" | null;
}
