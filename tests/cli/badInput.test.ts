import { mkdirSync, readFileSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const place = folder();
afterAll(() => place.remove());

const good = presetText("widened-offset-rack");
const with_ = (found: string, instead: string) => {
  if (!good.includes(found)) throw new Error(`the example no longer holds ${found}`);
  return good.replace(found, instead);
};

/** Nine lists of nine of the list before, twelve times over: 282 billion words in half a kilobyte. */
const bomb = [
  "a0: &a0 [x, x, x, x, x, x, x, x, x]",
  ...Array.from({ length: 11 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(", ")}]`),
].join("\n");

/** The lines and columns are where the editor's cursor must go. */
const files: readonly (readonly [name: string, text: string | Uint8Array, said: RegExp])[] = [
  ["empty.yaml", "", /^empty\.yaml: .*empty/],
  ["binary.yaml", new Uint8Array([0x7f, 0x45, 0x4c, 0x46, 0, 1, 2, 255, 254]), /^binary\.yaml: .*not a text file/],
  ["latin.yaml", new Uint8Array([0x74, 0x3a, 0x20, 0xe9, 0x0a]), /^latin\.yaml: .*UTF-8/],
  ["broken.yaml", "title: x\nfront: { linkage: [\nunits: in\n", /^broken\.yaml:\d+:\d+: /],
  ["bomb.yaml", bomb, /^bomb\.yaml: .*too many times/],
  [
    "key.yaml",
    with_("wheelbase: 68", "wheelbase: 68\nwheelbse: 3"),
    /^key\.yaml:13:1: .*unknown key "wheelbse".*"wheelbase"/,
  ],
  ["type.yaml", with_("wheelbase: 68", "wheelbase: [68]"), /^type\.yaml:12:12: wheelbase: .*a list.*expected a length/],
  [
    "word.yaml",
    with_("up: 13.25", "up: high"),
    /^word\.yaml:24:\d+: front\.both\.upper-arm\.front\.up: .*"high".*expected a length|not a length/,
  ],
  ["absent.yaml", with_("wheelbase: 68\n", ""), /^absent\.yaml:\d+:\d+: wheelbase: missing/],
  [
    "negative.yaml",
    with_("eye-to-eye: 13", "eye-to-eye: -13"),
    /^negative\.yaml:33:49: steering\.rack\.eye-to-eye: .*-13.*expected/,
  ],
  ["absurd.yaml", with_("wheelbase: 68", "wheelbase: 680000"), /^absurd\.yaml:12:12: wheelbase: .*680000.*expected/],
  ["infinite.yaml", with_("wheelbase: 68", "wheelbase: .inf"), /^infinite\.yaml:12:12: wheelbase: /],
  ["nan.yaml", with_("wheelbase: 68", "wheelbase: .nan"), /^nan\.yaml:12:12: wheelbase: .*expected a length/],
  [
    "coincident.yaml",
    with_("joint: { ahead: -0.7, out: 20.3, up: 14 }", "joint: { ahead: 0.2, out: 21.5, up: 7 }"),
    /^coincident\.yaml:26:\d+: .*same place/,
  ],
  [
    "short.yaml",
    with_("# length: 16 ", "length: 12 "),
    /^short\.yaml:29:\d+: front\.both\.tie-rod\.length: .*rack 0, travel 0.*left tie rod is \d+\.\d+ in too short/,
  ],
  [
    "long.yaml",
    with_("# length: 16 ", "length: 60 "),
    /^long\.yaml:29:\d+: front\.both\.tie-rod\.length: .*left tie rod is \d+\.\d+ in too long/,
  ],
];

const commands = ["steer", "bump", "pose", "--summary"];

describe("a bad car file", () => {
  it.each(files)(
    "%s is refused with 2, where it is wrong and what would be right, by every command",
    async (name, text, said) => {
      const path = place.put(name, text);
      for (const command of commands) {
        const { code, out, err } = await run([command, path]);
        expect({ code, out }, command).toEqual({ code: 2, out: "" });
        expect(err.replaceAll(`${place.path}/`, ""), command).toMatch(said);
        expect(err, command).not.toMatch(/\n\s+at |Error:|undefined/);
      }
      expect(readFileSync(path)).toEqual(Buffer.from(text));
    },
  );

  it("says all that is wrong, a line each", async () => {
    const path = place.put("two.yaml", with_("wheelbase: 68", "wheelbase: 68\nwheelbse: 3\ncolour: red"));
    const { err } = await run(["steer", path]);
    expect(err.trimEnd().split("\n").length).toBe(2);
  });

  it("cannot move the terminal's cursor by what it holds", async () => {
    const path = place.put("escape.yaml", with_("title: Rail", 'title: "\\e[2J\\aRail"\n# '));
    const { code, err } = await run(["steer", path]);
    expect(code).toBe(2);
    expect(err).not.toContain("\u001b");
    expect(err).not.toContain("\u0007");
  });
});

describe("a car that is not there", () => {
  it("is refused with 2: a missing file, a folder, a link to nothing, a file in a file", async () => {
    mkdirSync(join(place.path, "folder.yaml"));
    symlinkSync(join(place.path, "nowhere"), join(place.path, "link.yaml"));
    writeFileSync(join(place.path, "plain"), "x");
    const names = ["missing.yaml", "plain/car.yaml"];
    for (const name of names) {
      const { code, out, err } = await run(["steer", join(place.path, name)]);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toMatch(/^rackwright: there is no file ".*", and no preset of that name\. /);
    }
    for (const [name, words] of [
      ["folder.yaml", "it is a folder, not a car file"],
      ["link.yaml", "it is a link to a file that is not there"],
    ]) {
      const { code, err } = await run(["steer", join(place.path, name)]);
      expect(code).toBe(2);
      expect(err).toContain(words);
    }
  });

  it("gets the file or the preset that was most likely meant", async () => {
    place.put("buggy.yaml", good);
    expect((await run(["pose", join(place.path, "buggy")])).code).toBe(0);
    expect((await run(["pose", "widend-offset-rack"])).err).toContain('Did you mean "widened-offset-rack"?');
  });

  it("is not read when it is a device, which may never end", async () => {
    const { code, err } = await run(["steer", "/dev/zero"]);
    expect(code).toBe(2);
    expect(err).toContain("a device or a pipe, not a car file");
  });
});

describe("bad usage", () => {
  const car = place.put("car.yaml", good);

  it.each([
    [["steer"], /steer lacks FILE, a car file, or a preset's name\./],
    [["compare", car], /compare lacks B, another car\.\nTry: rackwright compare --help/],
    [["match"], /match lacks FILE, the car file .*; and READINGS, a file of what was read/],
    [
      ["steer", car, "more"],
      /steer takes only FILE: "more" is left over\. A name with spaces in it goes between quotes/,
    ],
    [
      ["steer", car, "rack-ahead"],
      /"rack-ahead" is left over\. Two cars beside each other: rackwright compare .* rack-ahead/,
    ],
    [["steer", car, "one", "two"], /"one" and 1 more are left over/],
    [["schema", "x"], /schema takes no file or name: "x" is left over/],
    [["completion", "tcl"], /SHELL cannot be "tcl": it is one of bash, /],
    [["help", "stere"], /help "stere": there is no such command\. Did you mean "steer"\?/],
    [["help", "xyzzy"], /there is no such command\. The commands are steer, /],
    [["steer", car, "--form=1"], /unknown option '--form=1'[\s\S]*--from/],
    [["steer", car, "--from"], /argument missing/],
    [["steer", car, "--from="], /--from "" is not a length/],
    [["steer", car, "--from=far"], /--from "far" is not a length/],
    [["steer", car, "--to=1e400"], /--to "1e400" is not a length/],
    [["steer", car, "--step=0"], /--step "0" is no step/],
    [["steer", car, "--step=-1"], /--step "-1" is no step/],
    [["steer", car, "--step=0.000001"], /makes \d+ rows, more than 10001: give a larger step/],
    [["steer", car, "--units=cubits"], /Allowed choices are in, mm/],
    [["steer", car, "--json", "--csv"], /cannot be used with/],
    [["pose", car, "--csv"], /unknown option '--csv'/],
    [["pose", car, "--rack=1,5"], /--rack "1,5" is not a length: it has a comma/],
    [["pose", car, "--travel-left=NaN"], /--travel-left "NaN" is not a length/],
    [["bump", car, "--rack=5 kg"], /--rack "5 kg" is not a length/],
    [["stear", car], /"stear" is no command, no file and no preset\. Did you mean "steer"\?/],
    [["stear", car, "--from=1"], /Did you mean "steer"\?/],
    [["bmup"], /there is no file "bmup", and no preset of that name\. Did you mean "bump"\?/],
    [["xyzzy", car], /The commands are steer, .*bump, /],
    [["--nope"], /unknown option '--nope'/],
    [[""], /there is no file ""/],
  ] as const)("%j ends with 2 and one clear message", async (argv, said) => {
    const { code, out, err } = await run(argv);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/^rackwright: /);
    expect(err).toMatch(said);
    expect(err).not.toMatch(/\n\s+at /);
  });
});
