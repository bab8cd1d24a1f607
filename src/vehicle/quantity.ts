import type { Wheel } from "./words.ts";

/** "ratio" is a number without a unit, such as a steering box's turns for one turn of its arm. */
export type QuantityKind = "length" | "angle" | "ratio";

/**
 * What a quantity may be used for: "adjust" stands first among all that can be moved on the screen, "find" may be
 * searched, "build" has a build tolerance, "uncertain" may be corrected by readings.
 */
export type Role = "adjust" | "find" | "build" | "uncertain";

/** One input of the car: the only list of inputs is made of these. */
export interface Quantity {
  /** Unique, such as "left.tie-rod.outer.ahead", "rack.offset" or "left.rack.travel". */
  readonly id: string;
  /** The two sides of one quantity share this, such as "tie-rod.outer.ahead"; equal to id where there is one only. */
  readonly pair: string;
  /** Its own place in the file, from the root, such as front.left.tie-rod.outer.ahead. */
  readonly path: readonly string[];
  /** The place in the file that speaks for both sides, such as front.both.tie-rod.outer.ahead; null where there is none. */
  readonly shared: readonly string[] | null;
  /** Which wheel (or, for rack travel, which way) it belongs to; null where the car has only one of it. */
  readonly wheel: Wheel | null;
  /** Its place in Car.numbers. */
  readonly index: number;
  readonly kind: QuantityKind;
  /** A builder's words, without the side, such as "Tie-rod tab, ahead". */
  readonly label: string;
  /** One line: what it is, from where it is measured, its sign. */
  readonly help: string;
  /** The sensible range, mm, rad or a bare number: beyond it a file is refused as absurd. */
  readonly low: number;
  readonly high: number;
  /** What numbers hold when the file leaves it out, mm or rad; null where a file must give it. */
  readonly absent: number | null;
  readonly roles: readonly Role[];
}
