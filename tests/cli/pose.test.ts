import { afterAll, describe, expect, it } from "vitest";
import { expectClose } from "../close.ts";
import { folder, run } from "./run.ts";
import { poseShape } from "./shapes.ts";
import { byRack, byTravel, spatialDoubleArm } from "./spatialDoubleArm.ts";

const place = folder();
const car = place.put("spatial.yaml", spatialDoubleArm);
afterAll(() => place.remove());

/** The values are given to 1e-5 degrees and 1e-4 mm; they are promised to 1e-4 and 1e-3. */
const angles = { abs: 1e-4, rel: 0 };
const lengths = { abs: 1e-3, rel: 0 };

async function pose(...options: string[]) {
  const { code, out, err } = await run(["pose", car, "--json", ...options]);
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return poseShape.parse(JSON.parse(out));
}

describe("pose, against derived values of a spatial double arm", () => {
  it.each(byTravel)("has them at %s mm of travel, on both sides", async (travel, ...values) => {
    const { left, right } = await pose(`--travel=${travel}`);
    for (const side of [left, right]) {
      expectClose([side.toe, side.camber, side.caster, side.kpi], values.slice(0, 4), angles);
      expectClose([side.scrubRadius, side.trail], values.slice(5), lengths);
      expect(side.travel).toBe(travel);
    }
    expectClose(left.points.contact[1] - 720, values[4], lengths);
    expectClose(right.points.contact[1], -left.points.contact[1], { abs: 0, rel: 0 });
  });

  it.each(byRack)("has them with the rack at %s mm, and mirrored for the right wheel", async (rack, ...values) => {
    const { left } = await pose(`--rack=${rack}`);
    expectClose([left.steer, left.camber, left.caster, left.kpi], values.slice(0, 4), angles);
    expectClose([left.scrubRadius, left.trail], values.slice(4), lengths);
    const { right } = await pose(`--rack=${-rack}`);
    expect(right.steer).toBe(-left.steer);
    expect([right.toe, right.camber, right.trail]).toEqual([left.toe, left.camber, left.trail]);
  });

  it("has the joints where they were derived to be at 100 mm of bump", async () => {
    const { points } = (await pose("--travel=100")).left;
    expectClose(points.lowerJoint, [10, 635.9348, 343.6738], lengths);
    expectClose(points.upperJoint, [-28.209, 586.8554, 569.8514], lengths);
    expectClose(points.tieRodOuter, [-121.0138, 610.8386, 410.0482], lengths);
    expectClose(points.wheelCenter[2], 430, { abs: 1e-6, rel: 0 });
  });

  it("moves each wheel by its own travel where it is given one", async () => {
    const mixed = await pose("--travel=50", "--travel-right=-50");
    const up = await pose("--travel=50");
    const down = await pose("--travel=-50");
    expect(mixed.left).toEqual(up.left);
    expect(mixed.right).toEqual(down.right);
    const other = await pose("--travel-left=50", "--travel=-50");
    expect([other.left, other.right]).toEqual([up.left, down.right]);
  });
});

describe("pose, its units", () => {
  it("takes bare numbers in the file's unit, or in that of --units, and lengths that bring their own", async () => {
    const plain = await pose("--rack=12.7");
    expect(await pose("--rack=1/2 in")).toEqual(plain);
    expect(await pose("--rack", "0.5 in")).toEqual(plain);
    const inches = await pose("--rack=1/2", "--units=in");
    expect(inches.units).toEqual({ length: "in", angle: "deg" });
    expect(inches.rack).toBe(0.5);
    expect(inches.left.steer).toBe(plain.left.steer);
    expectClose(inches.left.trail * 25.4, plain.left.trail, { abs: 1e-12, rel: 1e-14 });
  });

  it("takes negative lengths with and without an equals sign", async () => {
    expect(await pose("--rack", "-12.7 mm")).toEqual(await pose("--rack=-1/2 in"));
  });
});

describe("pose, for reading", () => {
  it("names the car, the place, each figure with its unit and sign, and every point of both wheels", async () => {
    const { out, err } = await run(["pose", car, "--rack=-12.7", "--travel=25.4"]);
    expect(err).toBe("");
    expect(out).toContain("Spatial double arm\nRack 12.7 mm right of its middle; both wheels at 25.4 mm bump.");
    expect(out).toMatch(/^Camber +deg +-?\d+\.\d\d +-?\d+\.\d\d +top outward positive$/m);
    for (const wheel of ["left", "right"])
      expect(out).toMatch(new RegExp(`^${wheel} lower joint( +-?\\d+\\.\\d){3}$`, "m"));
    expect(out).not.toMatch(/NaN|undefined|null/);
  });

  it("tells the wheels apart when they stand unlike", async () => {
    const { out } = await run(["pose", car, "--travel-left=10"]);
    expect(out).toContain("left wheel at 10.0 mm bump, right wheel at ride height");
  });
});

describe("pose, out of reach", () => {
  it("ends with 3, prints no data and names the link and the gap", async () => {
    const { code, out, err } = await run(["pose", car, "--rack=150", "--json"]);
    expect(code).toBe(3);
    expect(out).toBe("");
    expect(err).toMatch(
      /does not close at rack 150\.0 mm left of its middle, ride height: \w+ tie rod is \d+\.\d mm too (short|long)\.$/m,
    );
  });

  it("warns of a rack and of a travel beyond the file's, and computes them", async () => {
    const { code, out, err } = await run(["pose", car, "--rack=61", "--travel=-101"]);
    expect(code).toBe(0);
    expect(err).toContain("warning: rack at 61.0 mm to the left is beyond the file's travel, 60.0 mm to that side.");
    expect(err).toContain("warning: 101.0 mm of droop is beyond the file's travel, 100.0 mm.");
    expect(out).toContain("Camber");
  });

  it("does not warn at the very ends", async () => {
    expect((await run(["pose", car, "--rack=60", "--travel=100"])).err).toBe("");
  });
});
