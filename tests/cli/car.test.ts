import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeEach, describe, expect, it, vi } from "vitest";
import { commandNames } from "../../src/cli/commandNames.ts";
import { presetNames } from "../../src/files/presets.ts";
import { carFigures } from "../../src/measures/carFigures.ts";
import { cautions } from "../../src/output/words.ts";
import { expectClose } from "../close.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";
import { bumpShape, steerShape, summaryShape } from "./shapes.ts";

const place = folder();
const car = place.put("car.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

describe("the summary", () => {
  it("says the five things in a builder's words, and the cautions", async () => {
    const { code, out, err } = await run([car]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out.startsWith("Rail two-seater, front widened, offset rack\n")).toBe(true);
    const said = out.replace(/\s+/g, " ");
    for (const words of [
      "LOCK left: inner 31.8°, outer 24.9° right: inner 34.0°, outer 24.9° inner left lock 2.1° short of right",
      "rack in its middle with the wheels straight",
      "ACKERMANN left: 76 %, inner 2.2° short of ideal (94 % of it)",
      "BUMP left: toes in 7/32 in across the tyre (0.62°) at 3 in droop",
      "right: toes out 13/32 in across the tyre (1.12°) at 3 in droop",
      "both steer right 0.9° at 3 in droop",
      "right: 17.5° at least (rack 2 in left of its middle, 3 in droop): DANGEROUS, under 20°",
      "RODS left: 15 25/32 in (15.782), cut to fit, eye to eye; 0.10° toe-in with the wheels straight",
      "right: 10 13/16 in (10.797), cut to fit",
      ...cautions,
    ])
      expect(said).toContain(words);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
    expect(out).not.toMatch(/STEERS BACKWARDS|NaN|undefined|null/);
  });

  it("is printed in a terminal too when it is asked for", async () => {
    const piped = await run([car]);
    expect(await run([car, "--summary"], { terminal: true })).toEqual(piped);
    expect(await run(["--summary", car], { terminal: true })).toEqual(piped);
  });

  it("says lengths in the unit asked for", async () => {
    const { out } = await run([car, "--units=mm"]);
    expect(out).toContain("left: 400.9 mm, cut to fit");
    expect(out).toContain("at 76.2 mm droop");
  });

  it("says warnings of the file in its text, once", async () => {
    const path = place.put("radius.yaml", presetText("widened-offset-rack").replace("radius: 10.75", "radius: 10"));
    const { code, out, err } = await run([path]);
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^Warning: line 30, column \d+: front\.both\.wheel\.center\.up: /m);
    expect((await run(["steer", path])).err).toMatch(
      /^warning: .*radius\.yaml:30:\d+: front\.both\.wheel\.center\.up: /,
    );
  });

  it("says loudly that the car steers backwards", async () => {
    const path = place.put("backwards.yaml", presetText("widened-offset-rack").replace("moves: right", "moves: left"));
    const { out } = await run([path]);
    expect(out).toContain("*** STEERS BACKWARDS: steering wheel left turns the road wheels right ***");
    expect(summaryShape.parse(JSON.parse((await run([path, "--json"])).out)).steersBackwards).toBe(true);
  });

  it("says loudly that the wheels do not point straight ahead, whether rods or the file make them", async () => {
    // Rods an inch and a half longer than they fit, the tab behind the king pin: both wheels toe in.
    const cut = presetText("widened-offset-rack")
      .replace("# length: 16", "length: 16")
      .replace("offset: -2.5", "offset: 0");
    const rods = place.put("rods.yaml", cut);
    const words = /WHEELS TOE (IN|OUT) \d+\.\d° EACH STRAIGHT AHEAD: rods as cut do not fit/;
    expect((await run([rods])).out.replace(/\s+/g, " ")).toMatch(words);
    for (const command of ["steer", "bump", "pose"]) expect((await run([command, rods])).err, command).toMatch(words);
    const set = place.put("toe.yaml", presetText("widened-offset-rack").replace("toe: 0.1", "toe: 10"));
    expect((await run(["steer", set])).err).toContain(
      "warning: WHEELS TOE IN 10.0° EACH STRAIGHT AHEAD: the car's toe is set so.",
    );
    const usual = place.put("usual.yaml", presetText("widened-offset-rack").replace("toe: 0.1", "toe: 0.9"));
    expect((await run(["steer", usual])).err).toBe("");
  });

  it("says where the car cannot go, and what is in the way, and still ends with 0", async () => {
    const path = place.put("far.yaml", presetText("widened-offset-rack").replace("travel: 2,", "travel: 3,"));
    const { code, out } = await run([path]);
    expect(code).toBe(0);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /Warning: does not close at rack 3 in left of its middle, .*: right tie rod is .* in too short/,
    );
    expect(out).not.toMatch(/NaN|undefined|null/);
    const json = summaryShape.parse(JSON.parse((await run([path, "--json"])).out));
    expect(json.outOfReach).toMatchObject({ wheel: "right", link: "tie rod", rack: 3 });
  });

  it("is JSON with every figure of the whole car", async () => {
    const { code, out } = await run([car, "--json"]);
    expect(code).toBe(0);
    const { figures, ...rest } = summaryShape.parse(JSON.parse(out));
    expect(Object.keys(figures).sort()).toEqual(carFigures.map(({ id }) => id).sort());
    expect(rest).toEqual({
      units: { length: "in", angle: "deg" },
      title: "Rail two-seater, front widened, offset rack",
      job: null,
      date: null,
      asBuilt: null,
      warnings: [],
      steersBackwards: false,
      rods: { left: "fit", right: "fit" },
      outOfReach: null,
    });
    // From the car file's own description: rods cut to fit are 15.782 and 10.797 in.
    expect([figures.rodLengthLeft?.toFixed(3), figures.rodLengthRight?.toFixed(3)]).toEqual(["15.782", "10.797"]);
  });

  it("agrees with the tables that it sums up", async () => {
    const json = async (...argv: string[]) => JSON.parse((await run([...argv, "--json"])).out);
    const { figures } = summaryShape.parse(await json(car));
    const { locks, track } = steerShape.parse(await json("steer", car));
    const { summary } = bumpShape.parse(await json("bump", car));
    expect([figures.leftLockInner, figures.rightLockInner]).toEqual([locks.left?.inner, locks.right?.inner]);
    expect([figures.leftLockAckermann, figures.lockDifferenceInner]).toEqual([
      locks.left?.ackermann,
      locks.difference.inner,
    ]);
    expect(figures.track).toBe(track);
    expectClose(figures.worstBounceSteer, summary.worstBounceSteer, { abs: 1e-12, rel: 0 });
    const worst = Math.max(Math.abs(figures.worstToeLeft ?? 0), Math.abs(figures.worstToeRight ?? 0));
    expectClose(worst, summary.worstToeChange, { abs: 1e-12, rel: 0 });
  });

  it("of every preset comes without a complaint", async () => {
    for (const name of presetNames()) {
      const { code, out, err } = await run([name]);
      expect(code, name).toBe(0);
      expect(err, name).toBe(`note: the preset "${name}"; there is no file of that name here.\n`);
      expect(out, name).not.toMatch(/NaN|undefined|null/);
    }
  });
});

describe("which car", () => {
  const before = process.cwd();
  beforeEach(() => {
    vi.spyOn(process, "cwd");
    process.chdir(place.path);
  });
  afterEach(() => {
    process.chdir(before);
    vi.restoreAllMocks();
  });

  it("is the first preset when none is named", async () => {
    const [first] = presetNames();
    expect((await run([])).out).toBe((await run([first])).out);
    expect((await run([])).err).toBe("");
  });

  it("is the file where a file and a preset have one name, and it is said", async () => {
    const [name] = presetNames();
    writeFileSync(join(place.path, name), presetText("widened-offset-rack"));
    const { out, err } = await run([name]);
    expect(out).toContain("Rail two-seater, front widened");
    expect(err).toBe(`note: the file "${name}" here, not the preset of that name.\n`);
  });

  it("may begin with a dash after two dashes, or be called as a command is", async () => {
    writeFileSync(join(place.path, "-odd.yaml"), presetText("widened-offset-rack"));
    expect(await run(["--", "-odd.yaml"])).toMatchObject({ code: 0, err: "" });
    expect(await run(["steer", "--", "-odd.yaml"])).toMatchObject({ code: 0, err: "" });
    mkdirSync("cars", { recursive: true });
    writeFileSync(join(place.path, "steer"), presetText("widened-offset-rack"));
    expect((await run(["./steer"])).out).toContain("LOCK");
  });
});

describe("the screen", () => {
  const terminal = { terminal: true };

  it("opens on the file that is named, or on a preset", async () => {
    expect(await run([car], terminal)).toEqual({ code: 0, out: "", err: "", screen: { file: car } });
    expect((await run([], terminal)).screen).toEqual({ preset: presetNames()[0] });
    expect((await run(["rack-ahead"], terminal)).screen).toEqual({ preset: "rack-ahead" });
    expect((await run([car, "--ascii"], terminal)).screen).toEqual({ file: car, ascii: true, plain: false });
  });

  it("does not open where there is no terminal; one that cannot be drawn on is talked to in lines", async () => {
    expect((await run([car])).screen).toBeNull();
    const dumb = await run([car], { terminal: true, env: { TERM: "dumb" } });
    expect(dumb).toMatchObject({ screen: { file: car }, out: "" });
    expect((await run([car], { env: { TERM: "dumb" } })).out).toContain("LOCK");
  });

  it("does not open for a command, for help, or for a car that is not there", async () => {
    for (const name of commandNames) expect((await run([name], terminal)).screen, name).toBeNull();
    const missing = await run(["missing.yaml"], terminal);
    expect(missing).toMatchObject({ code: 2, screen: null });
    expect(missing.err).toContain('there is no file "missing.yaml"');
  });

  it("does not open where JSON was asked for", async () => {
    const { out, screen } = await run([car, "--json"], terminal);
    expect(screen).toBeNull();
    expect(summaryShape.safeParse(JSON.parse(out)).success).toBe(true);
  });
});

describe("characters", () => {
  it("are plain ASCII with --ascii or where the locale is not UTF-8, in every report", async () => {
    for (const argv of [[car], ["steer", car], ["bump", car], ["pose", car], ["presets"]]) {
      const asked = await run([...argv, "--ascii"]);
      expect(/^[\x20-\x7e\n]*$/.test(asked.out), argv[0]).toBe(true);
      expect(await run(argv, { env: { LC_ALL: "C" } })).toEqual(asked);
    }
    expect((await run([car, "--ascii"])).out).toContain("inner 31.8d");
    expect((await run([car], { env: { LANG: "en_US.UTF-8" } })).out).toContain("31.8°");
  });

  it("have no colour, in a terminal or not", async () => {
    const { out } = await run(["steer", car], { terminal: true, env: { FORCE_COLOR: "3" } });
    expect(out).not.toContain("\u001b");
  });
});
