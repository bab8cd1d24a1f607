import { spawnSync } from "node:child_process";
import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { build } from "../../bin/build.js";
import { bundleOptions } from "../../bin/bundle.js";

/**
 * Runs the benches whose names begin with one of the arguments, or all. A bench is a file *.bench.ts here that prints
 * lines "name ratio goal ok|MISSED"; it is bundled as the program is, since readers run the built file and not the
 * source. Fails when a goal was missed.
 */
const here = fileURLToPath(new URL(".", import.meta.url));
const root = join(here, "../..");
const out = join(root, "node_modules/.bench");
const wanted = process.argv.slice(2);
const benches = readdirSync(here).filter(
  (name) => name.endsWith(".bench.ts") && (wanted.length === 0 || wanted.some((word) => name.startsWith(word))),
);

await build();
rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
let missed = 0;
for (const bench of benches) {
  const outfile = join(out, bench.replace(/\.ts$/, ".js"));
  await esbuild.build({
    ...bundleOptions,
    splitting: false,
    entryPoints: [join(here, bench)],
    outfile,
    // The builder and the pseudo-terminal find their own files beside them; the output is as deep as this folder.
    external: ["esbuild", "@lydell/node-pty", "../../bin/*"],
  });
  const { stdout, status } = spawnSync(process.execPath, [outfile], {
    cwd: root,
    stdio: ["ignore", "pipe", "inherit"],
    encoding: "utf8",
  });
  process.stdout.write(`# ${bench}\n${stdout}`);
  if (status !== 0 || /\bMISSED$/m.test(stdout)) missed += 1;
}
process.exitCode = missed > 0 ? 1 : 0;
