import { rmSync } from "node:fs";
import { build } from "../../bin/build.js";

/**
 * Tests of the built program run what the source says now. When it cannot be built they find no program, and fail;
 * tests of the source run all the same.
 */
export async function setup(): Promise<void> {
  try {
    await build();
  } catch {
    rmSync(new URL("../../dist/main.js", import.meta.url), { force: true });
    process.stderr.write("The program cannot be built from this source (npm run build says why).\n");
  }
}
