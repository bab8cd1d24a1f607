import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import * as esbuild from "esbuild";
import { bundleOptions } from "../../bin/bundle.js";

/** Bundles soak.ts as the program is, but with its own names, so that a fault says where it is; and runs it. */
const here = fileURLToPath(new URL(".", import.meta.url));
const outfile = join(here, "../../node_modules/.soak/soak.js");
await esbuild.build({
  ...bundleOptions,
  splitting: false,
  minify: false,
  sourcemap: "inline",
  entryPoints: [join(here, "soak.ts")],
  outfile,
});
process.exitCode =
  spawnSync(process.execPath, ["--enable-source-maps", outfile, ...process.argv.slice(2)], { stdio: "inherit" })
    .status ?? 1;
