import type { Fault } from "./linkage.ts";
import type { Groups, Value } from "./value.ts";

/** A key of a mechanism that is one of a few words. */
export interface Choice {
  /** Where it stands below steering. */
  readonly path: readonly string[];
  readonly help: string;
  readonly words: readonly string[];
  readonly required: boolean;
}

/** What moves the tie rods' inner ends: what a car file says of it. */
export interface Mechanism {
  /** Its own name, unlike any other's. */
  readonly name: string;
  /** What the file says under steering.mechanism: racks share it, and are told apart by their take-off. */
  readonly word: string;
  readonly takeOff: "end" | "centre" | null;
  /** The mapping below steering that holds its numbers. */
  readonly section: string;
  /** What the builder moves: the rack itself, or the steering column. */
  readonly input: "rack" | "column";
  /** What a builder calls it, and what it is in a few words: they stand beside each other in a list. */
  readonly label: string;
  readonly gist: string;
  /** One line for a builder. */
  readonly help: string;
  /** Paths are below steering. */
  readonly values: readonly Value[];
  readonly choices: readonly Choice[];
  readonly groups: Groups;
  /** Parts that cannot be built; `read` gives the number (mm or rad) at a path below steering, such as "rack.tilt". */
  readonly faults: (read: (path: string) => number) => readonly Fault[];
}
