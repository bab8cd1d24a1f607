import { afterAll, describe, expect, it } from "vitest";
import { expectClose } from "../close.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";
import { poseShape, steerShape } from "./shapes.ts";
import { byRack, spatialDoubleArm } from "./spatialDoubleArm.ts";

const place = folder();
const car = place.put("spatial.yaml", spatialDoubleArm);
const offset = place.put("offset.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

async function steer(file: string, ...options: string[]) {
  const { code, out, err } = await run(["steer", file, "--json", ...options]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return steerShape.parse(JSON.parse(out));
}

describe("steer, its rows", () => {
  it("are 21 from lock to lock, evenly spaced, both ends included", async () => {
    const { rows } = await steer(car);
    expect(rows.map((row) => row.rack)).toEqual(Array.from({ length: 21 }, (_, i) => -60 + 6 * i));
  });

  it("are counted, not accumulated: a tenth of an inch a step ends on the end to the last bit", async () => {
    const { rows } = await steer(offset, "--from=-1", "--to=1", "--step=0.1");
    expect(rows.length).toBe(21);
    expect([rows[0].rack, rows[20].rack]).toEqual([-1, 1]);
    expectClose(
      rows.map((row) => row.rack),
      Array.from({ length: 21 }, (_, i) => (i - 10) / 10),
      { abs: 1e-14, rel: 0 },
    );
  });

  it("are a single one where from and to are one place, and run downwards when to is below from", async () => {
    expect((await steer(car, "--from=5", "--to=5", "--step=1")).rows.map((row) => row.rack)).toEqual([5]);
    expect((await steer(car, "--from=10", "--to=-10", "--step=10")).rows.map((row) => row.rack)).toEqual([10, 0, -10]);
  });

  it("stand at whole steps between the ends where the step does not divide the range", async () => {
    const racks = async (...asked: string[]) => (await steer(car, ...asked)).rows.map((row) => row.rack);
    expect(await racks("--from=0", "--to=10", "--step=3")).toEqual([0, 3, 6, 9, 10]);
    expect(await racks("--from=-10", "--to=7", "--step=6")).toEqual([-10, -6, 0, 6, 7]);
    expect(await racks("--from=7", "--to=-10", "--step=6")).toEqual([7, 6, 0, -6, -10]);
    expect(await racks("--from=1", "--to=2", "--step=6")).toEqual([1, 2]);
  });

  it("take lengths with units", async () => {
    const { rows } = await steer(car, "--from=-1/2 in", "--to", "12.7", "--step=0.5 in");
    expectClose(
      rows.map((row) => row.rack),
      [-12.7, 0, 12.7],
      { abs: 1e-12, rel: 0 },
    );
  });
});

describe("steer, its numbers", () => {
  it.each(byRack)("have the derived steer of a spatial double arm with the rack at %s mm", async (rack, value) => {
    const { rows } = await steer(car, `--from=${rack}`, `--to=${rack}`);
    expectClose(rows[0].left.steer, value, { abs: 1e-4, rel: 0 });
  });

  it("are those of pose at the same place", async () => {
    const { rows } = await steer(offset);
    for (const row of [rows[0], rows[7], rows[20]]) {
      const { out } = await run(["pose", offset, "--json", `--rack=${row.rack}`]);
      const pose = poseShape.parse(JSON.parse(out));
      expectClose([row.left.steer, row.right.steer], [pose.left.steer, pose.right.steer], { abs: 1e-12, rel: 0 });
    }
  });

  it("obey the condition of Ackermann (cot outer − cot inner = w / l; e.g. Jazar, Vehicle Dynamics, ch. 7, recalled from memory)", async () => {
    const { rows, wheelbase } = await steer(offset);
    const cot = (angle: number) => 1 / Math.tan((angle * Math.PI) / 180);
    // Where the drawn steering axes meet the ground: (0.2, 21.5, 7) to (-0.7, 20.3, 14), in inches.
    const spacing = 2 * (21.5 + (7 * 1.2) / 7);
    const telling = rows.filter((row) => row.idealInner !== null);
    expect(telling.length).toBeGreaterThan(15);
    for (const { outer, idealInner, inner, percentOfIdealInner, ackermann } of telling) {
      if (outer === null || idealInner === null || inner === null) throw new Error("a row tells half");
      expectClose(cot(outer) - cot(idealInner), spacing / wheelbase, { abs: 1e-11, rel: 0 });
      expectClose(percentOfIdealInner, (100 * inner) / idealInner, { abs: 1e-9, rel: 0 });
      expectClose(ackermann, (100 * (inner - outer)) / (idealInner - outer), { abs: 1e-8, rel: 0 });
    }
  });

  it("are null, and never NaN, where the outer wheel turns under 2° or nothing turns", async () => {
    const { rows } = await steer(offset);
    const middle = rows[10];
    expect(middle).toMatchObject({ rack: 0, turn: null, inner: null, outer: null, idealInner: null, ackermann: null });
    const small = (await steer(offset, "--from=0.1", "--to=0.1")).rows[0];
    expect(small.outer).toBeLessThan(2);
    expect(small).toMatchObject({ turn: "right", idealInner: null, ackermann: null, turnRadius: null });
  });

  it("end in the locks, left less right", async () => {
    const { rows, locks, zero, track } = await steer(offset);
    // This car's tab is behind the axle: the right end of the rack turns it left.
    expect(locks.left).toEqual(rows[0]);
    expect(locks.right).toEqual(rows[20]);
    expect(locks.difference.inner).toBeCloseTo((rows[0].inner ?? 0) - (rows[20].inner ?? 0), 12);
    expect(zero).toBe(0);
    // From the car file's own description: inner locks 31.8 and 34.0 degrees, Ackermann 75.9 and 100.8 %.
    expect([locks.left?.inner?.toFixed(1), locks.right?.inner?.toFixed(1)]).toEqual(["31.8", "34.0"]);
    expect([locks.left?.ackermann?.toFixed(1), locks.right?.ackermann?.toFixed(1)]).toEqual(["75.9", "100.8"]);
    // The contact points: wheel centres 24.5 in out, 10.75 in radius, camber -0.5°, toe 0.1°.
    const lean = 10.75 * Math.sin((0.5 * Math.PI) / 180) * Math.cos((0.1 * Math.PI) / 180);
    expectClose(track, 2 * (24.5 + lean), { abs: 1e-12, rel: 0 });
  });

  it("keep every angle when they are asked for in the other unit", async () => {
    const inches = await steer(offset);
    const metric = await steer(offset, "--units=mm");
    expect(metric.units.length).toBe("mm");
    expect(metric.rows.map((row) => row.left.steer)).toEqual(inches.rows.map((row) => row.left.steer));
    expectClose(metric.wheelbase, inches.wheelbase * 25.4, { abs: 0, rel: 1e-14 });
    expectClose(metric.rows[0].turnRadius, (inches.rows[0].turnRadius ?? 0) * 25.4, { abs: 0, rel: 1e-14 });
  });
});

describe("steer, as CSV", () => {
  it("has the JSON's numbers under headings with units", async () => {
    const { rows } = await steer(offset);
    const { code, out } = await run(["steer", offset, "--csv"]);
    const [heading, ...lines] = out.trimEnd().split("\r\n");
    expect(code).toBe(0);
    expect(heading).toBe(
      "rack (in),left.steer (deg),right.steer (deg),turn,inner (deg),outer (deg),idealInner (deg),percentOfIdealInner (%),ackermann (%),turnRadius (in)",
    );
    expect(lines.length).toBe(rows.length);
    lines.forEach((line, i) => {
      const { rack, left, right, turn, inner, outer, ...rest } = rows[i];
      const values = [rack, left.steer, right.steer, turn, inner, outer, ...Object.values(rest)];
      expect(line).toBe(values.map((value) => (value === null ? "" : String(value))).join(","));
    });
  });
});

describe("steer, for reading", () => {
  it("has columns in line, units, signs, locks, and degrees beside every percent of Ackermann", async () => {
    const { out } = await run(["steer", offset]);
    const lines = out.split("\n");
    expect(lines[0]).toBe("Rail two-seater, front widened, offset rack");
    expect(lines.find((line) => line.includes("rack   wheel"))).toContain("ideal");
    expect(out).toContain("to the left positive");
    expect(out).toContain("Ackermann 76 %, inner 2.2° short of ideal");
    expect(out).toContain("inner left lock 2.1° short of right");
    expect(out).not.toMatch(/NaN|undefined|null/);
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe("steer, out of reach", () => {
  it("ends with 3, keeps the rows that close, and names the link and the gap", async () => {
    const { code, out, err } = await run(["steer", offset, "--from=0", "--to=5", "--step=1", "--json"]);
    expect(code).toBe(3);
    const { rows } = steerShape.parse(JSON.parse(out));
    expect(rows[0].left.steer).not.toBeNull();
    expect(rows[5].right.steer).toBeNull();
    expect(rows[5].inner).toBeNull();
    expect(err).toContain("warning: rack at 5 in to the left is beyond the file's travel, 2 in to that side.");
    expect(err).toMatch(
      /rows? out of reach; the farthest does not close at rack 5 in left of its middle.*right tie rod is .* in too short\.$/m,
    );
  });

  it("says so in words in the row's place", async () => {
    const { out } = await run(["steer", offset, "--from=0", "--to=5", "--step=1"]);
    expect(out).toMatch(/^5\.000 {2}right tie rod is 2 9\/16 in too short$/m);
  });
});
