import { toJSONSchema } from "zod/mini";
import { wholeSchema } from "./schema.ts";

/** The car file as a JSON Schema (draft 2020-12), as editors and other programs read it. */
export function jsonSchema(): object {
  return { title: "Car file", ...toJSONSchema(wholeSchema()) };
}
