import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it } from "vitest";
import { presetNames } from "../../src/files/presets.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const place = folder();
const before = process.cwd();
beforeEach(() => process.chdir(place.path));
afterEach(() => process.chdir(before));
afterAll(() => place.remove());

const here = (name: string) => join(place.path, name);

describe("new", () => {
  it("copies the first preset to a file, and says what to do next on stderr", async () => {
    const { code, out, err } = await run(["new", "mine.yaml"]);
    expect({ code, out }).toEqual({ code: 0, out: "" });
    expect(err).toBe(`Wrote mine.yaml, a copy of the preset ${presetNames()[0]}. Open it with: rackwright mine.yaml\n`);
    expect(readFileSync(here("mine.yaml"), "utf8")).toBe(presetText(presetNames()[0]));
    expect((await run(["mine.yaml"])).code).toBe(0);
  });

  it("copies the preset that was asked for, and adds .yaml to a bare name", async () => {
    const { code, out } = await run(["new", "offset", "--from", "widened-offset-rack", "--json"]);
    expect(code).toBe(0);
    expect(readFileSync(here("offset.yaml"), "utf8")).toBe(presetText("widened-offset-rack"));
    expect(Object.keys(JSON.parse(out))).toEqual(["file", "from"]);
  });

  it("never touches a file that is there", async () => {
    place.put("kept.yaml", "mine\n");
    const { code, out, err } = await run(["new", "kept.yaml"]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain("there is a file of that name already");
    expect(readFileSync(here("kept.yaml"), "utf8")).toBe("mine\n");
  });

  it.each([
    [["nowhere/car.yaml"], /the folder it should be in is not there/],
    [[""], /no file is named/],
    [["/proc/car.yaml"], /cannot be saved/],
    [["."], /folder|already/],
    [["fresh.yaml", "--from", "rack-ahed"], /no example car is called "rack-ahed": did you mean rack-ahead\?/],
    [[], /missing required argument 'FILE'/],
  ])("%j writes nothing and says why", async (argv, said) => {
    const files = readdirSync(place.path);
    const { code, out, err } = await run(["new", ...argv]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(said);
    expect(readdirSync(place.path)).toEqual(files);
    expect(existsSync(here("fresh.yaml"))).toBe(false);
  });
});
