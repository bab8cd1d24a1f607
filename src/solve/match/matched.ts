import type { Study } from "../../measures/study.ts";
import type { Prediction } from "./predictions.ts";
import type { Unknown } from "./unknowns.ts";

/** A number that was read, beside what the car on file and the matched one give. mm or rad. */
export interface ReadingRow {
  readonly prediction: Prediction;
  readonly onFile: number;
  readonly matched: number;
  /** By how much it reads too much, where it does not go with the others. */
  readonly wrong: Wrong | null;
  /** False where nothing else says what it says: wrong or right, it would not show. */
  readonly checked: boolean;
  /** True of an angle that does not go with the file, and would with its sign the other way. */
  readonly flipped: boolean;
}

/** Something that does not go with all else; `or`: what could be wrong in its place, which these readings cannot tell. */
export interface Wrong {
  /** mm or rad, with one standard deviation. */
  readonly by: number;
  readonly deviation: number;
  readonly or: readonly Suspect[];
}

/** A number that was read, or a place on file. */
export type Suspect = { readonly prediction: Prediction } | { readonly unknown: Unknown };

/** A part of the car, beside its file. */
export interface PartRow {
  readonly unknown: Unknown;
  /** As it is most likely, less as it is on file, mm or rad. */
  readonly moved: number;
  /** One standard deviation of that, mm or rad. */
  readonly deviation: number;
  /** The same as a share of what it was before anything was read: near 1 the readings say nothing of it. */
  readonly share: number;
  /** Where it is further off than a car is built to. */
  readonly off: Wrong | null;
  /**
   * If it were off by more than this, mm or rad, it would most likely be called so (4 of 5 times); null where it would not
   * show.
   */
  readonly leastFound: number | null;
  /**
   * By how much `moved` may be wrong besides, mm or rad, where one place not called off is further off than it is built to,
   * but by less than its leastFound.
   */
  readonly hidden: number;
  /** True where it has moved by more than it is built to, and yet is not surely off. */
  readonly beyond: boolean;
  /** True where it is off, has moved by as much as it is known to, or was not known before. */
  readonly standsOut: boolean;
}

/** Two parts of which the readings tell little but what they do together. */
export interface Entangled {
  readonly parts: readonly [PartRow, PartRow];
  /** −1 to 1. Near 1 they move alike, near −1 against each other. */
  readonly correlation: number;
}

export interface Matched {
  /** The car on file, and as it most likely is. */
  readonly onFile: Study;
  readonly after: Study;
  readonly readings: readonly ReadingRow[];
  /** Those that the readings have a say in, as in the list of inputs. */
  readonly parts: readonly PartRow[];
  /** Parts that could be anywhere in their tolerance for all that was read. */
  readonly untold: readonly Unknown[];
  readonly entangled: readonly Entangled[];
  /** Where the rack or the column stands straight ahead, with one standard deviation; null where nowhere. */
  readonly zero: { readonly value: number; readonly deviation: number } | null;
  /** How likely readings as good as their tolerances fit no better; null where nothing checks anything. */
  readonly chance: number | null;
  readonly converged: boolean;
  /** True where there are hardly more readings than lengths that nobody wrote down: what is off they cannot tell. */
  readonly few: boolean;
}

/** Readings that the car on file cannot be brought to. */
export interface NoMatch {
  readonly unreached: readonly Prediction[];
}
