import { mkdirSync, readdirSync, readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const place = folder();
const car = place.put("car.yaml", presetText("widened-offset-rack"));
symlinkSync("loop", join(place.path, "loop"));
symlinkSync("nowhere/at-all", join(place.path, "loose"));
mkdirSync(join(place.path, "folder"));
afterAll(() => place.remove());

const odd = [
  "a b",
  "back\\slash",
  "Ümläut ½",
  "#hash 100%41?",
  "line\nfeed",
  `quo'te"`,
  "$HOME `x`",
  "\u{1f697}\u200d",
  "--dash",
];

describe("a name with blanks, signs and letters of other scripts", () => {
  it.each(odd)("is a folder's and a file's like any other: %j", async (name) => {
    const own = join(place.path, name);
    mkdirSync(own);
    const file = join(own, `${name}.yaml`);
    expect(await run(["new", file])).toMatchObject({ code: 0, out: "" });
    expect(readdirSync(own)).toEqual([`${name}.yaml`]);
    const { out } = await run(["steer", "balanced-two-seater"]);
    expect(await run(["steer", "--", file])).toMatchObject({ code: 0, out });
    expect(await run(["template", file, "--draw=tab", "--svg", "--out", join(own, "out", name)])).toMatchObject({
      code: 0,
    });
    expect(readdirSync(join(own, "out", name)).join()).toMatch(/^tab[\w-]*\.svg\b/);
    expect(await run(["tape", "donor-front", "--out", join(own, "made")])).toMatchObject({ code: 0 });
    expect(readFileSync(join(own, "made.yaml"), "utf8")).toContain("front:");
    // What is said of a name never puts a control character on the terminal.
    const again = await run(["new", file]);
    expect(again).toMatchObject({ code: 2, err: expect.stringContaining("there is a file of that name already") });
    expect(again.err.trimEnd()).not.toMatch(/[\x00-\x1f\x7f-\x9f]/);
  });
});

describe("a name that can be none", () => {
  const wrong: readonly (readonly [string, string])[] = [
    ["too long", join(place.path, "x".repeat(300))],
    ["through a file", join(car, "x")],
    ["through a link to itself", join(place.path, "loop/x")],
    ["through a link to nothing", join(place.path, "loose/x")],
    ["where nothing can be made", "/proc/x"],
  ];
  const uses: readonly ((name: string) => readonly string[])[] = [
    (name) => [name],
    (name) => ["check", name],
    (name) => ["compare", car, name],
    (name) => ["sheet", car, "--from", name],
    (name) => ["match", car, name],
    (name) => ["match", "balanced-two-seater", "as-built", "--out", name],
    (name) => ["tape", name],
    (name) => ["tape", name, "--blank", "double-arm"],
    (name) => ["tape", "donor-front", "--against", name],
    (name) => ["tape", "donor-front", "--out", name],
    (name) => ["template", car, "--draw=tab", "--out", name],
    (name) => ["new", name],
    (name) => ["new", join(place.path, "q.yaml"), "--from", name],
    (name) => ["new", join(place.path, "q.yaml"), "--from-tape", name],
  ];

  it.each(wrong)("is refused by every command, and nothing is written: %s", async (_, name) => {
    const before = readdirSync(place.path);
    for (const use of uses) {
      const { code, err } = await run(use(name));
      expect({ code, err }, use("NAME").join(" ")).toMatchObject({ code: 2 });
      expect(err, use("NAME").join(" ")).not.toMatch(/a fault|^\s+at /m);
    }
    expect(readdirSync(place.path)).toEqual(before);
  });
});
