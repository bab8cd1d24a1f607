import { afterAll, describe, expect, test } from "vitest";
import * as z from "zod/mini";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const place = folder();
afterAll(() => place.remove());
const full = place.put("full.yaml", presetText("check-before-welding"));
const sound = place.put("sound.yaml", presetText("balanced-two-seater"));

const number = z.nullable(z.number());
const shape = z.strictObject({
  units: z.strictObject({ length: z.enum(["in", "mm"]), angle: z.literal("deg"), rate: z.enum(["lb/in", "N/mm"]) }),
  counts: z.record(z.enum(["broken", "close", "not given", "pass"]), z.number()),
  items: z.array(
    z.strictObject({
      id: z.string(),
      part: z.string(),
      label: z.string(),
      state: z.enum(["pass", "close", "broken", "not given"]),
      value: number,
      kind: z.string(),
      limit: z.nullable(
        z.strictObject({
          bad: z.enum(["under", "over"]),
          close: z.number(),
          broken: z.number(),
          from: z.enum(["file", "common practice", "the parts"]),
        }),
      ),
      wheel: z.nullable(z.enum(["left", "right"])),
      otherSide: number,
      where: z.nullable(
        z.strictObject({ rack: z.optional(z.number()), column: z.optional(z.number()), travel: z.number() }),
      ),
      facts: z.record(z.string(), z.union([number, z.tuple([z.number(), z.number(), z.number()])])),
      cautions: z.array(z.string()),
    }),
  ),
  cautions: z.array(z.string()),
});

async function json(file: string, ...options: string[]) {
  const { code, out } = await run(["check", file, "--json", ...options]);
  return { code, report: shape.parse(JSON.parse(out)) };
}

describe("check", () => {
  test("ends with 1 when a limit is broken, and with 0 when none is", async () => {
    expect((await run(["check", full])).code).toBe(1);
    expect((await run(["check", sound])).code).toBe(0);
  });

  test("has a line an item with state, value, limit and where, counts them, and ends with the cautions", async () => {
    const { out, err } = await run(["check", full]);
    expect(err).toBe("");
    const words = out.replace(/\s+/g, " ");
    expect(words).toMatch(/\d+ broken, \d+ close, 0 not given, \d+ pass/);
    expect(words).toMatch(
      /BROKEN Tie rod to lower arm, both sides: \d+\/\d+ in \(broken under 1\/4 in, close under 1\/2 in\), at rack .* of its middle, 4 1\/2 in droop/,
    );
    expect(words).toContain("Limits are common practice, which no standard or handbook stands behind");
    expect(words).toContain("This is geometry, not a strength check.");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });

  test("--json says the same, numbers not rounded, in either unit", async () => {
    const inches = await json(full);
    const millimetres = await json(full, "--units=mm");
    expect([inches.code, millimetres.code]).toEqual([1, 1]);
    const counted = inches.report.items.filter(({ state }) => state === "broken").length;
    expect(inches.report.counts.broken).toBe(counted);
    inches.report.items.forEach((item, i) => {
      const other = millimetres.report.items[i];
      expect(other?.id).toBe(item.id);
      if (item.kind === "length" && item.value !== null) expect(other?.value).toBeCloseTo(item.value * 25.4, 9);
      if (item.kind === "angle") expect(other?.value).toBe(item.value);
    });
    const rate = (of: typeof inches) =>
      Number(of.report.items.find(({ id }) => id === "shock.bump.left")?.facts.wheelRate);
    // One lb/in by the exact definitions of pound, standard gravity and inch.
    expect(rate(millimetres)).toBeCloseTo((rate(inches) * 0.45359237 * 9.80665) / 25.4, 9);
  });

  test("tells of both sides where they are alike, and else of the worse with what the other comes to", async () => {
    const alike = await json(full);
    const item = (of: typeof alike, id: string) => of.report.items.find((each) => each.id === id);
    for (const id of ["clearance.tie-rod.lower-arm", "rod-end.tie-rod-inner"]) {
      const own = item(alike, id);
      expect(own?.label, id).toMatch(/both sides|each tie rod/);
      expect(own?.otherSide, id).toBeCloseTo(own?.value ?? Number.NaN, 6);
    }
    const text = presetText("check-before-welding").replace("eye-to-eye: 15,", "eye-to-eye: 15, offset: 0.5,");
    const unlike = await json(place.put("unlike.yaml", text));
    for (const id of ["clearance.tie-rod.lower-arm", "rod-end.tie-rod-inner"]) {
      const own = item(unlike, id);
      const { wheel, value, otherSide } = own ?? {};
      expect(own?.label.toLowerCase(), id).toContain(String(wheel));
      expect(otherSide, id).toBeGreaterThan(value ?? Number.NaN);
      // With the rack as far off the other way the sides change places, to the last bit.
      const turned = await json(place.put("turned.yaml", text.replace("offset: 0.5,", "offset: -0.5,")));
      const mirrored = item(turned, id);
      expect(mirrored?.wheel, id).toBe(wheel === "left" ? "right" : "left");
      if (id.startsWith("rod-end")) expect([mirrored?.value, mirrored?.otherSide]).toEqual([value, otherSide]);
    }
  });

  test.each(["fixed-kingpin-yard-kart", "torsion-beam-steering-plate", "twin-beam-relay"])(
    "of a car that is steered by its column says the column's angle: %s",
    async (name) => {
      const { report } = await json(place.put(`${name}.yaml`, presetText(name)));
      const { where } = report.items.find(({ id }) => id === "rod-to-arm.left") ?? {};
      expect(where).toHaveProperty("column");
      expect(where).not.toHaveProperty("rack");
    },
  );

  test("of a file that cannot be checked says where and why, with exit code 2", async () => {
    const shaft =
      "steering-shaft: { wheel: { ahead: -40, offset: 14, up: 30 }, lower-joint: { ahead: -40, offset: 14, up: 30 }, pinion: { ahead: -6, offset: -2, up: 9.4 } }\n";
    const { code, out, err } = await run(["check", place.put("bad.yaml", presetText("balanced-two-seater") + shaft)]);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(/bad\.yaml:\d+:\d+: steering-shaft\.lower-joint: found it at the same place as wheel/);
  });
});
