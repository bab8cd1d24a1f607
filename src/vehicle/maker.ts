import * as z from "zod/mini";

type Schema = z.ZodMiniType;

/** How the parts of a schema are made: with help for each, for printing; or without, so that alike parts can be one. */
export interface Maker {
  /** A number as a file may write it. */
  readonly written: () => Schema;
  /** The schema itself, its help noted somewhere; `id` names a part that stands in several places. */
  readonly tell: (schema: Schema, help: string, id?: string) => Schema;
}

const written = z.union([z.number(), z.string()]);

/** For checking a file: nobody reads the help. */
export const checking: Maker = { written: () => written, tell: (schema) => schema };
