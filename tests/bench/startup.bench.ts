import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BuildOptions, build } from "esbuild";
import { bundleOptions } from "../../bin/bundle.js";
import { noDeveloperTools } from "../../bin/lean/plugins.js";
import { buildSingle } from "../../bin/single.js";
import { inTerminal, median, report } from "./pace.ts";

/**
 * The time from a start to the first frame in a pseudo-terminal, as a ratio to what cannot be helped: Node doing
 * nothing, and the smallest Ink program, bundled the ordinary way. Runs take turns, so that a busy machine is busy for
 * all of them.
 */
const rounds = 41;
const place = mkdtempSync(join(tmpdir(), "rackwright-startup-"));

/** Milliseconds until the text shows or, with no text to wait for, until the end. */
function timeTo(text: string | null, words: readonly string[]): Promise<number> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    let shown = "";
    let took: number | null = null;
    const run = inTerminal(words);
    run.onData((data) => {
      shown += data;
      if (text === null || took !== null || !shown.includes(text)) return;
      took = performance.now() - start;
      run.kill();
    });
    run.onExit(() => {
      if (text === null) resolve(performance.now() - start);
      else if (took !== null) resolve(took);
      else
        reject(
          new Error(`${words.join(" ")} ended without showing "${text}", but: ${JSON.stringify(shown.slice(-1000))}`),
        );
    });
  });
}

/** The hello program, bundled. */
async function hello(name: string, options: BuildOptions): Promise<string> {
  const outfile = join(place, `${name}.mjs`);
  await build({ ...options, splitting: false, entryPoints: ["tests/bench/hello.tsx"], outfile });
  return outfile;
}

const ordinary = await hello("ordinary", {
  ...bundleOptions,
  define: { "process.env.NODE_ENV": '"production"' },
  inject: [],
  plugins: [noDeveloperTools],
});
const lean = await hello("lean", bundleOptions);
const single = join(place, "rackwright.mjs");
await buildSingle(single);

const programs = {
  nothing: { text: null, words: ["-e", "0"] },
  hello: { text: "hello", words: [ordinary] },
  leanHello: { text: "hello", words: [lean] },
  screen: { text: "RODS", words: ["bin/rackwright.js"] },
  single: { text: "RODS", words: [single] },
};
const times: Record<keyof typeof programs, number[]> = {
  nothing: [],
  hello: [],
  leanHello: [],
  screen: [],
  single: [],
};
for (let round = 0; round < rounds; round += 1) {
  for (const name of Object.keys(programs) as (keyof typeof programs)[]) {
    const took = await timeTo(programs[name].text, programs[name].words);
    if (round > 0) times[name].push(took);
  }
}
rmSync(place, { recursive: true, force: true });

const { nothing, hello: ordinaryHello, leanHello, screen, single: inOneFile } = times;
report("first-screen/node-doing-nothing", median(screen) / median(nothing), 2.5);
report("first-screen/hello-in-an-ordinary-bundle", median(screen) / median(ordinaryHello), 1.35);
report("first-screen/hello-in-a-bundle-like-ours", median(screen) / median(leanHello));
report("hello-in-an-ordinary-bundle/node-doing-nothing", median(ordinaryHello) / median(nothing));
report("hello-in-a-bundle-like-ours/node-doing-nothing", median(leanHello) / median(nothing));
report("first-screen-of-the-one-file/node-doing-nothing", median(inOneFile) / median(nothing));
report("first-screen-of-the-one-file/first-screen", median(inOneFile) / median(screen));
