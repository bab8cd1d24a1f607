import { chmodSync, mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { bundleOptions } from "./bundle.js";
import { licencesOf } from "./licences.js";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Said by a Node that can read the file and is still too old, before anything else is. */
const tooOld = `if(Number.parseInt(process.versions.node,10)<20){
process.stderr.write("rackwright: Node 20 or newer is needed; this is Node "+process.versions.node+".\\n");
process.exit(2)}`;

/** Threads of the screen load this file too, and want nothing of it but the desk that they work at. */
const entry = `
  import { isMainThread } from "node:worker_threads";
  import { main } from "./src/main.ts";
  const { argv, env, stdin, stdout, stderr } = process;
  if (isMainThread) process.exitCode = await main(argv.slice(2), { stdin, stdout, stderr, env });
  export const { checkDesk } = isMainThread ? {} : await import("./src/screen/checkDesk.ts");
  export const { surveyDesk } = isMainThread ? {} : await import("./src/screen/surveyDesk.ts");
`;

/** The texts of the examples of a kind, by name, in order of the alphabet. */
function textsIn(/** @type {string} */ folder) {
  const files = readdirSync(folder).filter((file) => file.endsWith(".yaml"));
  const names = files.map((file) => file.slice(0, -".yaml".length)).sort();
  return Object.fromEntries(names.map((name) => [name, readFileSync(join(folder, `${name}.yaml`), "utf8")]));
}

/**
 * The texts of the examples take the place of the module that reads them from their folders.
 * @type {esbuild.Plugin}
 */
const examplesInside = {
  name: "examples-inside",
  setup(build) {
    build.onLoad({ filter: /[\\/]src[\\/]files[\\/]examples\.ts$/ }, () => {
      const presets = join(root, "presets");
      const texts = {
        cars: textsIn(presets),
        sheets: textsIn(join(presets, "sheets")),
        readings: textsIn(join(presets, "readings")),
      };
      return {
        contents: `
          const texts = ${JSON.stringify(texts)};
          export const presetsFolder = () => null;
          export const exampleNames = (kind) => Object.keys(texts[kind]);
          export const exampleText = (kind, name) => texts[kind][name];`,
      };
    });
  },
};

/**
 * Writes the whole program as one file that needs nothing but Node: every part of it, the examples, the fonts and the
 * licences. Gives its size, bytes.
 */
export async function buildSingle(/** @type {string} */ outfile) {
  const { banner, plugins, ...options } = bundleOptions;
  const { outputFiles, metafile } = await esbuild.build({
    ...options,
    splitting: false,
    absWorkingDir: root,
    stdin: { contents: entry, resolveDir: root, sourcefile: "single.js" },
    outfile,
    banner: { js: `#!/usr/bin/env node\n${banner.js}\n${tooOld}` },
    plugins: [...plugins, examplesInside],
    write: false,
  });
  const own = readFileSync(join(root, "LICENSE"), "utf8");
  const licences = `${own}\n${"-".repeat(80)}\n\n${licencesOf(metafile, root)}`.replaceAll("*/", "* /");
  const [program] = outputFiles;
  if (program === undefined) throw new Error("nothing was bundled");
  const text = `${program.text}/*\n${licences}*/\n`;
  mkdirSync(dirname(outfile), { recursive: true });
  const beside = `${outfile}.${process.pid}.new`;
  writeFileSync(beside, text);
  chmodSync(beside, 0o755);
  renameSync(beside, outfile);
  return Buffer.byteLength(text);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const outfile = resolve(process.argv[2] ?? join(root, "single/rackwright.mjs"));
  const bytes = await buildSingle(outfile);
  process.stdout.write(`${outfile}  ${Math.ceil(bytes / 1024)} kB\n`);
}
