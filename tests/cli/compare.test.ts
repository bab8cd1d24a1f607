import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const work = folder();
afterAll(work.remove);

const told = z.number().nullable();
const shape = z.strictObject({
  units: z.strictObject({ length: z.enum(["in", "mm"]), angle: z.literal("deg") }),
  cars: z.array(z.strictObject({ name: z.string(), title: z.string() })),
  inputs: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      kind: z.string(),
      side: z.enum(["left", "right", "each"]).nullable(),
      said: z.array(z.strictObject({ words: z.string(), value: told })),
    }),
  ),
  figures: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      unit: z.string(),
      sign: z.string(),
      bySize: z.boolean(),
      values: z.array(told),
      changes: z.array(told),
    }),
  ),
  checks: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      states: z.array(z.string().nullable()),
      sides: z.array(z.enum(["left", "right", "both"]).nullable()),
      said: z.array(z.string()),
    }),
  ),
  cautions: z.array(z.string()),
});

const before = presetText("widened-offset-rack");

function replaced(text: string, ...pairs: readonly (readonly [string, string])[]): string {
  return pairs.reduce((all, [from, to]) => {
    expect(all.split(from).length, from).toBe(2);
    return all.replace(from, to);
  }, text);
}

const a = work.put("a.yaml", before);
const b = work.put("b.yaml", replaced(before, ["offset: -2.5", 'offset: "-1 1/4"'], ["camber: -0.5", "camber: -1"]));
const c = work.put(
  "c.yaml",
  replaced(before, [
    "  both:                                  # left and right alike",
    '  right: { tie-rod: { outer: { up: "8 11/16" } } }\n  both:                                  # left and right alike',
  ]),
);

async function compared(...files: readonly string[]) {
  const { code, out } = await run(["compare", ...files, "--json"]);
  expect(code).toBe(0);
  return shape.parse(JSON.parse(out));
}

describe("rackwright compare", () => {
  it("says what differs as each builder wrote it, left and right apart where they are", async () => {
    const { inputs, cars } = await compared(a, b, c);
    expect(cars.map(({ name }) => name)).toEqual([a, b, c]);
    expect(inputs.map(({ id, side, said }) => [id, side, said.map(({ words }) => words)])).toEqual([
      ["wheel.camber", "each", ["-0.5°", "-1°", "-0.5°"]],
      ["right.tie-rod.outer.up", "right", ["8.5 in", "8.5 in", "8 11/16 in"]],
      ["rack.offset", null, ["-2.5 in", "-1 1/4 in", "-2.5 in"]],
    ]);
    expect(inputs.at(-1)?.said.map(({ value }) => value)).toEqual([-2.5, -1.25, -2.5]);
  });

  it("finds nothing between a car and itself, however it is written", async () => {
    const same = work.put(
      "same.yaml",
      replaced(before, ["up: 8.5 }", 'up: "8 1/2" }'], ["offset: -2.5", 'offset: "-63.5 mm"']),
    );
    const { inputs, figures, checks } = await compared(a, same);
    expect(inputs).toEqual([]);
    expect(checks).toEqual([]);
    for (const { id, changes } of figures)
      for (const change of changes) if (change !== null) expect(change, id).toBe(0);
  });

  it("has the figures that the other commands have, and their differences", async () => {
    const { figures } = await compared(a, b);
    const numbers = async (file: string) => {
      const steer = JSON.parse((await run(["steer", file, "--json"])).out);
      const { out } = await run(["bump", file, "--json"]);
      return {
        leftLockInner: steer.locks.left.inner,
        rightLockAckermann: steer.locks.right.ackermann,
        track: steer.track,
        "left.bumpSteer": JSON.parse(out).summary.bumpSteer.left,
      } as Record<string, number>;
    };
    const [of, other] = [await numbers(a), await numbers(b)];
    for (const id of Object.keys(of)) {
      const row = figures.find((each) => each.id === id);
      expect(row?.values, id).toEqual([of[id], other[id]]);
      // The difference is taken in mm or rad and turned into degrees or inches once.
      expect(row?.changes[1], id).toBeCloseTo((other[id] ?? 0) - (of[id] ?? 0), 10);
    }
  });

  it("says first which checks only the other car breaks, and on which side each is the worse", async () => {
    const base = presetText("check-before-welding");
    const [a, b] = [
      work.put("a.yaml", base),
      work.put("b.yaml", base.replace("eye-to-eye: 15,", "eye-to-eye: 15, offset: 2,")),
    ];
    const { checks } = await compared(a, b);
    const row = checks.find(({ id }) => id === "clearance.tie-rod.lower-arm");
    const worse = JSON.parse((await run(["check", b, "--json"])).out).items.find(
      (each: { id: string }) => each.id === "clearance.tie-rod.lower-arm",
    );
    expect(row?.label).toBe("Tie rod to lower arm");
    expect(row?.sides).toEqual(["both", worse.wheel]);
    expect(row?.said[1]).toContain(worse.wheel);
    const rank = (state: string | null | undefined) => ["pass", "close", "broken"].indexOf(state ?? "pass");
    const worsened = checks.map(({ states: [was, is] }) => Math.max(rank(is), 0) - Math.max(rank(was), 0));
    expect(worsened).toEqual(worsened.toSorted((x, y) => y - x));
    const fresh = checks.filter(({ states: [was, is] }) => is === "broken" && was !== "broken");
    expect(fresh.length).toBeGreaterThan(0);
    const { out } = await run(["compare", a, b]);
    const [, beware = ""] = out.split("BEWARE");
    const [said = ""] = beware.split("WHAT DIFFERS");
    for (const { label } of fresh) expect(said.replace(/\s+/g, " ")).toContain(`B against A: ${label} is BROKEN`);
  });

  it("tells only the checks that come out otherwise, as check itself says them", async () => {
    const { checks } = await compared("cut-rods-off-middle", "balanced-two-seater");
    const items = async (name: string) => {
      const report = JSON.parse((await run(["check", name, "--json"])).out);
      return new Map<string, string>(report.items.map((each: { id: string; state: string }) => [each.id, each.state]));
    };
    const [first, second] = [await items("cut-rods-off-middle"), await items("balanced-two-seater")];
    expect(checks.length).toBeGreaterThan(0);
    for (const { id, states, said } of checks) {
      expect(states).toEqual([first.get(id) ?? null, second.get(id) ?? null]);
      expect(said[0]).not.toBe(said[1]);
    }
    for (const [id, state] of first)
      if (state !== (second.get(id) ?? null)) expect(checks.map((each) => each.id)).toContain(id);
  });

  it("warns where a car is worse than the first, in every form", async () => {
    for (const form of [[], ["--markdown"], ["--html"]]) {
      const { out } = await run(["compare", "balanced-two-seater", "widened-offset-rack", ...form]);
      expect(out).toMatch(/DANGEROUS: a rod comes to 17\.5/);
      expect(out).toContain("This is geometry, not a strength check.");
    }
  });

  it("compares cars of unlike front ends", async () => {
    const { inputs } = await compared("widened-offset-rack", "twin-beam-relay");
    expect(inputs.slice(0, 2).map(({ id }) => id)).toEqual(["front.linkage", "steering.mechanism"]);
    expect(inputs.find(({ id }) => id === "rack.offset")?.said[1]).toEqual({ words: "has none", value: null });
  });

  it("keeps text within 78 columns for two cars and for three, in either unit", async () => {
    for (const argv of [
      [a, b],
      [a, b, c],
      [a, b, "--units", "mm"],
      ["widened-offset-rack", "twin-beam-relay"],
    ]) {
      const { out } = await run(["compare", ...argv]);
      for (const line of out.split("\n").slice(4)) expect(line.length, line).toBeLessThanOrEqual(78);
    }
  });

  it("gives the same bytes twice", async () => {
    expect((await run(["compare", a, b, "--html"])).out).toBe((await run(["compare", a, b, "--html"])).out);
  });

  it("wants two cars, and one form", async () => {
    expect(await run(["compare", a])).toMatchObject({ code: 2 });
    expect(await run(["compare", a, b, "--html", "--markdown"])).toMatchObject({ code: 2 });
  });
});

describe("an inch car beside a millimetre car", () => {
  const lineOf = (out: string) => out.split("\n").find((line) => line.startsWith("Wheelbase")) ?? "";

  it("is told in one unit, the first file's, or the one that is asked for", async () => {
    const inches = work.put("in.yaml", presetText("balanced-two-seater").replace(/^wheelbase: .*$/m, "wheelbase: 84"));
    const other = work.put(
      "mm.yaml",
      presetText("balanced-two-seater").replace(/^wheelbase: .*$/m, "wheelbase: 1850 mm"),
    );
    // 84 in are 2133.6 mm, 1850 mm are 72.8346 in; the difference is 283.6 mm or 11.1654 in.
    const asked = ["--units", "mm"];
    expect(lineOf((await run(["compare", other, inches, ...asked])).out)).toMatch(/1850 mm +2133\.6 mm +\+283\.60 mm/);
    const { out } = await run(["compare", other, inches]);
    expect(lineOf(out)).toMatch(/72\.8346 in +84 in +\+11\.1654 in/);
    expect(out).toContain("Lengths that a file has in millimetres are told in inches.");
    expect((await run(["compare", a, b])).out).not.toContain("Lengths that a file has");
  });
});
