import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import headless, { type IBufferCell } from "@xterm/headless";
import type { Cells } from "../../src/terminal/cells.ts";
import { inTerminal } from "./pace.ts";

/** What one key did: the bytes that came for it, and the screen afterwards. */
export interface Step {
  readonly bytes: number;
  readonly screen: Cells;
}

const columns = 80;
const rows = 24;
/** Longest wait for the first byte of an answer. */
const answer = 1500;
/** Silence after which a frame is taken for complete. */
const rest = 150;

/** Runs a program in a pseudo-terminal of 80 by 24 and presses keys; the first step is its first screen. */
export async function watch(words: readonly string[], keys: readonly string[]): Promise<Step[]> {
  const emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
  // A home of its own, where nothing of an earlier run waits to be taken up again.
  const home = mkdtempSync(join(tmpdir(), "watch-"));
  const env = { LANG: "C.UTF-8", HOME: home, XDG_STATE_HOME: home, XDG_DATA_HOME: home, XDG_CACHE_HOME: home };
  const run = inTerminal(words, { cols: columns, rows, env });
  let bytes = 0;
  let last = performance.now();
  run.onData((data) => {
    bytes += Buffer.byteLength(data);
    last = performance.now();
    emulator.write(data);
  });
  // A key that changes nothing has no frame to wait for, so the wait for a first byte has an end.
  const settle = async () => {
    const start = performance.now();
    while (bytes === 0 && performance.now() - start < answer) await pause(5);
    while (performance.now() - last < rest) await pause(5);
  };
  while (bytes < 500 || emulator.buffer.active.type === "normal") await pause(20);
  await settle();
  const steps: Step[] = [{ bytes, screen: screenOf(emulator) }];
  for (const key of keys) {
    bytes = 0;
    run.write(key);
    await settle();
    steps.push({ bytes, screen: screenOf(emulator) });
  }
  run.kill();
  rmSync(home, { recursive: true, force: true });
  return steps;
}

function screenOf(emulator: InstanceType<typeof headless.Terminal>): Cells {
  const glyphs: string[] = [];
  const styles = new Int32Array(columns * rows);
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      const cell = emulator.buffer.active.getLine(y)?.getCell(x);
      glyphs.push(cell === undefined ? " " : cell.getWidth() === 0 ? "" : cell.getChars() || " ");
      styles[y * columns + x] = cell === undefined ? 0 : styleOf(cell);
    }
  }
  return { columns, rows, glyphs, styles, cursor: undefined, lines: [], starts: [] };
}

/** As src/terminal/style.ts packs it, what cannot be seen on a blank left out. */
function styleOf(cell: IBufferCell): number {
  const isBlank = cell.getChars().trim() === "";
  const attributes: readonly (boolean | number)[] = [
    !isBlank && cell.isBold(),
    !isBlank && cell.isDim(),
    !isBlank && cell.isItalic(),
    cell.isUnderline(),
    cell.isInverse(),
    cell.isStrikethrough(),
  ];
  const bits = attributes.reduce<number>((sum, isOn, bit) => sum | (isOn ? 1 << (10 + bit) : 0), 0);
  const showsInk = !isBlank || bits !== 0;
  const ink = cell.isFgDefault() || !showsInk ? 0 : cell.getFgColor() + 1;
  return bits | ink | ((cell.isBgDefault() ? 0 : cell.getBgColor() + 1) << 5);
}
