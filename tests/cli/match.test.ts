import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { presetText } from "../measures/carTexts.ts";
import { folder, run } from "./run.ts";
import { units } from "./shapes.ts";

const place = folder();
afterAll(() => place.remove());

const suspects = z.array(z.string());
const shape = z.strictObject({
  units,
  premise: z.string(),
  title: z.string(),
  readingsTitle: z.string().nullable(),
  chance: z.number().nullable(),
  converged: z.boolean(),
  undecided: z.enum(["few", "which"]).nullable(),
  straightAhead: z.strictObject({
    input: z.enum(["rack", "column"]),
    onFile: z.number().nullable(),
    matched: z.number().nullable(),
    deviation: z.number().nullable(),
  }),
  rods: z.strictObject({ left: z.number(), right: z.number() }),
  readings: z.array(
    z.strictObject({
      name: z.string(),
      line: z.number(),
      unit: z.string(),
      read: z.number(),
      tolerance: z.number(),
      onFile: z.number(),
      matched: z.number(),
      checked: z.boolean(),
      flipped: z.boolean(),
      wrong: z.strictObject({ by: z.number(), deviation: z.number(), or: suspects }).nullable(),
    }),
  ),
  parts: z.array(
    z.strictObject({
      quantities: z.array(z.string()),
      label: z.string(),
      unit: z.string(),
      onFile: z.number(),
      tolerance: z.number().nullable(),
      moved: z.number(),
      deviation: z.number(),
      share: z.number(),
      leastFound: z.number().nullable(),
      hidden: z.number(),
      beyond: z.boolean(),
      off: z.strictObject({ or: suspects }).nullable(),
    }),
  ),
  untold: z.array(z.string()),
  entangled: z.array(z.strictObject({ parts: z.array(z.string()), correlation: z.number() })),
});

describe("match", () => {
  it("says what is off on the example's car, within the page, and writes it as a new file", async () => {
    const out = place.put("there.yaml", "title: x\n").replace("there.yaml", "made.yaml");
    const ran = await run(["match", "balanced-two-seater", "as-built", "--out", out]);
    expect(ran.code).toBe(0);
    for (const line of ran.out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    expect(ran.out).not.toMatch(/NaN|undefined|null|Infinity/);
    const flat = ran.out.replace(/\s+/g, " ");
    expect(flat).toMatch(/rack stands 0\.1\d+ \+- 0\.0\d+ in \(1\/8 in\) left of its middle/);
    expect(flat).toMatch(/Tie-rod tab, ahead, left: 0\.\d\d \+- 0\.0\d in \(3\/16 in\) farther back than on file/);
    expect(flat).not.toContain("Read again");
    const made = readFileSync(out, "utf8");
    expect(made).toMatch(/^# Nothing is odd about this one/);
    expect(made).toMatch(/left: \{ tie-rod: \{ outer: \{ ahead: -4\.9\d+ \}, length: 14\.\d+ \} \}/);

    const again = await run(["match", "balanced-two-seater", "as-built", "--out", out]);
    expect([again.code, again.out]).toEqual([2, ""]);
    expect(again.err).toContain("there is a file of that name, and match writes new ones only");
  }, 60_000);

  it("gives the same as JSON and CSV, the same bytes each time", async () => {
    const [one, other] = [
      await run(["match", "balanced-two-seater", "as-built", "--json"]),
      await run(["match", "balanced-two-seater", "as-built", "--json"]),
    ];
    expect(one.out).toBe(other.out);
    const report = shape.parse(JSON.parse(one.out));
    expect(report.parts.filter(({ off }) => off !== null).map(({ quantities }) => quantities)).toEqual([
      ["left.tie-rod.outer.ahead"],
    ]);
    expect(report.straightAhead.matched).toBeCloseTo(1 / 8, 1);
    const { out } = await run(["match", "balanced-two-seater", "as-built", "--csv"]);
    const [heading, ...rows] = out.trimEnd().split("\r\n");
    expect(heading).toBe("reading,line,unit,read,tolerance,onFile,matched,remark");
    expect(rows).toHaveLength(report.readings.length);
  }, 60_000);

  it("says that signs are likely slipped, and what every +- rests on", async () => {
    const readings = place.put(
      "signs.yaml",
      "units: in\ncamber: { left: 0.5, right: -0.5 }\ncaster: { left: 7.5, right: 7.5 }\n",
    );
    const { code, out } = await run(["match", "balanced-two-seater", readings]);
    expect(code).toBe(0);
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toContain("Signs, likely a slip: camber: left (line 2). With the sign the other way it agrees");
    expect(flat).toMatch(/Every \+- holds 19 times of 20 if whatever is not named as off really is within/);
    const json = await run(["match", "balanced-two-seater", readings, "--json"]);
    const report = shape.parse(JSON.parse(json.out));
    expect(report.premise).toContain("within what the car is built to");
    expect(report.readings.map(({ flipped }) => flipped)).toEqual([true, false, false, false]);
  }, 60_000);

  it("sets apart what has moved further than the car is built to, though it is not surely off", async () => {
    const readings = place.put(
      "leaning.yaml",
      "units: in\ncamber: { left: 0.2, right: -0.5 }\nbuilt-to: { lengths: 0.01, tie-rod.length: 0.01 }\n",
    );
    const { out } = await run(["match", "balanced-two-seater", readings]);
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toContain("Nothing surely; but see below what has moved further");
    const json = await run(["match", "balanced-two-seater", readings, "--json"]);
    const { parts } = shape.parse(JSON.parse(json.out));
    const beyond = parts.filter(({ off, tolerance, moved }) => off === null && Math.abs(moved) > (tolerance ?? 99));
    expect(beyond.map(({ label }) => label)).toEqual(["Camber, left"]);
    const [, further = "", within = ""] = /MOVED FURTHER(.*)WITHIN WHAT THE CAR IS BUILT TO(.*)/.exec(flat) ?? [];
    expect(further).toContain("Camber, left");
    expect(within).not.toContain("Camber, left");
  }, 60_000);

  it("says before anything is named that two readings cannot tell what is off, what to read next, and what it could be", async () => {
    const turns = "    - { turn: left, rack: 1/2 right, left: 14 1/2, right: 7 1/4 over 24 }\n";
    const readings = place.put("two-turns.yaml", `units: in\nturn-plates:\n  rows:\n${turns}`);
    const { code, out } = await run(["match", "balanced-two-seater", readings]);
    expect(code).toBe(0);
    const flat = out.replace(/\s+/g, " ");
    expect(out.split("\n")[2]).toMatch(/^TWO READINGS CANNOT TELL WHAT IS OFF: /);
    expect(flat).toContain("DO NOT BUILD ON THIS YET");
    expect(flat).toContain("turn plates to the right too; both locks; both tie rods, eye to eye;");
    const items = out.split("\n").filter((line) => line.startsWith("  - "));
    expect(items).toEqual([
      "  - turn left, rack 1/2 in R: left (line 4): read 14.5 deg, on file 6.3 deg",
      "  - turn left, rack 1/2 in R: right (line 4): read 17.6 deg, on file 6.0 deg",
      "  - the tie rods: cut or set with the rack off its middle",
      "  - Lower arm, joint, ahead, left or right",
      "  - Tie-rod tab, ahead, left or right",
    ]);
    // Nothing is said of how far a part is off: any number would be believed.
    expect(flat).not.toMatch(/MOST LIKELY OFF|farther back|WITHIN WHAT|matched/);
    const json = await run(["match", "balanced-two-seater", readings, "--json"]);
    expect(shape.parse(JSON.parse(json.out)).undecided).toBe("few");
  }, 60_000);

  it("says so of as few readings only where something is off, and not of enough to tell which is wrong", async () => {
    const turn = (rows: string) => `units: in\nturn-plates:\n  rows:\n${rows}`;
    // The file's own angles to a tenth of a degree, then one of four read 8 degrees too much.
    const good = place.put("good.yaml", turn("    - { turn: left, rack: 1/2 right, left: 6.3, right: 6 }\n"));
    const four =
      "    - { turn: left, rack: 1/2 right, left: 14 1/2, right: 6 }\n    - { turn: right, rack: 1/2 left, left: 6, right: 6 }\n";
    const enough = place.put("enough.yaml", turn(four));
    const said = async (name: string) => (await run(["match", "balanced-two-seater", name])).out.replace(/\s+/g, " ");
    expect(await said(good)).toContain("Nothing: car and readings agree within their tolerances.");
    const told = await said(enough);
    expect(told).toContain("Read again: turn left, rack 1/2 in R: left (line 4) reads 8");
    expect(told).not.toContain("CANNOT TELL WHAT IS OFF");
  }, 60_000);

  it("names a reading that nothing checks among what could be off, and says of a part where it hardly is that", async () => {
    const readings = place.put(
      "caster.yaml",
      "units: in\ncamber: { left: -0.5, right: -0.5 }\ncaster: { left: 7, right: 3 }\n",
    );
    const { out } = await run(["match", "balanced-two-seater", readings]);
    expect(out.split("\n")[2]).toMatch(/^FOUR READINGS CANNOT TELL WHAT IS OFF: one of those below\./);
    const flat = out.replace(/\s+/g, " ");
    expect(flat).toMatch(
      /ONE OF THESE IS OFF - Lower arm, joint, ahead, right: .* farther back than on file, which is hardly so/,
    );
    expect(flat).toContain("- caster: right (line 3)");
    expect(flat).not.toContain("MOST LIKELY OFF");
  }, 60_000);

  it("writes beside the car which of two causes it takes, where another fits as well", async () => {
    // A length from the tab reads over 1/2 in too much, another is as on file: either the tape or the joint's place.
    const rows = ["lower-arm.joint, is: 6 1/4", "upper-arm.joint, is: 8"].map(
      (row) => `    - { from: left.tie-rod.outer, to: left.${row} }\n`,
    );
    const readings = place.put("two.yaml", `units: in\nlengths:\n  rows:\n${rows.join("")}`);
    const out = join(place.path, "two-made.yaml");
    const ran = await run(["match", "balanced-two-seater", readings, "--out", out]);
    expect(ran.code).toBe(0);
    const doubt = /more than one cause fits: this .*, but it fits as well that instead .* is wrong/i;
    expect(ran.err.replace(/\s+/g, " ")).toMatch(doubt);
    expect(ran.out).toContain("TWO READINGS CANNOT TELL WHAT IS OFF: one of those below.");
    expect(ran.out).toContain("ONE OF THESE IS OFF\n  - L tab to L lower joint");
    const [first = ""] = readFileSync(out, "utf8").split("\n");
    expect(first).toMatch(/^# More than one cause fits: /);
    expect(first).toMatch(doubt);
    expect((await run(["steer", out])).code).toBe(0);
  }, 60_000);

  it("says which of two files is which where they are swapped", async () => {
    const readings = place.put("mine.yaml", "units: in\ncamber: { left: -0.5, right: -0.5 }\n");
    const swapped = await run(["match", readings, "balanced-two-seater"]);
    expect([swapped.code, swapped.out]).toEqual([2, ""]);
    expect(swapped.err.replace(/\s+/g, " ")).toContain(
      "this is a file of readings on a built car, not a car file: rackwright match CAR",
    );
    const car = place.put("car.yaml", presetText("balanced-two-seater"));
    const twice = await run(["match", "balanced-two-seater", car]);
    expect([twice.code, twice.out]).toEqual([2, ""]);
    expect(twice.err.replace(/\s+/g, " ")).toContain("this is a car file, not a file of readings on a built car");
  }, 60_000);

  it("points at what is wrong in a file of readings", async () => {
    const put = (text: string) => place.put("readings.yaml", text);
    const typo = await run(["match", "balanced-two-seater", put("units: in\ncambr: { left: 0 }\n")]);
    expect(typo.code).toBe(2);
    expect(typo.err).toMatch(/readings\.yaml:2:1: .*unknown key "cambr": did you mean "camber"\?/);
    const missing = await run(["match", "balanced-two-seater", join(place.path, "none.yaml")]);
    expect(missing.code).toBe(2);
    expect(missing.err).toContain('there is no file "');
    const far = await run([
      "match",
      "balanced-two-seater",
      put("units: in\nturn-plates:\n  rows:\n    - { turn: left, left: 75, right: 60 }\n"),
    ]);
    expect(far.code).toBe(2);
    expect(far.err).toMatch(/readings\.yaml:4: turn left, L wheel 75°: right: the car on file cannot be brought there/);
  });
});

describe("readings of another car", () => {
  it("are said to be so before anything else, and those of the car itself are not", async () => {
    const foreign = "SO MUCH IS OFF that these readings are probably not of this car";
    expect((await run(["match", "balanced-two-seater", "as-built"])).out).not.toContain(foreign);
    const { out } = await run(["match", "widened-offset-rack", "as-built"]);
    expect(out).toContain(foreign);
    expect(out.indexOf(foreign)).toBeLessThan(out.indexOf("MOST LIKELY OFF"));
  }, 120_000);
});
