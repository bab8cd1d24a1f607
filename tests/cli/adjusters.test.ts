import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { presetNames } from "../../src/files/presets.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";
import { units } from "./shapes.ts";

const place = folder();
afterAll(() => place.remove());

const told = z.number().nullable();
const settings = z.strictObject({ camber: told, caster: told, toe: told, toeInBump: told, toeInDroop: told });
const sides = z.strictObject({ left: settings, right: settings });
const shape = z.strictObject({
  units,
  title: z.string(),
  now: sides,
  adjusters: z.array(
    z.strictObject({
      key: z.string(),
      wheel: z.enum(["left", "right"]).nullable(),
      part: z.string(),
      what: z.string(),
      why: z.string().nullable(),
      change: sides.nullable(),
      caution: z.string().nullable(),
    }),
  ),
});

const json = async (...argv: readonly string[]) =>
  shape.parse(JSON.parse((await run(["adjusters", ...argv, "--json"])).out));

describe("adjusters", () => {
  it("gives every preset a table that fits, and says why of what it has not", async () => {
    for (const name of presetNames()) {
      const { code, out } = await run(["adjusters", name]);
      expect(code, name).toBe(0);
      expect(out).not.toMatch(/NaN|undefined|null/);
      for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
      for (const { key, why, change } of (await json(name)).adjusters) expect(why === null, key).toBe(change !== null);
    }
  });

  it("has its numbers in the unit asked for, unrounded", async () => {
    const [inches, mm] = [await json("check-before-welding"), await json("check-before-welding", "--units=mm")];
    expect(inches.adjusters.map(({ key }) => key)).toEqual(mm.adjusters.map(({ key }) => key));
    const toe = (of: typeof mm) =>
      of.adjusters.find(({ key }) => key === "left.tie-rod")?.change?.left.toe ?? Number.NaN;
    expect(toe(mm) / toe(inches)).toBeCloseTo(25.4, 9);
  });

  it("takes amounts with their own units, and writes the car with one of them done", async () => {
    const car = place.put("car.yaml", presetText("widened-offset-rack"));
    const higher = await run(["adjusters", car, "--ride-height=25.4 mm", "--take", "ride-height"]);
    expect(higher).toEqual(await run(["adjusters", car, "--take", "ride-height"]));
    expect(higher.out).toContain("wheel-travel: { bump: 4, droop: 2 }");
    expect(higher.out).toContain("# loaded radius");
    const path = place.put("higher.yaml", higher.out);
    expect((await run([path])).code).toBe(0);
  });

  it("says what there is to take, and why one cannot be", async () => {
    const wrong = await run(["adjusters", "widened-offset-rack", "--take", "bolt"]);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('--take "bolt" is none of this car\'s adjusters: there are left.tie-rod.outer');
    const none = await run(["adjusters", "widened-offset-rack", "--take", "left.tie-rod.outer"]);
    expect(none.code).toBe(2);
    expect(none.err).toContain("the file names no thread for it");
  });

  it("says its cautions", async () => {
    const { out } = await run(["adjusters", "check-before-welding"]);
    const said = out.replace(/\s+/g, " ");
    expect(said).toContain("Mind: Check that enough thread stays in, tighten the jam nut");
    expect(said).toContain("This is geometry, not a strength check.");
  });
});
