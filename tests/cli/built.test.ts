import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { afterAll, describe, expect, it } from "vitest";
import { presetText } from "../output/studies.ts";
import { folder, run } from "./run.ts";

const bin = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const place = folder();
const car = place.put("car.yaml", presetText("widened-offset-rack"));
afterAll(() => place.remove());

function built(...argv: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...argv], { encoding: "utf8" });
  return { code: status, out: stdout, err: stderr };
}

describe("the built program", () => {
  it.each([[car], ["steer", car, "--json"], ["bump", car, "--csv"], ["pose", car], ["schema"], ["presets"]])(
    "says what the source says: %s %s",
    async (...argv) => {
      const { code, out, err } = await run(argv);
      expect(built(...argv)).toEqual({ code, out, err });
    },
  );

  it("gives the exit codes: 0, 2 for bad usage and bad files, 3 for out of reach", () => {
    expect(built("steer", car).code).toBe(0);
    expect(built("steer").code).toBe(2);
    expect(built("steer", "missing.yaml").code).toBe(2);
    expect(built("pose", car, "--rack=5").code).toBe(3);
  });

  it("keeps data and remarks apart", () => {
    const { out, err } = built("steer", car, "--from=0", "--to=5", "--csv");
    expect(err).toContain("out of reach");
    expect(
      out
        .split("\r\n")
        .slice(0, -1)
        .every((line) => line.split(",").length === 10),
    ).toBe(true);
  });
});
