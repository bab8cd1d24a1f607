import { spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { builtinModules } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { Metafile } from "esbuild";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { build } from "../../bin/build.js";
import { bundledPackages, licencesOf } from "../../bin/licences.js";

const root = fileURLToPath(new URL("../..", import.meta.url));
let metafile: Metafile;
let place = "";

beforeAll(async () => {
  metafile = await build();
  place = mkdtempSync(join(tmpdir(), "rackwright-package-"));
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

/** The packages whose code runs as soon as this output is imported: its own and those of what it imports at once. */
function packagesAtOnce(output: string): string[] {
  const reached = new Set<string>();
  const reach = (path: string): void => {
    if (reached.has(path)) return;
    reached.add(path);
    for (const { path: next, kind } of metafile.outputs[path].imports) {
      if (kind === "import-statement" && metafile.outputs[next] !== undefined) reach(next);
    }
  };
  reach(output);
  const outputs = Object.fromEntries([...reached].map((path) => [path, metafile.outputs[path]]));
  return bundledPackages({ inputs: {}, outputs }).map((folder) => folder.replace(/^.*node_modules\//, ""));
}

function outputOf(entry: string): string {
  const found = Object.entries(metafile.outputs).find(([, { entryPoint }]) => entryPoint === entry);
  expect(found, `${entry} is a chunk of its own`).toBeDefined();
  return found?.[0] ?? "";
}

describe("the built program", () => {
  it("imports nothing but its own chunks and Node's modules", () => {
    const outside = Object.values(metafile.outputs)
      .flatMap(({ imports }) => imports)
      .filter(({ external }) => external)
      .map(({ path }) => path.replace(/^node:/, ""))
      .filter((path) => !builtinModules.includes(path));
    expect(outside).toEqual([]);
  });

  it("starts without a package, and opens the screen without those that only other uses need", () => {
    expect(packagesAtOnce("dist/main.js")).toEqual([]);
    const screen = packagesAtOnce(outputOf("src/screen/run.ts"));
    for (const later of ["mathjs", "ws", "react-devtools-core"]) expect(screen).not.toContain(later);
  });

  it("runs a command without the screen's packages, and looks for its car without the command line's", () => {
    const screens = ["ink", "react", "react-reconciler", "yoga-layout", "mathjs"];
    const commands = packagesAtOnce(outputOf("src/cli/program.ts"));
    expect(commands).toContain("commander");
    expect(commands.filter((name) => screens.includes(name))).toEqual([]);
    const asking = packagesAtOnce(outputOf("src/cli/main.ts"));
    expect(asking.filter((name) => [...screens, "commander"].includes(name))).toEqual([]);
  });

  it("carries the licence of every package in it", () => {
    const text = readFileSync(join(root, "dist/THIRD-PARTY-LICENSES"), "utf8");
    const packages = bundledPackages(metafile);
    expect(packages.length).toBeGreaterThan(10);
    for (const folder of packages) {
      const { name, version } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
      expect(text).toContain(`${name} ${version} (`);
    }
  });

  it("is refused when a package in it is not under a permissive licence", () => {
    const folder = "node_modules/closed";
    mkdirSync(join(place, folder), { recursive: true });
    writeFileSync(
      join(place, folder, "package.json"),
      '{ "name": "closed", "version": "1.0.0", "license": "UNLICENSED" }',
    );
    const holding: Metafile = {
      inputs: {},
      outputs: {
        "dist/main.js": {
          bytes: 1,
          inputs: { [`${folder}/index.js`]: { bytesInOutput: 1 } },
          imports: [],
          exports: [],
        },
      },
    };
    expect(() => licencesOf(holding, place)).toThrow("closed 1.0.0 is licensed UNLICENSED");
  });
});

describe("the package", () => {
  it("holds the launcher, the built program and the presets, and no source or tests", () => {
    const { stdout } = spawnSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
      cwd: root,
      encoding: "utf8",
    });
    const paths: string[] = JSON.parse(stdout)[0].files.map(({ path }: { path: string }) => path);
    const expected = [
      "LICENSE",
      "README.md",
      "package.json",
      "bin/rackwright.js",
      "dist/main.js",
      "dist/THIRD-PARTY-LICENSES",
    ];
    expect(paths).toEqual(expect.arrayContaining(expected));
    const known =
      /^(LICENSE|README\.md|package\.json|bin\/rackwright\.js|dist\/[\w.-]+|presets\/(?:[\w-]+\/)?[\w-]+\.yaml)$/;
    expect(paths.filter((path) => !known.test(path))).toEqual([]);
    expect(paths.filter((path) => path.startsWith("presets/")).length).toBeGreaterThan(0);
  });

  it("is locked to versions and not to a place to download them from", () => {
    const lock = readFileSync(join(root, "package-lock.json"), "utf8");
    expect(lock).not.toMatch(/"resolved"|https?:\/\/[^"]*\.tgz/);
  });
});

describe("the launcher", () => {
  const launcher = join(root, "bin/rackwright.js");

  it("is short: all it does is look for the program and run it", () => {
    expect(readFileSync(launcher, "utf8").trimEnd().split("\n").length).toBeLessThan(20);
  });

  it("says what to do when the program is not built", () => {
    mkdirSync(join(place, "bin"), { recursive: true });
    cpSync(launcher, join(place, "bin/rackwright.js"));
    writeFileSync(join(place, "package.json"), '{ "type": "module" }');
    expect(existsSync(join(place, "dist"))).toBe(false);
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(place, "bin/rackwright.js")], {
      encoding: "utf8",
    });
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain("npm run build");
    expect(stderr).not.toMatch(/^\s+at /m);
  });
});
