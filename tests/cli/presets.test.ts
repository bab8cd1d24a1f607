import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { run } from "./run.ts";
import { summaryShape } from "./shapes.ts";

/** The files of a folder of examples, by their names. */
function namesIn(folder: string): readonly string[] {
  const files = readdirSync(new URL(`../../${folder}`, import.meta.url)).filter((file) => file.endsWith(".yaml"));
  return files.map((file) => file.replace(/\.yaml$/, "")).sort();
}

const sheets = namesIn("presets/sheets");
const readings = namesIn("presets/readings");
const names = [...namesIn("presets"), ...sheets, ...readings];
const textOf = (name: string) =>
  presetText(sheets.includes(name) ? `sheets/${name}` : readings.includes(name) ? `readings/${name}` : name);

describe("presets", () => {
  it("are listed with title and what is odd about them", async () => {
    const { code, out, err } = await run(["presets"]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out.split("\n").filter((line) => /^[a-z-]+$/.test(line))).toEqual(names);
    expect(out).toContain("widened-offset-rack\n    Rail two-seater, front widened, offset rack\n");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  it("are listed as JSON", async () => {
    const listed = JSON.parse((await run(["presets", "--json"])).out);
    expect(listed.map((each: { name: string }) => each.name)).toEqual(names);
    for (const each of listed) expect(Object.keys(each)).toEqual(["name", "kind", "title", "about"]);
    const isSheet = (each: { kind: string }) => each.kind === "sheet";
    expect(listed.filter(isSheet).map((each: { name: string }) => each.name)).toEqual(sheets);
  });

  it.each(names)("print the file of %s to the last byte", async (name) => {
    expect(await run(["presets", name])).toMatchObject({ code: 0, out: textOf(name), err: "" });
    expect(JSON.parse((await run(["presets", name, "--json"])).out)).toEqual({ name, text: textOf(name) });
  });

  it("of a name that there is not are refused, with the nearest one", async () => {
    const { code, out, err } = await run(["presets", "rack-ahed"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("rack-ahead");
  });

  it("are not found outside of their folder", async () => {
    expect((await run(["presets", "../package"])).code).toBe(2);
  });

  it.each(["balanced-two-seater", "cut-rods-off-middle", "rack-ahead", "widened-offset-rack"])(
    "%s turns its inner wheels 30 to 38 degrees at the locks",
    async (name) => {
      const { figures } = summaryShape.parse(JSON.parse((await run([name, "--json"])).out));
      for (const lock of [figures.leftLockInner, figures.rightLockInner]) {
        expect(lock).toBeGreaterThan(30);
        expect(lock).toBeLessThan(38);
      }
    },
  );
});
