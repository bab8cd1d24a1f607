import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { exampleText } from "../measures/exampleText.ts";
import { folder, run } from "./run.ts";
import { units } from "./shapes.ts";

const place = folder();
afterAll(() => place.remove());

const sides = z.enum(["both", "left", "right"]).nullable();
const level = z.enum(["must", "want", "nice"]);
const named = z.strictObject({ goal: z.string(), level });
const placed = z.strictObject({
  moves: z.array(z.strictObject({ quantity: z.string(), sides, by: z.number(), to: z.record(z.string(), z.number()) })),
  rodLengths: z.strictObject({ left: z.number(), right: z.number() }),
  goals: z.array(
    z.strictObject({
      goal: z.string(),
      level,
      low: z.number().nullable(),
      high: z.number().nullable(),
      met: z.boolean(),
    }),
  ),
  score: z.number(),
});
const shape = z.strictObject({
  units,
  title: z.string(),
  step: z.number(),
  rods: z.enum(["follow", "keep"]),
  goals: z.array(
    z.strictObject({
      goal: z.string(),
      level,
      least: z.number().nullable(),
      most: z.number().nullable(),
      over: z.number(),
      from: z.enum(["file", "asked", "usual"]),
    }),
  ),
  notJudged: z.array(z.strictObject({ goal: z.string(), level, needs: z.string() })),
  move: z.array(z.strictObject({ quantity: z.string(), sides, from: z.number(), to: z.number() })),
  now: placed,
  answers: z.array(
    z.strictObject({ warnings: z.array(z.string()), exact: placed, snapped: placed, broken: z.array(z.string()) }),
  ),
  fights: z.array(z.strictObject({ without: named, frees: z.array(named), all: z.boolean() })).nullable(),
  evaluations: z.number(),
  done: z.boolean(),
  cautions: z.array(z.string()),
});

const car = place.put("example.yaml", exampleText);
/** Little room in one way: a search that is soon done. */
const small = ["--move", "tie-rod.outer.out=1/2"];

describe("what is said of an answer", () => {
  it("tells a must that is met by little", async () => {
    const little = await run(["find", "tab-to-place", ...small]);
    expect(little.out.replace(/\s+/g, " ")).toMatch(
      /MET BY LITTLE: Least rod-to-arm angle at least [\d.]+°: [\d.]+°.* tolerance says how many of 100 builds keep it/,
    );
  });

  it("refuses a turning circle that no car has", async () => {
    const { code, err } = await run(["find", car, "--must", "turning-circle=30"]);
    expect(code).toBe(2);
    expect(err).toMatch(/turning-circle.*30/);
  });
});

describe("find", () => {
  it("tells a builder what to do, within the page, with the caution", async () => {
    const { code, out } = await run(["find", car, ...small, "--want", "ackermann=60 to 80"]);
    expect(code).toBe(0);
    expect(out).toMatch(/Tie-rod tab, both sides: \d.* farther (in|out)/);
    expect(out).toContain("Cut the tie rods to fit, eye to eye");
    expect(out).toContain("This is geometry, not a strength check.");
    expect(out).not.toMatch(/NaN|undefined|null|Infinity/);
    for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });

  it("says danger first: a rod that is still near its dead point", async () => {
    const { out } = await run(["find", car, "--move", "tie-rod.outer.up=1/4", "--want", "toe-change=1/8"]);
    const lines = out.split("\n");
    const at = lines.findIndex((line) => line.startsWith("ANSWER"));
    expect(lines[at + 1]).toContain("DANGEROUS");
  });

  it("gives JSON whose answers lie in the room and whose numbers are not rounded", async () => {
    const { out } = await run(["find", "tab-to-place", "--json"]);
    const report = shape.parse(JSON.parse(out));
    expect(report.done).toBe(true);
    expect(report.units).toEqual({ length: "in", angle: "deg" });
    for (const { snapped } of report.answers) {
      for (const [i, { by, to }] of snapped.moves.entries()) {
        expect(by).toBeGreaterThanOrEqual(report.move[i]?.from ?? 0);
        expect(by).toBeLessThanOrEqual(report.move[i]?.to ?? 0);
        expect(16 * by).toBeCloseTo(Math.round(16 * by), 9);
        for (const value of Object.values(to)) expect(16 * value).toBeCloseTo(Math.round(16 * value), 9);
      }
      expect(snapped.goals.filter((goal) => goal.level === "must" && !goal.met)).toEqual([]);
    }
  });

  it("says what it can't judge, and leaves it out", async () => {
    const { out } = await run(["find", car, ...small, "--must", "clearance=1/4"]);
    expect(out.replace(/\s+/g, " ")).toContain("Clearance: not given: needs tubes in the file, and is left out");
  });

  it("writes the first answer as a new file, comments kept, and never over one", async () => {
    const text = exampleText;
    const from = place.put("tabs.yaml", text);
    const to = join(place.path, "better.yaml");
    const { code, err } = await run(["find", from, ...small, "--write", to]);
    expect(code).toBe(0);
    expect(err).toContain("Wrote");
    const written = readFileSync(to, "utf8");
    expect(written).not.toBe(text);
    expect(written.split("\n").length).toBe(text.split("\n").length);
    expect(written).toContain("# loaded radius");
    expect(readFileSync(from, "utf8")).toBe(text);
    const again = await run(["find", from, ...small, "--write", to]);
    expect(again.code).toBe(2);
    expect(again.err).toContain("better.yaml");
    expect(readFileSync(to, "utf8")).toBe(written);
    const none = join(place.path, "none.yaml");
    expect((await run(["find", from, ...small, "--answer", "9", "--write", none])).code).toBe(2);
    expect(existsSync(none)).toBe(false);
  });

  it.each([
    [["--want", "toe=1"], 'there is nothing called "toe"'],
    [["--want", "toe-change"], "is not understood: give it like --want toe-change=1/8"],
    [["--want", "toe-change=1 to 2"], "takes one number: the most there may be"],
    [["--want", "toe-change=1 over 50"], 'leave "over 50" out'],
    [["--want", "ackermann=110 to 60"], "goes from more to less"],
    [["--want", "ackermann=60 over 5"], "must be a percent of the lock from 10 to 100"],
    [["--must", "inner-lock=200"], "expected a value from 0 degrees to 90 degrees"],
    [["--move", "wheelbase=1"], 'there is nothing called "wheelbase"'],
    [["--move", "relay.pitman.arm=1"], "--move"],
    [["--move", "rack.up=9 to 8"], "leaves no room"],
    [["--move", "rack.up=8 to 9 to 10"], "is no room"],
    [["--step", "0"], "is no step"],
  ])("refuses %j in words", async (argv, words) => {
    const { code, err, out } = await run(["find", car, ...argv]);
    expect(code).toBe(2);
    expect(err).toContain(words);
    expect(out).toBe("");
  });

  it("refuses a room in the file that the car has nothing for, at its place", async () => {
    const wrong = place.put("wrong.yaml", `${exampleText}find: { move: { relay.ahead: { within: 1 } } }\n`);
    const { code, err } = await run(["find", wrong]);
    expect(code).toBe(2);
    expect(err).toMatch(/wrong\.yaml:\d+:\d+: find\.move/);
  });

  it("says which must fights which, and gives the nearest car", async () => {
    const musts = ["--must", "rod-to-arm=42", "--must", "inner-lock=34"];
    const { code, out } = await run([
      "find",
      car,
      "--move",
      "tie-rod.outer.out=1",
      "--move",
      "tie-rod.outer.ahead=1",
      ...musts,
    ]);
    expect(code).toBe(1);
    expect(out).toContain("THE MUSTS CAN'T ALL BE MET");
    expect(out).toContain("NOT MET:");
    expect(out).toMatch(/fights|Without/);
  });
});
