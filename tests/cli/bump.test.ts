import { afterAll, describe, expect, it } from "vitest";
import { expectClose } from "../close.ts";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";
import { bumpShape, poseShape } from "./shapes.ts";
import { byTravel, spatialDoubleArm } from "./spatialDoubleArm.ts";

const place = folder();
const car = place.put("spatial.yaml", spatialDoubleArm);
const offset = place.put("offset.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

async function bump(file: string, ...options: string[]) {
  const { code, out, err } = await run(["bump", file, "--json", ...options]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return bumpShape.parse(JSON.parse(out));
}

describe("bump and pose of a car that does not stand straight with the rack in its middle", () => {
  it.each(["bump", "pose"])("%s says on stderr which place that is, unless one was asked for", async (command) => {
    const cut = place.put("cut.yaml", presetText("cut-rods-off-middle"));
    const { code, err } = await run([command, cut, "--json"]);
    expect(code).toBe(0);
    expect(err).toContain("the wheels of this car do not stand straight: they do with the rack 3.0 mm right");
    const option = /--rack='([^']+)'/.exec(err)?.[1];
    expect(await run([command, cut, "--json", `--rack=${option}`])).toMatchObject({ code: 0, err: "" });
    expect(await run([command, cut, "--json", "--rack=0"])).toMatchObject({ code: 0, err: "" });
  });
});

describe("bump, against derived values of a spatial double arm", () => {
  it("has toe, camber, caster and track at every travel, on both sides alike", async () => {
    const { rows, rack } = await bump(car, "--from=-100", "--to=100", "--step=50");
    expect(rack).toBe(0);
    expect(rows.map((row) => row.travel)).toEqual(byTravel.map(([travel]) => travel));
    rows.forEach((row, i) => {
      const [, toe, camber, caster, , contactOut] = byTravel[i];
      for (const side of [row.left, row.right]) {
        expectClose([side.toe, side.toeChange, side.camber, side.caster], [toe, toe, camber, caster], {
          abs: 1e-4,
          rel: 0,
        });
        expectClose(side.trackChange, contactOut, { abs: 1e-3, rel: 0 });
      }
      // Alike on both sides, it does not steer.
      expect(row.bounceSteer).toBe(0);
    });
  });

  it("has the slope at ride height: 0.00252215 °/mm", async () => {
    const { summary } = await bump(car);
    expectClose(summary.bumpSteer, { left: 0.00252215, right: 0.00252215 }, { abs: 1e-8, rel: 0 });
    expect(summary.worstToeChange).toBeCloseTo(0.28635, 4);
  });
});

describe("bump, its numbers", () => {
  it("are those of pose at the same place, with the rack held where it was asked", async () => {
    const table = await bump(offset, "--rack=-1", "--from=-3", "--to=3", "--step=1.5");
    expect(table.rack).toBe(-1);
    for (const row of table.rows) {
      const { out } = await run(["pose", offset, "--json", "--rack=-1", `--travel=${row.travel}`]);
      const pose = poseShape.parse(JSON.parse(out));
      for (const wheel of ["left", "right"] as const) {
        const { toe, camber, caster } = pose[wheel];
        expectClose([row[wheel].toe, row[wheel].camber, row[wheel].caster], [toe, camber, caster], {
          abs: 1e-12,
          rel: 0,
        });
      }
    }
  });

  it("count changes from travel 0 at the same rack, and bounce steer as the mean of both steers", async () => {
    const { rows } = await bump(offset, "--rack=1", "--from=-2", "--to=2", "--step=1");
    const ride = rows[2];
    for (const row of rows) {
      if (row.left.toe === null || row.right.toe === null || ride.left.toe === null || ride.right.toe === null)
        throw new Error("a row does not close");
      const [left, right] = [row.left.toe - ride.left.toe, row.right.toe - ride.right.toe];
      expectClose([row.left.toeChange, row.right.toeChange], [left, right], { abs: 1e-12, rel: 0 });
      // Toe-in is a steer to the right on the left wheel, to the left on the right wheel.
      expectClose(row.bounceSteer, (right - left) / 2, { abs: 1e-12, rel: 0 });
    }
  });

  it("sum up: slopes by central differences, the worst toe change and the worst bounce steer of the rows", async () => {
    const { rows, summary } = await bump(offset);
    const near = (await bump(offset, "--from=-0.001", "--to=0.001", "--step=0.001")).rows;
    for (const wheel of ["left", "right"] as const) {
      const slope = ((near[2][wheel].toe ?? 0) - (near[0][wheel].toe ?? 0)) / 0.002;
      // A difference of two toes kept to 1e-13 degrees over 0.002 in, and the curve's third derivative over its breadth.
      expectClose(summary.bumpSteer[wheel], slope, { abs: 1e-7, rel: 0 });
    }
    const changes = rows.flatMap((row) => [row.left.toeChange ?? 0, row.right.toeChange ?? 0]);
    expect(summary.worstToeChange).toBe(Math.max(...changes.map(Math.abs)));
    const bounces = rows.map((row) => row.bounceSteer ?? 0);
    expect(Math.abs(summary.worstBounceSteer ?? 0)).toBe(Math.max(...bounces.map(Math.abs)));
    expect(bounces).toContain(summary.worstBounceSteer);
    // From the car file's own description: -0.027 and +0.020 °/in, both steer right 0.9° at 3 in of droop.
    expect([summary.bumpSteer.left?.toFixed(3), summary.bumpSteer.right?.toFixed(3)]).toEqual(["-0.027", "0.020"]);
    expect(summary.worstBounceSteer?.toFixed(1)).toBe("-0.9");
  });

  it("have slopes per unit of length of the unit asked for", async () => {
    const inches = await bump(offset);
    const metric = await bump(offset, "--units=mm");
    expectClose(metric.summary.bumpSteer.left, (inches.summary.bumpSteer.left ?? 0) / 25.4, { abs: 0, rel: 1e-14 });
    expectClose(metric.rows[0].travel, -76.2, { abs: 1e-12, rel: 0 });
  });
});

describe("bump, its other forms", () => {
  it("is CSV with a heading of units", async () => {
    const { out } = await run(["bump", offset, "--csv", "--from=0", "--to=0"]);
    const [heading, line, end] = out.split("\r\n");
    expect(heading).toMatch(/^travel \(in\),left\.toe \(deg\),.*,bounceSteer \(deg\)$/);
    expect(line.split(",").length).toBe(heading.split(",").length);
    expect(end).toBe("");
  });

  it("is a table for reading with signs, slopes, toe across the tyre and bounce steer in words", async () => {
    const { out } = await run(["bump", offset]);
    expect(out).toContain("Both wheels up and down together, rack in its middle.");
    expect(out).toContain("Bump steer at ride height: left -0.027, right 0.020 deg/in");
    expect(out).toContain("Most toe change: 1.12°, 13/32 in across the tyre");
    expect(out).toContain("Bounce steer: both steer right 0.9° at 3 in droop");
    expect(out).toContain("toe, change: toe-in positive");
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
  });
});

describe("bump, out of reach", () => {
  it("ends with 3, keeps the rows that close and says why the others do not", async () => {
    const asked = ["bump", offset, "--from=0", "--to=30", "--step=10"];
    const json = await run([...asked, "--json"]);
    expect(json.code).toBe(3);
    const { rows, summary } = bumpShape.parse(JSON.parse(json.out));
    expect(rows[0].left.toe).not.toBeNull();
    expect(rows[3].left).toEqual({ toe: null, toeChange: null, camber: null, caster: null, trackChange: null });
    expect(summary.worstToeChange).not.toBeNull();
    expect(json.err).toContain("30 in of bump is beyond the file's travel, 3 in.");
    expect(json.err).toMatch(/out of reach; the farthest does not close at rack in its middle, 30 in bump: /);
    expect((await run(asked)).out).toMatch(/^30\.000 {2}left wheel stops .* short of going that far up$/m);
  });
});
