import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { publint } from "publint";
import { formatMessage } from "publint/utils";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const [, example = "", printed = ""] =
  readFileSync(join(root, "README.md"), "utf8").match(/```js\n(.*?)```\n\nIt prints:\n\n```text\n(.*?)```\n/s) ?? [];
let place = "";

function ran(command: string, ...words: string[]) {
  const { status, stdout, stderr } = spawnSync(command, words, { cwd: place, encoding: "utf8" });
  return { status, stdout, stderr };
}

/** Runs a program in the folder that the package was installed into. */
function program(text: string) {
  writeFileSync(join(place, "program.mjs"), text);
  return ran(process.execPath, "program.mjs");
}

/** What TypeScript says of a program there, of every declaration too. */
function typed(text: string, ...options: string[]) {
  writeFileSync(join(place, "program.mts"), text);
  const compiler = join(root, "node_modules/typescript/bin/tsc");
  return ran(process.execPath, compiler, "program.mts", "--noEmit", "--strict", "--target", "es2022", ...options);
}

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "rackwright library "));
  spawnSync("npm", ["pack", "--ignore-scripts", "--pack-destination", place], { cwd: root });
  const [tarball = ""] = readdirSync(place);
  writeFileSync(join(place, "package.json"), '{ "name": "own", "version": "1.0.0", "private": true }');
  const installed = ran("npm", "install", "--offline", "--no-audit", "--no-fund", `./${tarball}`);
  expect(installed).toMatchObject({ status: 0 });
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

describe("the package in a program of its user's", () => {
  it("runs the README's example from an empty folder and prints what the README says", () => {
    expect(program(example)).toEqual({ status: 0, stdout: printed, stderr: "" });
  });

  const modes = [
    ["nodenext", "nodenext"],
    ["esnext", "bundler"],
  ];

  it.each(modes)("gives types that need no other package: --module %s --moduleResolution %s", (module, resolution) => {
    const text = `
      import { openCar, figures, type OpenCar } from "rackwright";
      import { compile, solve, newPoses, readSide, poseStride, type Drawn } from "rackwright/kinematics";
      export async function lock(text: string): Promise<number | null> {
        const car = await openCar(text);
        return "complaints" in car ? null : (car.locks.left?.inner ?? null);
      }
      export const rows = (car: OpenCar): number => car.steerTable().rows.length + figures.length;
      export function height(drawn: Drawn): number | string {
        const front = compile(drawn);
        if ("refused" in front) return front.refused;
        const poses: Float64Array = newPoses(2);
        solve(front, 0, 10, 10, poses, poseStride);
        const left = readSide(poses, poseStride, "left");
        return left.closes ? left.wheelCenter.z : left.gap;
      }`;
    const options = ["--module", module, "--moduleResolution", resolution];
    expect(typed(text, ...options)).toEqual({ status: 0, stdout: "", stderr: "" });
    const wrong = typed(`${text}\nexport const no: string = rows;`, ...options);
    expect(wrong.stdout).toContain("TS2322");
  });

  it("takes the README's example for sound TypeScript", () => {
    const text = example.replace("(rad) =>", "(rad: number | null) =>");
    const nodes = ["--typeRoots", join(root, "node_modules/@types"), "--types", "node"];
    const options = ["--module", "nodenext", "--moduleResolution", "nodenext", ...nodes];
    expect(typed(text, ...options)).toEqual({ status: 0, stdout: "", stderr: "" });
  });

  it("gives nothing of what is inside", () => {
    const { status, stderr } = program('await import("rackwright/dist/main.js");');
    expect(status).toBe(1);
    expect(stderr).toContain("ERR_PACKAGE_PATH_NOT_EXPORTED");
  });

  it("says the same of a car as the command line does", () => {
    const text = `
      import { readFileSync } from "node:fs";
      import { openCar } from "rackwright";
      const car = await openCar(readFileSync("node_modules/rackwright/presets/twin-beam-relay.yaml", "utf8"));
      console.log(JSON.stringify(car.steerTable().rows.map(({ inner, turnRadius }) => [inner, turnRadius])));`;
    const said = ran(
      process.execPath,
      "node_modules/rackwright/bin/rackwright.js",
      ...["steer", "twin-beam-relay", "--json", "--units=mm"],
    );
    interface Row {
      readonly inner: number | null;
      readonly turnRadius: number | null;
    }
    const told: readonly Row[] = JSON.parse(said.stdout).rows;
    const { stdout } = program(text);
    const degrees = (rad: number | null) => (rad === null ? null : (rad * 180) / Math.PI);
    const mine: (number | null)[][] = JSON.parse(stdout);
    expect(mine).toHaveLength(21);
    for (const [i, [inner, radius]] of mine.entries()) {
      // Both are one double turned into degrees; two ways to do that differ by rounding.
      expect(degrees(inner) ?? 0).toBeCloseTo(told[i].inner ?? 0, 10);
      expect(radius).toEqual(told[i].turnRadius);
    }
  });

  it("tells what is wrong with a text instead of throwing", () => {
    const text = `
      import { openCar } from "rackwright";
      for (const text of ["", "units: in\\nwheelbase: [", "\\u0000"]) {
        const car = await openCar(text);
        console.log("complaints" in car && car.complaints.length > 0);
      }`;
    expect(program(text)).toEqual({ status: 0, stdout: "true\ntrue\ntrue\n", stderr: "" });
  });

  it("is a package that publint has nothing to say of", async () => {
    const pkgDir = join(place, "node_modules/rackwright");
    const { messages, pkg } = await publint({ pkgDir, strict: true, pack: false });
    expect(messages.map((each) => formatMessage(each, pkg))).toEqual([]);
  });
});
