import type { Groups, Value } from "./value.ts";

/** A key of a mechanism that is one of a few words. */
export interface Choice {
  /** Where it stands below steering. */
  readonly path: readonly string[];
  readonly help: string;
  readonly words: readonly string[];
}

/** What moves the tie rods' inner ends: what a car file says of it. Its numbers stand below steering.<name>. */
export interface Mechanism {
  /** Its name in the file, under steering.mechanism. */
  readonly name: string;
  /** One line for a builder. */
  readonly help: string;
  /** Paths are below steering. */
  readonly values: readonly Value[];
  readonly choices: readonly Choice[];
  readonly groups: Groups;
}
