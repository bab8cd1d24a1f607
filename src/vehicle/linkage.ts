import type { PlaceAt } from "./places.ts";
import type { Groups, Value } from "./value.ts";

/** A fault in a drawing: where below the corner's mapping (or below steering), and what is wrong, in a builder's words. */
export interface Fault {
  readonly path: readonly string[];
  readonly message: string;
}

/** What carries the upright: what a car file says of it. */
export interface Linkage {
  /** Its name in the file, under front.linkage. */
  readonly name: string;
  /** What a builder calls it, and what it is in a few words: they stand beside each other in a list. */
  readonly label: string;
  readonly gist: string;
  /** One line for a builder. */
  readonly help: string;
  /** Where it has no suspension: why a file can give no wheel travel, in a builder's words. */
  readonly noTravel?: string;
  /** Its numbers below front.both, front.left and front.right, beside those that every corner has. */
  readonly values: readonly Value[];
  readonly groups: Groups;
  /** Joints of one corner that cannot be built; `place` gives the corner's point at a path such as "lower-arm.joint". */
  readonly faults: (place: PlaceAt) => readonly Fault[];
}
