import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { loadPreset, presetNames } from "../../src/files/presets.ts";
import { PLACES } from "../../src/solve/check/sweep.ts";
import { folder, run } from "./run.ts";
import { units } from "./shapes.ts";

const told = z.number().nullable();
const spread = z.strictObject({ p5: z.number(), p50: z.number(), p95: z.number(), of: z.number().int() }).nullable();
const count = z.strictObject({
  met: z.number().int(),
  of: z.number().int(),
  between: z.tuple([z.number(), z.number()]),
});
const ended = count.extend({ end: z.number() });
const carrier = z.strictObject({
  quantity: z.string(),
  sides: z.enum(["both", "left", "right"]).nullable(),
  share: z.number().min(0).max(1),
});

const shape = z.strictObject({
  units,
  title: z.string(),
  seed: z.number(),
  builds: z.number(),
  done: z.boolean(),
  doNotGoTogether: z.number(),
  setAgain: z.strictObject({
    toe: z.literal("tie rods"),
    arms: z.strictObject({ what: z.string(), by: z.string() }).nullable(),
  }),
  tolerances: z.array(
    z.strictObject({
      quantity: z.string(),
      tolerance: z.number(),
      unit: z.enum(["in", "mm", "deg"]),
      from: z.enum(["file", "common practice"]),
    }),
  ),
  figures: z.record(
    z.string(),
    z.strictObject({
      label: z.string(),
      unit: z.string(),
      bySize: z.boolean(),
      set: told,
      builds: spread,
      linear: z.strictObject({ p5: told, p95: told }).nullable(),
      alike: z.boolean().nullable(),
    }),
  ),
  limits: z.array(
    z.strictObject({
      id: z.string(),
      label: z.string(),
      bad: z.enum(["under", "over"]),
      from: z.enum(["file", "common practice", "the parts"]),
      set: told,
      missedAsDrawn: z.boolean(),
      builds: spread,
      good: ended,
      kept: ended,
      carriers: z.array(carrier),
    }),
  ),
  all: z.strictObject({ good: count, kept: count }),
  hold: z.strictObject({ carriers: z.array(carrier), before: count, after: count.nullable() }).nullable(),
  bands: z.strictObject({
    steer: z.array(
      z.strictObject({
        rack: z.number().optional(),
        column: z.number().optional(),
        inner: spread,
        outer: spread,
        innerShortOfIdeal: spread,
      }),
    ),
    travel: z.array(
      z.strictObject({
        travel: z.number(),
        left: z.strictObject({ toeChange: spread }),
        right: z.strictObject({ toeChange: spread }),
        bounceSteer: spread,
      }),
    ),
  }),
});

const work = folder();
afterAll(work.remove);

function text(preset: string): string {
  const loaded = loadPreset(preset);
  if ("complaints" in loaded) throw new Error(preset);
  return loaded.text;
}

let files = 0;
const withTolerances = (preset: string, lines: string) =>
  work.put(`car-${files++}.yaml`, `${text(preset)}\ntolerances: ${lines}\n`);

async function tolerance(...argv: readonly string[]) {
  const { code, out } = await run(["tolerance", ...argv, "--builds", "100", "--json"]);
  expect(code).toBe(0);
  return shape.parse(JSON.parse(out));
}

const slow = { timeout: 240_000 };

describe("tolerance", slow, () => {
  it("is told for cars of every linkage and mechanism within the page", async () => {
    const names = presetNames().filter((name) => !/balanced|ahead|tab-to-place|widened/.test(name));
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) {
      const { code, out } = await run(["tolerance", name, "--builds", "100"]);
      expect(code, name).toBe(0);
      expect(out).not.toMatch(/NaN|undefined|null|Infinity/);
      expect(out).toContain("100 builds (seed 1)");
      expect(out).toContain("SO HOLD THESE BEST");
      expect(out).toContain("This is geometry, not a strength check.");
      for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    }
  });

  it("says what is set again, by what, on each linkage", async () => {
    const said = async (name: string) => (await run(["tolerance", name, "--builds", "100"])).out.replace(/\s+/g, " ");
    expect(await said("balanced-two-seater")).toContain("camber and caster as drawn by both legs of the upper arm");
    expect(await said("strut-hatchback-corners")).toContain("camber and caster as drawn by both legs of the lower arm");
    expect(await said("torsion-beam-steering-plate")).toContain("caster as drawn by the upper arm's rod end");
    expect(await said("twin-beam-relay")).toContain("this linkage has nothing to set them by");
    expect(await said("cut-rods-off-middle")).toContain("the tie rods, as cut now, are set to the drawn toe");
    const welded = withTolerances("balanced-two-seater", "{ arms: welded }");
    expect(await said(welded)).toContain(
      "Camber and caster stay as they come out: the file says that the arms are welded",
    );
  });

  it("gives the same bytes for the same seed, in every form, and others for another", async () => {
    const told = async (...more: readonly string[]) =>
      (await run(["tolerance", "balanced-two-seater", "--builds", "100", ...more])).out;
    for (const form of ["--json", "--csv", "--ascii"]) expect(await told(form)).toBe(await told(form, "--seed", "1"));
    expect(await told("--csv")).not.toBe(await told("--csv", "--seed", "2"));
  });

  it("takes a tolerance from the size itself, else its part, else its kind, else common practice", async () => {
    const file = withTolerances(
      "balanced-two-seater",
      '{ length: 1/8, tie-rod.outer: 1/32, tie-rod.outer.up: "1/2 mm", lower-arm: 0 }',
    );
    const { tolerances } = await tolerance(file);
    const of = (quantity: string) => tolerances.find((each) => each.quantity === quantity);
    expect(of("left.tie-rod.outer.ahead")).toMatchObject({ tolerance: 1 / 32, unit: "in", from: "file" });
    expect(of("right.tie-rod.outer.up")?.tolerance).toBeCloseTo(0.5 / 25.4, 12);
    expect(of("left.lower-arm.joint.out")).toMatchObject({ tolerance: 0, from: "file" });
    expect(of("rack.up")).toMatchObject({ tolerance: 1 / 8, from: "file" });
    expect(of("left.wheel.camber")).toEqual({
      quantity: "left.wheel.camber",
      tolerance: 0.25,
      unit: "deg",
      from: "common practice",
    });
    expect(of("left.tie-rod.length")).toBeUndefined();
    const metric = await tolerance("cut-rods-off-middle");
    expect(metric.tolerances.find(({ quantity }) => quantity === "rack.up")).toMatchObject({
      tolerance: 1,
      unit: "mm",
    });
  });

  it("has every figure as a row, in the unit asked for", async () => {
    const { out } = await run(["tolerance", "balanced-two-seater", "--builds", "100", "--units", "mm", "--csv"]);
    const rows = out.trimEnd().split("\r\n");
    expect(rows[0]).toBe("figure,label,unit,set,p5,p50,p95,linear5,linear95,alike,builds");
    const all = await tolerance("balanced-two-seater", "--units", "mm");
    expect(rows.length - 1).toBe(Object.keys(all.figures).length);
    const track = all.figures.track;
    expect(rows).toContain(
      `track,Track,mm,${[track?.set, track?.builds?.p5, track?.builds?.p50, track?.builds?.p95, track?.linear?.p5, track?.linear?.p95].join(",")},yes,100`,
    );
  });

  it("judges by the file's own limits and targets, and counts what is dear to read too", async () => {
    const own = `${text("balanced-two-seater")}\ntargets: { lock-difference: { warn: 0.01, bad: 30 } }\nlimits: { rod-to-arm: { close: 80, broken: 79 } }\n`;
    const { limits, hold } = await tolerance(work.put("own.yaml", own));
    const of = (id: string) => limits.find((each) => each.id === id);
    expect(of("lock-difference")).toMatchObject({ from: "file", missedAsDrawn: false });
    expect(of("lock-difference")?.good.met).toBeLessThan(10);
    expect(of("lock-difference")?.kept.met).toBe(100);
    expect(of("rod-to-arm")).toMatchObject({ from: "file", missedAsDrawn: true });
    expect(of("rod-to-arm")?.kept.met).toBe(0);
    // What no jig can help does not decide what to hold.
    expect(hold?.carriers[0]?.quantity).toBe("rack.straight-ahead");
    const checked = await tolerance("check-before-welding");
    for (const id of ["rod-end", "clearance", "shock-stroke", "engagement"])
      expect(checked.limits.find((each) => each.id === id)?.good.of, id).toBe(100);
    const { out } = await run(["tolerance", "check-before-welding", "--builds", "100"]);
    expect(out.replace(/\s+/g, " ")).toContain(
      `looked at in 5 by 5 places of steering and travel, where check looks at ${PLACES} by ${PLACES}`,
    );
    const balanced = (await run(["tolerance", "balanced-two-seater", "--builds", "200"])).out.replace(/\s+/g, " ");
    expect(balanced).toContain("Rack at straight ahead: hold it within");
    expect(balanced).toContain("stands in its housing when the wheels point straight: pin or clamp");
  });

  it("says what is wrong with what was asked", async () => {
    const wrong = async (...argv: readonly string[]) => {
      const { code, err, out } = await run(["tolerance", ...argv]);
      expect([code, out]).toEqual([2, ""]);
      return err;
    };
    const car = "balanced-two-seater";
    expect(await wrong(car, "--builds", "5")).toContain('--builds "5" must be a whole number from 100 to 100000');
    expect(await wrong(car, "--builds", "many")).toContain('--builds "many"');
    expect(await wrong(car, "--seed", "0")).toContain("--seed");
    expect(await wrong(car, "--seed", "1.5")).toContain("whole number");
    expect(await wrong("no-such-car.yaml")).toContain("no-such-car.yaml");
    const line = text(car).split("\n").length + 1;
    expect(await wrong(withTolerances(car, "{ length: -1 }"))).toMatch(new RegExp(`:${line}:.*tolerances.length`));
    expect(await wrong(withTolerances(car, "{ tie-rod.outr: 1/32 }"))).toMatch(
      /Did you mean|did you mean|tie-rod.outr/,
    );
    expect(await wrong(withTolerances(car, "{ angle: half }"))).toContain("tolerances.angle");
    expect(await wrong(withTolerances(car, "{ arms: bolted }"))).toContain("adjustable or welded");
    expect(await wrong(withTolerances(car, "{ rack: 1/32 }"))).toContain("tolerances");
  });
});
