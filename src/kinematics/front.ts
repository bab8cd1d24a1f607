import type { Drawn, Point } from "./drawn.ts";

/**
 * How a linkage carries an upright: from the tangent of half its arm's angle from the drawn place to the steering axis
 * and its rates, from a corner's constants into its scratch. It always writes finite numbers: what cannot be met is
 * brought as near as it goes, and the gap is written.
 */
export type Carry = (constants: Float64Array, corner: number, t: number, work: Float64Array, at: number) => void;

/** The ends of the steering axis as drawn, in the corner's frame. */
export interface Joints {
  readonly lower: Point;
  readonly upper: Point;
}

/** How a steering mechanism places both inner eyes at an input: from its constants into both corners' scratch. */
export type InnerEyes = (constants: Float64Array, input: number, work: Float64Array) => void;

/** A front end made ready to solve. Opaque but for what it was drawn as: use solve and readPose. */
export interface Front {
  readonly drawn: Drawn;
  readonly constants: Float64Array;
  /** Scratch of this front alone; nothing in it outlives a call of solve. */
  readonly work: Float64Array;
  readonly carry: Carry;
  /** True where the steering axis turns in the upright, so that carry writes the upright's places too. */
  readonly axisTurnsInUpright: boolean;
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
    | "centre-link-twists";
  /** null where the steering mechanism, which serves both, is meant. */
  readonly wheel: "left" | "right" | null;
}
