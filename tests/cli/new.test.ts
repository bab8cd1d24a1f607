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
    // What is praised in an example would be praised in whatever becomes of the copy.
    const [name = ""] = presetNames();
    const [, own] = presetText(name).split(/^(?=title:)/m);
    expect(readFileSync(here("mine.yaml"), "utf8")).toBe(`# Begun from the example car "${name}".\n${own}`);
    expect((await run(["mine.yaml"])).code).toBe(0);
  });

  it("copies the preset that was asked for, and adds .yaml to a bare name", async () => {
    const { code, out } = await run(["new", "offset", "--from", "widened-offset-rack", "--json"]);
    expect(code).toBe(0);
    expect(readFileSync(here("offset.yaml"), "utf8").split("\n").slice(1).join("\n")).toBe(
      presetText("widened-offset-rack").replace(/^(?:#.*\n)+/, ""),
    );
    expect(Object.keys(JSON.parse(out))).toEqual(["file", "from", "filled"]);
  });

  it("says that a unit is of the blank list alone, and writes nothing", async () => {
    const { code, err } = await run(["new", "metric.yaml", "--units", "mm"]);
    expect(code).toBe(2);
    expect(err).toContain("a new car keeps the units of the car or the readings");
    expect(existsSync(here("metric.yaml"))).toBe(false);
  });

  it("begins with the linkage and mechanism on the stand, and says what is only a guess", async () => {
    const { code, err } = await run(["new", "stand.yaml", "--linkage", "strut", "--mechanism", "relay"]);
    expect(code).toBe(0);
    expect(err).toContain('lines marked "starting value" are guesses to begin with: measure and correct them');
    const text = readFileSync(here("stand.yaml"), "utf8");
    expect(text).toMatch(/linkage: strut/);
    expect(text).toMatch(/mechanism: relay/);
    expect(text).toMatch(/^# Begun from the example car "balanced-two-seater".\ntitle: "?Strut, relay: to be measured/);
    const { code: checked, out: check } = await run(["check", "stand.yaml"]);
    expect(checked).toBe(0);
    expect(check).toMatch(/CLOSE +\d+ sizes are assumed, not measured/);
    expect(text).toMatch(/pitman:\n.*# starting value: measure and correct/);
    const { out } = await run(["steer", "stand.yaml", "--json"]);
    expect(JSON.parse(out).locks.left.inner).toBeGreaterThan(20);
  });

  it("takes a rack's take-off alone", async () => {
    const { out } = await run(["new", "bar.yaml", "--take-off", "centre", "--json"]);
    expect(JSON.parse(out).filled).toContain("left.rack.eye.out");
    expect(readFileSync(here("bar.yaml"), "utf8")).toMatch(/take-off: centre/);
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
    [
      ["fresh.yaml", "--linkage", "leaf"],
      /Allowed choices are double-arm, trailing-arms, strut, pivoting-beam, fixed-kingpin/,
    ],
    [["fresh.yaml", "--mechanism", "relay", "--take-off", "centre"], /--take-off is for a rack: a relay has none/],
    [[], /^rackwright: new lacks FILE: name the file to write/],
  ])("%j writes nothing and says why", async (argv, said) => {
    const files = readdirSync(place.path);
    const { code, out, err } = await run(["new", ...argv]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(said);
    expect(readdirSync(place.path)).toEqual(files);
    expect(existsSync(here("fresh.yaml"))).toBe(false);
  });
});
