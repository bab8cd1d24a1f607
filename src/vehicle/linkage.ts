import type { PlaceAt } from "./places.ts";
import type { Groups, Value } from "./value.ts";

/** A fault in a drawing: where below the corner's mapping (or below steering), and what is wrong, in a builder's words. */
export interface Fault {
  readonly path: readonly string[];
  readonly message: string;
}

/**
 * A part of one corner that moves, beside the upright and the tie rod that every corner has. Points are named by their
 * paths below the corner, such as "lower-arm.front".
 */
export interface Body {
  /** Its key in the car file, such as "lower-arm". */
  readonly name: string;
  /** A builder's word, such as "lower arm". */
  readonly label: string;
  /**
   * How it moves: about the line through two places on the frame, or about an axis straight across the car through one,
   * so far that its joint at the upright is where the lower or the upper end of the steering axis is; or with the upright.
   */
  readonly moves:
    | { readonly about: readonly [string, string]; readonly joint: string; readonly end: "lower" | "upper" }
    | { readonly across: string; readonly joint: string; readonly end: "lower" | "upper" }
    | "with the upright";
  /** Its tubes, end to end. */
  readonly tubes: readonly (readonly [string, string])[];
}

/** A joint of one corner that may be a rod end. */
export interface Joint {
  /** Its place, by its path below the corner, and its key below rod-ends. */
  readonly path: readonly [string, string];
  /** A builder's words, such as "lower arm, outer joint". */
  readonly label: string;
  /** The body that a rod end's shank is screwed into unless the file says otherwise, and the one that its bolt is in. */
  readonly shankOn: string;
  readonly boltOn: string;
  /** The shank points from the middle of these places to the joint. */
  readonly from: readonly string[];
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
  /** Its moving parts, for clearance and shocks. */
  readonly bodies: readonly Body[];
  /** Its joints, beside the two of the tie rod, that may be rod ends. */
  readonly joints: readonly Joint[];
  /** Joints of one corner that cannot be built; `place` gives the corner's point at a path such as "lower-arm.joint". */
  readonly faults: (place: PlaceAt) => readonly Fault[];
}
