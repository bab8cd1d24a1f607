import type { Wheel } from "../words.ts";

/** What a reading is good to, mm or rad: 19 of 20 readings are off by no more (two standard deviations). */
export type Tolerance = number;

/** Where the steering stood: against its stop, or so far from its middle (mm of rack, rad of column, to the left positive). */
export type Stood = "lock" | number;

/**
 * One reading of a built car. Angles rad, lengths mm. Of turn plates: how far each wheel turned from straight ahead, toward
 * the turn; what was not read is null.
 */
export type CarReading = { readonly tolerance: Tolerance; readonly line: number } & (
  | {
      readonly kind: "turn";
      readonly turn: Wheel;
      readonly left: number | null;
      readonly right: number | null;
      readonly stood: Stood | null;
    }
  /** Change of a wheel's toe from ride height, straight ahead: toe-in positive. Travel in bump positive. */
  | { readonly kind: "bump"; readonly wheel: Wheel; readonly travel: number; readonly toe: number }
  /** Of each wheel, straight ahead at ride height, toe-in positive. */
  | { readonly kind: "toe"; readonly value: number }
  | { readonly kind: "camber" | "caster" | "rod"; readonly wheel: Wheel; readonly value: number }
  /** Where the rack or the column stands with the wheels straight ahead, from its middle, to the left positive. */
  | { readonly kind: "straight"; readonly value: number }
  /** Between two points of the car, straight ahead at ride height. */
  | { readonly kind: "between"; readonly from: string; readonly to: string; readonly value: number }
);

/** How truly the car was built to its file, and the file measured: what its places, angles and rods may be off by. */
export interface BuiltTo {
  readonly length: Tolerance;
  readonly angle: Tolerance;
  /** Of some quantities, by the path of both sides as one, such as "tie-rod.outer.ahead". */
  readonly of: ReadonlyMap<string, Tolerance>;
}

/** What was read on a built car. */
export interface CarReadings {
  readonly title: string | null;
  readonly readings: readonly CarReading[];
  readonly builtTo: BuiltTo;
}
