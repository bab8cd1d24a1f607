import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inTerminal, quantile, report } from "./pace.ts";

/**
 * From a key press to the last byte of its finished frame, in a pseudo-terminal of 80 by 24: each press moves the chosen
 * tie-rod tab by a step, so that the car is read, compiled and solved anew. The goal is a frame of a 60 Hz display. Once
 * with a press every 30 ms, and once on the car that has everything to check, with presses that come while its checks are
 * under way: they begin 120 ms after the last change. A frame that ends a check can come between a press and its own
 * frame; such a one in a hundred does not change the 95th percentile.
 */
const frame = 16;
const frameEnd = "\x1b[?2026l";
const keys = { right: "\x1b[C", left: "\x1b[D" };

const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Which car, how often to press, what is not counted at first, and how long to wait before and between presses, ms. */
interface Scene {
  readonly car: readonly string[];
  readonly presses: number;
  readonly warmUp: number;
  readonly first: number;
  readonly wait: (press: number) => number;
}

/** Milliseconds from each press to its frame. Rejects when no frame comes. */
async function timesOf({ car, presses, warmUp, first, wait }: Scene): Promise<readonly number[]> {
  // Changes that an earlier run left unsaved would be asked about before any key.
  const state = mkdtempSync(join(tmpdir(), "key-to-frame-"));
  const screen = inTerminal(["bin/rackwright.js", ...car], { env: { XDG_STATE_HOME: state } });
  let seen = "";
  let arrived: (() => void) | null = null;
  screen.onData((data) => {
    seen += data;
    if (seen.includes(frameEnd)) arrived?.();
  });

  function nextFrame(act: () => void): Promise<number> {
    return new Promise((resolve, reject) => {
      const start = performance.now();
      const none = () => reject(new Error(`no frame came; the terminal shows ${JSON.stringify(seen)}`));
      const late = setTimeout(none, 5000);
      seen = "";
      arrived = () => {
        clearTimeout(late);
        arrived = null;
        resolve(performance.now() - start);
      };
      act();
    });
  }

  await nextFrame(() => {});
  await pause(first);
  const times: number[] = [];
  for (let press = 0; press < warmUp + presses; press += 1) {
    // A few steps out and back again: every press changes the numbers, and none leaves the sound range.
    const key = press % 8 < 4 ? keys.right : keys.left;
    const took = await nextFrame(() => screen.write(key));
    if (press >= warmUp) times.push(took);
    await pause(wait(press));
  }
  screen.kill();
  rmSync(state, { recursive: true, force: true });
  return times;
}

const alone = await timesOf({ car: [], presses: 240, warmUp: 40, first: 500, wait: () => 30 });
const checking = await timesOf({
  car: ["check-before-welding"],
  presses: 160,
  warmUp: 40,
  // The first checks, in a cold process, are done by then.
  first: 2500,
  wait: (press) => 130 + (press % 8) * 5,
});
report("key-to-frame-95th-percentile/16-ms", quantile(alone, 0.95) / frame, 1);
report("key-to-frame-median/16-ms", quantile(alone, 0.5) / frame);
report("key-to-frame-while-checking-95th-percentile/16-ms", quantile(checking, 0.95) / frame, 1);
report("key-to-frame-while-checking-median/16-ms", quantile(checking, 0.5) / frame);
process.exit(0);
