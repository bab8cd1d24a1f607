import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { fromJSONSchema } from "zod";
import { jsonSchema } from "../../src/vehicle/json-schema.ts";
import { quantities } from "../../src/vehicle/quantities.ts";
import { plain, presets } from "./cars.ts";

type Node = { readonly [key: string]: unknown };

const schema = jsonSchema() as Node;

/** Every schema inside a schema, itself included. */
function inside(node: unknown): readonly Node[] {
  if (typeof node !== "object" || node === null) return [];
  return [...(Array.isArray(node) ? [] : [node as Node]), ...Object.values(node).flatMap(inside)];
}

describe("the printed JSON Schema", () => {
  test("is of draft 2020-12, and prints as JSON as it is", () => {
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  test("may be asked for again", () => {
    expect(jsonSchema()).toEqual(schema);
  });

  test("says of every key what it is", () => {
    const keyed = inside(schema).flatMap((node) =>
      node.type === "object" ? Object.entries(node.properties ?? {}) : [],
    );
    expect(keyed.length).toBeGreaterThan(50);
    const silent = keyed.filter(([, value]) => !value.description && !value.$ref);
    expect(silent.map(([key]) => key)).toEqual([]);
  });

  test("holds the help of every quantity", () => {
    const all = JSON.stringify(schema);
    for (const { help } of quantities) expect(all).toContain(JSON.stringify(help).slice(1, -1));
  });

  test("lets no mapping have keys that it does not name, but the names that a builder gives his tubes and holes", () => {
    const open = inside(schema).filter((node) => node.type === "object" && node.additionalProperties !== false);
    expect(open.map(({ description }) => description)).toEqual([
      "Holes for the rack's mounts, by names of your own.",
      "Tubes of the frame near the front end, by names of your own.",
    ]);
  });

  test("read back as a schema, takes every example car and refuses what is none", () => {
    const back = fromJSONSchema(schema as Parameters<typeof fromJSONSchema>[0]);
    for (const [name, text] of presets) expect(back.safeParse(parse(text)).success, name).toBe(true);
    for (const wrong of [
      plain.replace("units: mm", "units: m"),
      plain.replace("wheelbase: 2000\n", ""),
      plain.replace("wheelbase: 2000", "wheelbase: []"),
      plain.replace("    wheel:", "    weel:"),
      plain.replace("double-arm", "no-arm"),
      `${plain}colour: red\n`,
    ])
      expect(back.safeParse(parse(wrong)).success, wrong).toBe(false);
  });
});
