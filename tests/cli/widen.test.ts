import { describe, expect, it } from "vitest";
import { z } from "zod";
import { presetNames } from "../../src/files/presets.ts";
import { run } from "./run.ts";
import { units } from "./shapes.ts";

const figures = z.record(z.string(), z.number().nullable());
const shape = z.strictObject({
  units,
  title: z.string(),
  by: z.number(),
  now: figures,
  ways: z.array(
    z.strictObject({
      key: z.enum(["arms", "pivots", "spacers", "rack-ends"]),
      what: z.string(),
      tradeOff: z.string(),
      caution: z.string(),
      figures,
      text: z.string(),
    }),
  ),
  not: z.array(z.strictObject({ key: z.string(), name: z.string(), why: z.string() })),
});

const json = async (...argv: readonly string[]) =>
  shape.parse(JSON.parse((await run(["widen", ...argv, "--json"])).out));

describe("widen", () => {
  it("sets the ways side by side for every preset, within the page", async () => {
    for (const name of presetNames()) {
      const { code, out } = await run(["widen", name]);
      expect(code, name).toBe(0);
      expect(out).not.toMatch(/NaN|undefined|null/);
      for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    }
  });

  it("has a track wider by twice as much in every way, unrounded", async () => {
    const { by, now, ways, not } = await json("widened-offset-rack", "--by=1 1/2");
    expect([by, ways.length, not.length]).toEqual([1.5, 4, 0]);
    for (const way of ways) expect((way.figures.track ?? 0) - (now.track ?? 0), way.key).toBeCloseTo(3, 9);
  });

  it("prints the car widened in one way", async () => {
    const { ways } = await json("widened-offset-rack", "--by=50.8 mm");
    const { out } = await run(["widen", "widened-offset-rack", "--take", "spacers"]);
    expect(out).toBe(ways.find(({ key }) => key === "spacers")?.text);
    expect(out).toContain("center: { ahead: 0, out: 26.5, up: 10.75 }");
  });

  it("refuses what is no widening, and says why a way is not for a car", async () => {
    for (const by of ["0", "-1", "5000"]) {
      const { code, err } = await run(["widen", "widened-offset-rack", `--by=${by}`]);
      expect(code).toBe(2);
      expect(err).toContain(`--by "${by}" is no widening`);
    }
    const kart = await run(["widen", "fixed-kingpin-yard-kart", "--take", "arms"]);
    expect(kart.code).toBe(2);
    expect(kart.err).toContain("the king pins are fixed to the frame");
  });

  it("says its cautions beside what can hurt", async () => {
    const said = (await run(["widen", "widened-offset-rack"])).out.replace(/\s+/g, " ");
    expect(said).toContain("CAUTION: a longer overhang bends the rack's bar");
    expect(said).toContain("CAUTION: a wheel further out loads bearings, spindles and studs more.");
    expect(said).toContain("This is geometry, not a strength check.");
  });
});
