import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { inTerminal, quantile, report } from "./pace.ts";

/**
 * From a key press to the last byte of its finished frame, in a pseudo-terminal of 80 by 24: each press moves the chosen
 * tie-rod tab by a step, so that the car is read, compiled and solved anew. The goal is a frame of a 60 Hz display. Once
 * with a press every 30 ms, and once on the car that has everything to check, with presses that come while its checks are
 * under way: they begin 120 ms after the last change. And in the form for readings between points, on a sheet of 121 of them:
 * each Enter changes one, and a character comes while they are brought together. A frame that ends a check, or brings a
 * sheet's answer, can come between a press and its own frame; such a few in a hundred do not change the 95th percentile.
 */
const frame = 16;
const frameEnd = "\x1b[?2026l";
const keys = { right: "\x1b[C", left: "\x1b[D", down: "\x1b[B" };

const pause = (milliseconds: number): Promise<void> => new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Which car, how often to press, what is not counted at first, and how long to wait before and between presses, ms. */
interface Scene {
  readonly car: readonly string[];
  readonly presses: number;
  readonly warmUp: number;
  readonly first: number;
  readonly key: (press: number) => string;
  readonly wait: (press: number) => number;
}

/** Milliseconds from each press to its frame. Rejects when no frame comes. */
async function timesOf({ car, presses, warmUp, first, key, wait }: Scene): Promise<readonly number[]> {
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
    const took = await nextFrame(() => screen.write(key(press)));
    if (press >= warmUp) times.push(took);
    await pause(wait(press));
  }
  screen.kill();
  rmSync(state, { recursive: true, force: true });
  return times;
}

/** A few steps out and back again: every press changes the numbers, and none leaves the sound range. */
const outAndBack = (press: number): string => (press % 8 < 4 ? keys.right : keys.left);

/** Down to the first readings, then a digit behind the fraction of each, and on to the next. */
const readings = { from: 10, key: (press: number) => (press < 10 ? keys.down : press % 2 === 0 ? "0" : "\r") } as const;

const alone = await timesOf({ car: [], key: outAndBack, presses: 240, warmUp: 40, first: 500, wait: () => 30 });
const checking = await timesOf({
  car: ["check-before-welding"],
  key: outAndBack,
  presses: 160,
  warmUp: 40,
  // The first checks, in a cold process, are done by then.
  first: 2500,
  wait: (press) => 130 + (press % 8) * 5,
});
const reading = await timesOf({
  car: ["donor-front"],
  key: readings.key,
  presses: 120,
  warmUp: 50,
  first: 2500,
  wait: (press) => (press < readings.from ? 30 : press % 2 === 0 ? 350 + (press % 8) * 5 : 20 + (press % 8) * 5),
});
report("key-to-frame-95th-percentile/16-ms", quantile(alone, 0.95) / frame, 1);
report("key-to-frame-median/16-ms", quantile(alone, 0.5) / frame);
report("key-to-frame-while-checking-95th-percentile/16-ms", quantile(checking, 0.95) / frame, 1);
report("key-to-frame-while-checking-median/16-ms", quantile(checking, 0.5) / frame);
report("key-to-frame-in-the-form-of-a-survey-95th-percentile/16-ms", quantile(reading, 0.95) / frame, 1);
report("key-to-frame-in-the-form-of-a-survey-median/16-ms", quantile(reading, 0.5) / frame);
process.exit(0);
