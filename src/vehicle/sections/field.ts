import type * as z from "zod/mini";
import type { Maker } from "../maker.ts";
import type { Tree } from "../tree.ts";
import type { LengthUnit } from "../words.ts";
import type { Range } from "../worth.ts";

type Path = readonly string[];

/** Where a field is read: the places in the file that may hold it, its own first, then the one that both sides share. */
export interface Look {
  readonly tree: Tree;
  readonly units: LengthUnit;
  readonly places: readonly Path[];
  /** Notes what is wrong at a place of the file. */
  readonly complain: (path: Path, message: string) => void;
}

/**
 * One part of an optional section of the car file, described once: its schema, its help, and how it is read into a T.
 * Numbers are mm, rad or bare once read.
 */
export interface Field<T> {
  /** One line: what it is, from where it is measured, its sign. */
  readonly help: string;
  /** What may stand here, in a builder's words, such as "vertical or crosswise". */
  readonly expected: string;
  /** The kind and sensible range of a number; absent of anything else. */
  readonly range?: Range;
  /** Whether a file that has the section must have this too. */
  readonly required: boolean;
  /** Its schema. `partial`: any key may be missing, as below both, left and right, of which only the whole must be complete. */
  readonly schema: (make: Maker, partial: boolean) => z.ZodMiniType;
  /** What the file says; what it is worth where the file says nothing; undefined after a complaint. */
  readonly read: (look: Look) => T | undefined;
  /** The keys that may stand below it, in the order of the help; none where it is a single value. */
  readonly keys: readonly string[];
  /** The field under one of its keys; undefined where there is none. */
  readonly below: (key: string) => Field<unknown> | undefined;
}

/** What a field is read into. */
export type Worth<F> = F extends Field<infer T> ? T : never;
