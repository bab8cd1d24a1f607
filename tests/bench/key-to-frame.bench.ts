import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inTerminal, quantile, report } from "./pace.ts";

/**
 * From a key press to the last byte of its finished frame, in a pseudo-terminal of 80 by 24: each press moves the chosen
 * tie-rod tab by a step, so that the car is read, compiled and solved anew. The goal is a frame of a 60 Hz display.
 */
const presses = 240;
const warmUp = 40;
const frame = 16;
const frameEnd = "\x1b[?2026l";
const keys = { right: "\x1b[C", left: "\x1b[D" };

// Changes that an earlier run left unsaved would be asked about before any key.
const state = mkdtempSync(join(tmpdir(), "key-to-frame-"));
const screen = inTerminal(["bin/rackwright.js"], { env: { XDG_STATE_HOME: state } });
let seen = "";
let arrived: (() => void) | null = null;
screen.onData((data) => {
  seen += data;
  if (seen.includes(frameEnd)) arrived?.();
});

/** Milliseconds until the next frame has ended. Rejects when none comes. */
function nextFrame(act: () => void): Promise<number> {
  return new Promise((resolve, reject) => {
    const start = performance.now();
    const late = setTimeout(() => reject(new Error(`no frame came; the terminal shows ${JSON.stringify(seen)}`)), 5000);
    seen = "";
    arrived = () => {
      clearTimeout(late);
      arrived = null;
      resolve(performance.now() - start);
    };
    act();
  });
}

const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

await nextFrame(() => {});
await pause(500);
const times: number[] = [];
for (let press = 0; press < warmUp + presses; press += 1) {
  // A few steps out and back again: every press changes the numbers, and none leaves the sound range.
  const key = press % 8 < 4 ? keys.right : keys.left;
  const took = await nextFrame(() => screen.write(key));
  if (press >= warmUp) times.push(took);
  await pause(30);
}
screen.kill();
rmSync(state, { recursive: true, force: true });
report("key-to-frame-95th-percentile/16-ms", quantile(times, 0.95) / frame, 1);
report("key-to-frame-median/16-ms", quantile(times, 0.5) / frame);
process.exit(0);
