import * as z from "zod/mini";
import { linkages } from "./linkages.ts";
import type { Maker } from "./maker.ts";
import { mechanisms } from "./mechanisms.ts";
import { carSchema } from "./schema.ts";
import { sectionNames } from "./sections.ts";

/** The car file as a JSON Schema (draft 2020-12), with help for every key, as editors and other programs read it. */
export function jsonSchema(): object {
  const metadata = z.registry<{ description: string; id?: string }>();
  const telling: Maker = {
    written: () => z.union([z.number(), z.string()]),
    tell: (schema, description, id) => {
      metadata.add(schema, id === undefined ? { description } : { description, id });
      return schema;
    },
  };
  return { title: "Car file", ...z.toJSONSchema(carSchema(linkages, mechanisms, sectionNames, telling), { metadata }) };
}
