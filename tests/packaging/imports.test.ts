import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";

/** Who may import whom, written out once more: a line that goes missing from the linter's table shows here. */
const allowed: Record<string, readonly string[]> = {
  files: ["vehicle"],
  vehicle: [],
  kinematics: [],
  measures: ["kinematics", "vehicle"],
  solve: ["measures", "kinematics", "vehicle"],
  output: ["measures", "vehicle"],
  library: ["vehicle", "kinematics", "measures"],
  cli: ["files", "vehicle", "kinematics", "measures", "solve", "output"],
  terminal: [],
  screen: ["files", "vehicle", "kinematics", "measures", "solve", "output", "terminal"],
};
const folders = Object.keys(allowed);

const root = fileURLToPath(new URL("../..", import.meta.url));
const cruiser = join(root, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
let place = "";

interface Violation {
  readonly from: string;
  readonly to: string;
  readonly rule: { readonly name: string };
}

/** What the project's own rules say about a small source tree: file name → text. */
function violations(files: Record<string, string>): string[] {
  rmSync(join(place, "src"), { recursive: true, force: true });
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(place, name)), { recursive: true });
    writeFileSync(join(place, name), text);
  }
  const { stdout } = spawnSync(
    process.execPath,
    [cruiser, "src", "--config", join(root, ".dependency-cruiser.cjs"), "--output-type", "json"],
    { cwd: place, encoding: "utf8" },
  );
  const found: readonly Violation[] = JSON.parse(stdout).summary.violations;
  return found.map(({ from, to, rule }) => `${rule.name}: ${from} > ${to}`).sort();
}

beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "rackwright-imports-"));
  writeFileSync(join(place, "tsconfig.json"), JSON.stringify({ include: ["src"] }));
  mkdirSync(join(place, "node_modules/anything"), { recursive: true });
  writeFileSync(join(place, "node_modules/anything/package.json"), '{ "name": "anything", "main": "index.js" }');
  writeFileSync(join(place, "node_modules/anything/index.js"), "exports.one = 1;");
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

describe("the import rules", () => {
  it("let a folder import exactly the folders of the table", () => {
    const files: Record<string, string> = {};
    const expected: string[] = [];
    for (const from of folders) {
      files[`src/${from}/part.ts`] = "export const part = 1;\n";
      for (const to of folders) {
        if (from === to) continue;
        const user = `src/${from}/uses-${to}.ts`;
        files[user] = `import { part } from "../${to}/part.ts";\nexport const twice = 2 * part;\n`;
        if (!allowed[from].includes(to)) expected.push(`${from} > ${to}`);
      }
    }
    const found = violations(files).map((line) => line.replace(/^.*: src\/(\w+)\/.* > src\/(\w+)\/.*$/, "$1 > $2"));
    expect([...new Set(found)].sort()).toEqual(expected.sort());
  });

  it("count an import of a type as an import", () => {
    expect(
      violations({
        "src/screen/model.ts": "export interface Model { readonly one: 1 }\n",
        "src/vehicle/car.ts": 'import type { Model } from "../screen/model.ts";\nexport type Car = Model;\n',
      }),
    ).toEqual(["vehicle-imports: src/vehicle/car.ts > src/screen/model.ts"]);
  });

  it("let output see what a search found, never start one", () => {
    const solve = { "src/solve/find.ts": "export interface Found { readonly one: 1 }\nexport const find = 1;\n" };
    const types = 'import type { Found } from "../solve/find.ts";\nexport type Row = Found;\n';
    const values = 'import { find } from "../solve/find.ts";\nexport const row = find;\n';
    expect(violations({ ...solve, "src/output/sheet.ts": types })).toEqual([]);
    expect(violations({ ...solve, "src/output/sheet.ts": values })).toEqual([
      "output-takes-only-types-of-solve: src/output/sheet.ts > src/solve/find.ts",
    ]);
  });

  it("keep npm packages and Node's modules out of the kernel, and Node's out of the pure folders", () => {
    const npm = 'import { one } from "anything";\nexport const two = 2 * one;\n';
    const node = 'import { readFileSync } from "node:fs";\nexport const read = readFileSync;\n';
    expect(
      violations({
        "src/kinematics/npm.ts": npm,
        "src/kinematics/node.ts": node,
        "src/vehicle/npm.ts": npm,
        "src/vehicle/node.ts": node,
        "src/files/node.ts": node,
      }),
    ).toEqual([
      "kinematics-stands-alone: src/kinematics/node.ts > fs",
      "kinematics-stands-alone: src/kinematics/npm.ts > node_modules/anything/index.js",
      "pure-folders-touch-no-machine: src/vehicle/node.ts > fs",
    ]);
  });

  it("refuse cycles, unknown folders, imports of the entry and imports that lead nowhere", () => {
    expect(
      violations({
        "src/solve/a.ts": 'import { b } from "./b.ts";\nexport const a = (): number => b();\n',
        "src/solve/b.ts": 'import { a } from "./a.ts";\nexport const b = (): number => a();\n',
        "src/gadgets/part.ts": 'import { gone } from "./gone.ts";\nexport const part = gone;\n',
        "src/main.ts": "export const main = 1;\n",
        "src/cli/back.ts": 'import { main } from "../main.ts";\nexport const back = main;\n',
      }),
    ).toEqual([
      "cli-imports: src/cli/back.ts > src/main.ts",
      "known-folders: src/gadgets/part.ts > ./gone.ts",
      "no-cycles: src/solve/a.ts > src/solve/b.ts",
      "nobody-imports-the-entry: src/cli/back.ts > src/main.ts",
      "resolves: src/gadgets/part.ts > ./gone.ts",
    ]);
  });
});
