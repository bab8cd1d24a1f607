import { describe, expect, it } from "vitest";
import { jsonSchema } from "../../src/vehicle/json-schema.ts";
import { run } from "./run.ts";

describe("schema", () => {
  it("prints the car file's JSON Schema, with --json and without", async () => {
    const plain = await run(["schema"]);
    expect(plain).toMatchObject({ code: 0, err: "" });
    expect(JSON.parse(plain.out)).toEqual(JSON.parse(JSON.stringify(jsonSchema())));
    expect(await run(["schema", "--json"])).toEqual(plain);
    expect(Object.keys(JSON.parse(plain.out).properties)).toContain("wheelbase");
  });
});
