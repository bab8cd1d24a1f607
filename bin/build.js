import { execFile } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import * as esbuild from "esbuild";
import { bundleOptions } from "./bundle.js";
import { declarationsOf } from "./declarations.js";
import { licencesOf } from "./licences.js";

const run = promisify(execFile);
const root = fileURLToPath(new URL("..", import.meta.url));
const dist = join(root, "dist");
/** The manual page, which the program prints of itself. */
const page = "rackwright.1";
/** What package.json exports, by the names of its files. */
const library = { library: "src/library/index.ts", kinematics: "src/library/kinematics.ts" };

/**
 * Bundles src/main.ts into dist/main.js, what programs import beside it, and the chunks that they load on first use;
 * then the program prints its manual page. Every file is replaced whole and leftovers go last, so that a program started
 * meanwhile finds either the old build or the new one.
 */
export async function build() {
  const { outputFiles, metafile } = await esbuild.build({
    ...bundleOptions,
    absWorkingDir: root,
    entryPoints: { main: "src/main.ts", ...library },
    outdir: "dist",
    chunkNames: "[name]-[hash]",
    write: false,
  });
  const files = new Map(outputFiles.map((file) => [file.path.slice(dist.length + 1), file.contents]));
  for (const [name, entry] of Object.entries(library))
    files.set(`${name}.d.ts`, Buffer.from(declarationsOf(join(root, entry))));
  files.set("THIRD-PARTY-LICENSES", Buffer.from(licencesOf(metafile, root)));
  mkdirSync(dist, { recursive: true });
  // Beside dist, since a file is replaced whole only within one disk, and where nothing packs it.
  const drafts = mkdtempSync(join(root, "node_modules/.build-"));
  const entryLast = [...files].sort(([a], [b]) => Number(a === "main.js") - Number(b === "main.js"));
  for (const [name, contents] of entryLast) {
    writeFileSync(join(drafts, name), contents);
    renameSync(join(drafts, name), join(dist, name));
  }
  const { stdout } = await run(process.execPath, [join(root, "bin/rackwright.js"), "man"]);
  writeFileSync(join(drafts, page), stdout);
  renameSync(join(drafts, page), join(dist, page));
  rmSync(drafts, { recursive: true });
  for (const name of readdirSync(dist))
    if (name !== page && !files.has(name)) rmSync(join(dist, name), { force: true });
  return metafile;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const metafile = await build();
  for (const [path, { bytes }] of Object.entries(metafile.outputs))
    console.log(`${path}  ${Math.ceil(bytes / 1024)} kB`);
}
