import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import headless from "@xterm/headless";
import { build } from "esbuild";
import { bundleOptions } from "../../bin/bundle.js";
import { inTerminal, median, quantile, report } from "./pace.ts";

/**
 * From a key to the frame that answers it, in a pseudo-terminal: the program's session as a ratio to stock Ink at 60
 * frames a second, with one view, bundled alike. The two run side by side and take turns key by key, so that a busy
 * machine is busy for both. A frame is there when its last byte is; what it shows is checked at the end.
 */
const keys = 200;
const place = mkdtempSync(join(tmpdir(), "terminal-latency-"));

interface Run {
  /** Presses a key; gives the milliseconds until the output that follows comes to rest. */
  press(): Promise<number>;
  quit(): Promise<string>;
}

/** Silence that ends a frame. */
const rest = 12;

async function start(name: string, cols: number, rows: number): Promise<Run> {
  const outfile = join(place, `${name}.mjs`);
  await build({ ...bundleOptions, splitting: false, entryPoints: [`tests/bench/latency/${name}.tsx`], outfile });
  const run = inTerminal([outfile], { cols, rows, env: { LANG: "C.UTF-8" } });
  const emulator = new headless.Terminal({ cols, rows, allowProposedApi: true });
  let last = 0;
  run.onData((data) => {
    last = performance.now();
    emulator.write(data);
  });
  const text = () =>
    Array.from({ length: rows }, (_, y) => emulator.buffer.active.getLine(y)?.translateToString(true)).join("\n");
  const settled = async (since: number) => {
    while (last < since || performance.now() - last < rest) await pause(2);
    return last - since;
  };
  while (!text().includes("count 0")) await pause(10);
  return {
    press() {
      const since = performance.now();
      run.write("j");
      return settled(since);
    },
    async quit() {
      const shown = text();
      const ended = new Promise<void>((resolve) => run.onExit(() => resolve()));
      run.write("q");
      await ended;
      return shown;
    },
  };
}

for (const [cols, rows] of [
  [80, 24],
  [200, 60],
]) {
  const runs = { ours: await start("ours", cols, rows), stock: await start("stock", cols, rows) };
  const times: Record<keyof typeof runs, number[]> = { ours: [], stock: [] };
  for (let key = 1; key <= keys; key++) {
    const order = key % 2 === 0 ? (["ours", "stock"] as const) : (["stock", "ours"] as const);
    for (const name of order) {
      const took = await runs[name].press();
      if (key > keys / 10) times[name].push(took);
      await pause((key * 7) % 20);
    }
  }
  for (const run of Object.values(runs)) {
    if (!(await run.quit()).includes(`count ${keys}`)) throw new Error("A key was lost.");
  }
  const size = `${cols}x${rows}`;
  report(`latency/${size}/median-to-stock`, median(times.ours) / median(times.stock), 1);
  report(`latency/${size}/95-percent-to-stock`, quantile(times.ours, 0.95) / quantile(times.stock, 0.95), 1);
  report(`latency/${size}/median-milliseconds`, median(times.ours));
}
rmSync(place, { recursive: true, force: true });
