import { afterAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { loadPreset, presetNames } from "../../src/files/presets.ts";
import { folder, run } from "./run.ts";
import { bumpShape, poseShape, steerShape, units } from "./shapes.ts";

const told = z.number().nullable();
const shape = z.strictObject({
  units,
  title: z.string(),
  rods: z.strictObject({ left: z.enum(["fit", "cut"]), right: z.enum(["fit", "cut"]) }),
  figures: z.record(
    z.string(),
    z.strictObject({
      label: z.string(),
      unit: z.string(),
      now: told,
      bySize: z.boolean(),
      allowed: z.strictObject({ half: z.number(), from: z.enum(["file", "common practice"]) }).nullable(),
    }),
  ),
  rows: z.array(
    z.strictObject({
      quantity: z.string(),
      label: z.string(),
      assumed: z.boolean(),
      step: z.number(),
      stepUnit: z.enum(["in", "mm", "deg", ""]),
      hold: z.enum(["tight", "watch", "free"]),
      breaks: z.array(z.enum(["more", "less"])),
      chief: z.string().nullable(),
      share: told,
      changes: z.record(z.string(), z.strictObject({ more: told, less: told })),
    }),
  ),
});

const work = folder();
afterAll(work.remove);

async function sensitivity(...argv: readonly string[]) {
  const { code, out } = await run(["sensitivity", ...argv, "--json"]);
  expect(code).toBe(0);
  return shape.parse(JSON.parse(out));
}

async function json<T>(schema: z.ZodType<T>, argv: readonly string[]): Promise<T> {
  return schema.parse(JSON.parse((await run([...argv, "--json"])).out));
}

function text(preset: string): string {
  const loaded = loadPreset(preset);
  if ("complaints" in loaded) throw new Error(preset);
  return loaded.text;
}

/** A preset with one piece of its text edited, as a file. */
function edited(preset: string, from: string, to: string): string {
  const before = text(preset);
  expect(before.split(from).length, from).toBe(2);
  return work.put(
    `${preset}-${Math.abs(from.length * 31 + to.length)}-${to.replace(/\W+/g, "-")}.yaml`,
    before.replace(from, to),
  );
}

function rowOf({ rows }: z.infer<typeof shape>, quantity: string) {
  const row = rows.find((each) => each.quantity === quantity);
  if (row === undefined) throw new Error(quantity);
  return row;
}

describe("sensitivity against the same edit made by hand", () => {
  it("has the locks, the bump and the straight pose that the edited file has: rods cut to fit, inches", async () => {
    const preset = "widened-offset-rack";
    const all = await sensitivity(preset);
    const row = rowOf(all, "rack.up");
    expect([row.step, row.stepUnit]).toEqual([1 / 16, "in"]);
    const from = 'up: "8 5/8"';
    const files = {
      now: preset,
      more: edited(preset, from, 'up: "8 11/16"'),
      less: edited(preset, from, 'up: "8 9/16"'),
    };
    const locks = async (file: string) => (await json(steerShape, ["steer", file])).locks;
    const pose = async (file: string) => (await json(poseShape, ["pose", file])).left;
    const bump = async (file: string) => (await json(bumpShape, ["bump", file])).summary;
    for (const way of ["more", "less"] as const) {
      const [a, b] = [await locks(files[way]), await locks(files.now)];
      const change = (id: string) => row.changes[id]?.[way] ?? Number.NaN;
      expect(change("lockDifferenceInner")).toBeCloseTo((a.difference.inner ?? 0) - (b.difference.inner ?? 0), 9);
      expect(change("leftLockAckermann")).toBeCloseTo((a.left?.ackermann ?? 0) - (b.left?.ackermann ?? 0), 8);
      const [p, q] = [await pose(files[way]), await pose(files.now)];
      expect(change("left.leverArm")).toBeCloseTo(p.leverArm - q.leverArm, 9);
      expect(change("rodLengthLeft")).toBeCloseTo(p.tieRodLength - q.tieRodLength, 9);
      // The worst is at full droop, the right wheel's, which is in the rows of both tables.
      const [m, n] = [await bump(files[way]), await bump(files.now)];
      expect(change("worstToeRight")).toBeCloseTo((m.worstToeChange ?? 0) - (n.worstToeChange ?? 0), 9);
      expect(change("worstBounceSteer")).toBeCloseTo(
        Math.abs(m.worstBounceSteer ?? 0) - Math.abs(n.worstBounceSteer ?? 0),
        9,
      );
    }
  });

  it("keeps rods that are as cut, and changes one of them alone", async () => {
    const preset = "cut-rods-off-middle";
    const all = await sensitivity(preset);
    expect(all.rods).toEqual({ left: "cut", right: "cut" });
    const now = await json(steerShape, ["steer", preset]);
    const row = rowOf(all, "rack.offset");
    for (const way of ["more", "less"] as const) {
      const file = edited(preset, "    eye-to-eye: 320", `    eye-to-eye: 320\n    offset: ${way === "more" ? 1 : -1}`);
      const after = await json(steerShape, ["steer", file]);
      const { lockDifferenceInner, zero } = row.changes;
      expect(lockDifferenceInner[way]).toBeCloseTo(
        (after.locks.difference.inner ?? 0) - (now.locks.difference.inner ?? 0),
        9,
      );
      expect(zero[way]).toBeCloseTo((after.zero ?? 0) - (now.zero ?? 0), 9);
    }
  });

  it("changes a rod that is cut to fit from the length that fits, the other one as it is", async () => {
    const preset = "widened-offset-rack";
    const row = rowOf(await sensitivity(preset), "left.tie-rod.length");
    const pose = await json(poseShape, ["pose", preset]);
    const now = await json(steerShape, ["steer", preset]);
    const { left, right } = { left: pose.left.tieRodLength, right: pose.right.tieRodLength };
    const wheel = "    wheel: { center";
    for (const [way, by] of [
      ["more", 1 / 16],
      ["less", -1 / 16],
    ] as const) {
      const own = `  left: { tie-rod: { length: ${left + by} } }\n  right: { tie-rod: { length: ${right} } }\nsteering:`;
      expect(text(preset)).toContain(wheel);
      const file = edited(preset, "steering:", own);
      const after = await json(steerShape, ["steer", file]);
      expect(row.changes.lockDifferenceInner[way]).toBeCloseTo(
        (after.locks.difference.inner ?? 0) - (now.locks.difference.inner ?? 0),
        7,
      );
    }
  });
});

describe("sensitivity", () => {
  it("says at the bench what the rack at straight ahead is, where that is to be held", async () => {
    const { out } = await run(["sensitivity", "balanced-two-seater"]);
    const [, held = ""] = out.replace(/\s+/g, " ").split("HOLD THESE TIGHTLY");
    expect(held).toContain("Rack at straight ahead: where the rack (or column) stands in its housing");
  });

  it("is told for cars of every linkage and mechanism within the page, what to hold first", async () => {
    const told = presetNames().filter((name) => !/balanced|ahead|centre|cut-rods/.test(name));
    expect(told.length).toBeGreaterThan(4);
    for (const name of told) {
      const { code, out } = await run(["sensitivity", name]);
      expect(code, name).toBe(0);
      expect(out).not.toMatch(/NaN|undefined|null|Infinity/);
      expect(out).toContain("HOLD THESE TIGHTLY");
      expect(out).toContain("DOES NOT MATTER");
      for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    }
  });

  it("has every number of every size as rows, in the unit asked for, and of one number alone", async () => {
    const { out } = await run(["sensitivity", "balanced-two-seater", "--units", "mm", "--csv", "--figure", "track"]);
    const rows = out.trimEnd().split("\r\n");
    expect(rows[0]).toBe("quantity,label,assumed,step,stepUnit,figure,unit,more,less,share");
    // The wheel's centre 1 mm further out puts its contact 1 mm further out.
    expect(rows).toContain('left.wheel.center.out,"Wheel centre, out",,1,mm,track,mm,1,-1,');
    const all = await sensitivity("balanced-two-seater", "--units", "mm");
    expect(rows.length - 1).toBe(all.rows.length);
    const angle = rowOf(all, "left.wheel.camber");
    expect([angle.step, angle.stepUnit]).toEqual([0.25, "deg"]);
    expect(angle.changes["left.camber"].more).toBeCloseTo(0.25, 9);
  });

  it("marks what nobody has measured", async () => {
    const name = presetNames().find((each) => text(each).includes("# starting value"));
    const marked =
      name ??
      edited(
        "balanced-two-seater",
        'up: "9 7/16",',
        'up: "9 7/16", # starting value of rack.up: measure and correct\n   ',
      );
    const all = await sensitivity(marked);
    const assumed = all.rows.filter((row) => row.assumed).map((row) => row.quantity);
    expect(assumed).not.toEqual([]);
    const { out } = await run(["sensitivity", marked]);
    expect(out).toMatch(/~[A-Z]/);
    expect(out).toContain("~ assumed, not measured");
  });

  it("looks at one number alone, and helps with a name that is misspelt", async () => {
    const { out } = await run(["sensitivity", "cut-rods-off-middle", "--figure", "lockDifferenceInner"]);
    expect(out).toContain("Inner locks, left less right (left lock larger positive): now -5.86");
    for (const line of out.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    const wrong = await run(["sensitivity", "cut-rods-off-middle", "--figure", "lockDiferenceInner"]);
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('Did you mean "lockDifferenceInner"?');
  });
});
