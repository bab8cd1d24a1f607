import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { openTerminal, type Terminal } from "../terminal/support/terminal.ts";

const program = fileURLToPath(new URL("../../bin/rackwright.js", import.meta.url));
const named: Readonly<Record<string, string>> = {
  Up: "\x1b[A",
  Down: "\x1b[B",
  Right: "\x1b[C",
  Enter: "\r",
  Space: " ",
};

let folder = "";
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "first-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/**
 * Opens an example, presses keys, and between them waits for what is to be seen first; then until the screen shows what was
 * to be reached. Gives the keys that it took.
 */
async function task(car: string, before: RegExp, keys: readonly (string | RegExp)[], after: RegExp): Promise<number> {
  const terminal: Terminal = openTerminal([program, car], { env: { XDG_STATE_HOME: folder, HOME: folder } });
  await terminal.until(`the start of ${car}`, (text) => before.test(text));
  expect(terminal.text()).not.toMatch(after);
  for (const key of keys) {
    if (typeof key === "string") terminal.type(named[key] ?? key);
    else await terminal.until(String(key), (text) => key.test(text));
  }
  await terminal.until(String(after), (text) => after.test(text));
  terminal.type("qd");
  await terminal.ended();
  return keys.filter((key) => typeof key === "string").length;
}

const times = (key: string, count: number) => Array<string>(count).fill(key);

// The README tells what these cost: change both together.
describe("what a first-time task costs in keys", () => {
  it("makes the locks equal: the screen itself names the key", async () => {
    const cost = await task(
      "cut-rods-off-middle",
      /right inner 5\.\d° short of left|left inner 5\.\d° short of right[\s\S]*c fits it/,
      ["c"],
      /left and right lock are equal/,
    );
    expect(cost).toBe(1);
  });

  it("brings the worst toe change under 1/8 in across the tyre", async () => {
    const cost = await task(
      "widened-offset-rack",
      /BUMP +toes in 7\/32 in .*toes out 13\/32 in/,
      [...times("Down", 7), "Enter", "0", "Enter"],
      /BUMP +toes out 1\/32 in .*toes out 1\/32 in/,
    );
    expect(cost).toBe(10);
  });

  it("finds a tab place for 80 % Ackermann", async () => {
    const cost = await task(
      "strut-hatchback-corners",
      /ACKERMANN +64 % .* 64 %/,
      times("Right", 8),
      /ACKERMANN +80 % .* 80 %[\s\S]*DEAD POINT +26\.1° DOUBTFUL .*26\.1° DOUBTFUL/,
    );
    expect(cost).toBe(8);
  });

  it("finds it with fewer keys on the map of tab places, which shows what else it does before it is taken", async () => {
    const cost = await task(
      "strut-hatchback-corners",
      /ACKERMANN +64 % .* 64 %/,
      ["6", "Space", "Up", "Up", /Acker +79\.7 % +79\.7 %[\s\S]*dead pt +26\.\d+° +26\.\d+°/, "Enter"],
      /ACKERMANN +80 % .* 80 %[\s\S]*DEAD POINT +26\.1° DOUBTFUL .*26\.1° DOUBTFUL/,
    );
    expect(cost).toBe(5);
  });
});
