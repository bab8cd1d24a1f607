import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import * as esbuild from "esbuild";

/**
 * Bundles the tests that hold the kernel and the formulas, with the mutated sources in them, into one file: a mutant then
 * waits for one module to load instead of some hundreds. Stryker runs it in its own copy of the project.
 */
const root = fileURLToPath(new URL("../..", import.meta.url));

/** Tests that take seconds, which each mutant would have to wait for: they are left for what the others let live. */
const slow = [
  /AgainstNewton\.test\.ts$/,
  /^tests\/kinematics\/(properties|planarSolver)/,
  /^tests\/measures\/range\/(distance|rodEnds)/,
  /^tests\/measures\/(worst|study|lockShares|change|fromTape|steeringShaft)\.test\.ts$/,
];

/** Unset: the quick tests of the kernel and the formulas. `all`: the slow ones too. Else a pattern: the tests of that path, wherever they are. */
const wanted = process.env.RACKWRIGHT_MUTATE ?? "";
const ours = /^tests\/(kinematics|measures|published)\//;

/** @param {string} path */
function isWanted(path) {
  if (wanted !== "" && wanted !== "all") return new RegExp(wanted).test(path);
  return ours.test(path) && (wanted === "all" || !slow.some((late) => late.test(path)));
}

const tests = readdirSync(`${root}tests`, { recursive: true })
  .map((name) => `tests/${name}`)
  .filter((path) => /\.test\.tsx?$/.test(path) && isWanted(path))
  .sort();

/** What finds its files beside itself still does, from inside the bundle.
 * @type {esbuild.Plugin} */
const places = {
  name: "places",
  setup: ({ onLoad }) =>
    onLoad({ filter: /\.tsx?$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replaceAll("import.meta.url", JSON.stringify(pathToFileURL(path).href)),
      loader: path.endsWith("x") ? "tsx" : "ts",
    })),
};

/** A mutant that keeps a file of tests from loading is noticed by that: without this it would run no test, and live.
 * @param {string} path */
const loaded = (path) => `await import("./${path}").catch((error) => test("${path}", () => { throw error; }));`;

await esbuild.build({
  absWorkingDir: root,
  stdin: { contents: `import { test } from "vitest";\n${tests.map(loaded).join("\n")}`, resolveDir: root },
  outdir: "tests/mutate/bundled",
  entryNames: "tests",
  splitting: true,
  bundle: true,
  format: "esm",
  platform: "node",
  target: "node20",
  packages: "external",
  loader: { ".ttf": "binary" },
  plugins: [places],
});
