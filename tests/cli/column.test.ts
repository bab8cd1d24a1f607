import { describe, expect, it } from "vitest";
import { expectClose } from "../close.ts";
import { run } from "./run.ts";
import { bumpShape, poseShape, steerShape } from "./shapes.ts";

const car = "twin-beam-relay";

async function json(...argv: string[]) {
  const { code, out } = await run([...argv, "--json"]);
  expect(code).toBe(0);
  return JSON.parse(out);
}

describe("a car that is steered by its column", () => {
  it("has a column in degrees where others have a rack", async () => {
    const { rows, zero } = steerShape.parse(await json("steer", car, "--from=-90", "--to=90", "--step=45 deg"));
    expectClose(
      rows.map((row) => row.column),
      [-90, -45, 0, 45, 90],
      { abs: 1e-12, rel: 0 },
    );
    expect(rows[0].rack).toBeUndefined();
    expect(zero).toBe(0);
    const pose = poseShape.parse(await json("pose", car, "--column=90"));
    expectClose(pose.column, 90, { abs: 1e-12, rel: 0 });
    expectClose(pose.left.steer, rows[4].left.steer, { abs: 1e-12, rel: 0 });
    expectClose(bumpShape.parse(await json("bump", car, "--column=90")).column, 90, { abs: 1e-12, rel: 0 });
  });

  it("says the column in headings, in words and in CSV", async () => {
    expect((await run(["steer", car, "--csv"])).out).toMatch(/^column \(deg\),/);
    expect((await run(["pose", car, "--column=-90"])).out).toContain("Column 90.0° right of its middle");
    expect((await run([car])).out).toContain("column in its middle with the wheels straight");
  });

  it("does not take a rack, nor a rack's car a column", async () => {
    const rack = await run(["pose", car, "--rack=1"]);
    expect(rack.code).toBe(2);
    expect(rack.err).toContain(
      "--rack does not fit this car, which is steered by its column: give --column, in degrees.",
    );
    const column = await run(["bump", "rack-ahead", "--column=1"]);
    expect(column.code).toBe(2);
    expect(column.err).toContain("--column does not fit this car, which is steered by a rack: give --rack, a length.");
  });

  it("is warned of beyond its travel", async () => {
    const { code, err } = await run(["pose", car, "--column=481"]);
    expect(code).toBe(0);
    expect(err).toContain("warning: column at 481.0° to the left is beyond the file's travel, 480.0° to that side.");
  });
});

describe("a car without suspension", () => {
  const kart = "fixed-kingpin-yard-kart";

  it("has steering and positions, and says why it has no travel", async () => {
    expect((await run(["steer", kart])).code).toBe(0);
    expect((await run([kart])).out.replace(/\s+/g, " ")).toContain("BUMP no suspension: the king pins are fixed");
    poseShape.parse(await json("pose", kart, "--column=10"));
    for (const argv of [
      ["bump", kart],
      ["pose", kart, "--travel=1"],
    ]) {
      const { code, out, err } = await run(argv);
      expect({ code, out }).toEqual({ code: 2, out: "" });
      expect(err).toContain("there is no suspension, and so no travel");
    }
  });
});
