import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { type IPty, spawn } from "@lydell/node-pty";
import headless from "@xterm/headless";
import { build } from "esbuild";
import { afterAll, beforeAll } from "vitest";
import { bundleOptions } from "../../../bin/bundle.js";

const here = fileURLToPath(new URL(".", import.meta.url));
const root = fileURLToPath(new URL("../../../", import.meta.url));

/**
 * The harness program for the tests of one file, bundled as the program itself is; gives what to ask for its path.
 */
export function harnessForTests(): () => string {
  let place = "";
  beforeAll(async () => {
    place = mkdtempSync(join(tmpdir(), "harness-"));
    const outExtension = { ".js": ".mjs" };
    await build({ ...bundleOptions, metafile: false, entryPoints: [`${here}start.ts`], outdir: place, outExtension });
  });
  afterAll(() => rmSync(place, { recursive: true, force: true }));
  return () => join(place, "start.mjs");
}

export interface Start {
  readonly columns?: number;
  readonly rows?: number;
  readonly env?: Record<string, string>;
}

/** A program in a pseudo-terminal, its output read by a terminal emulator. */
export interface Terminal {
  readonly pty: IPty;
  /** All that was received so far. */
  output(): string;
  /** The rows that are visible, without trailing blanks. */
  rows(): string[];
  text(): string;
  /** Where the cursor is, and whether it can be seen. */
  cursor(): { x: number; y: number; shown: boolean };
  isAlternate(): boolean;
  /** Press keys: one write. */
  type(bytes: string): void;
  resize(columns: number, rows: number): void;
  /** Write on the screen past the program, as another program might. */
  scribble(bytes: string): Promise<void>;
  /** Wait until the screen fulfils a condition; on failure the error shows the screen. */
  until(what: string, condition: (text: string) => boolean): Promise<void>;
  /** Wait for the end; gives the exit code. */
  ended(): Promise<number>;
}

const environment = { TERM: "xterm-256color", LANG: "en_US.UTF-8", PATH: process.env.PATH ?? "" };

/** Longest wait for something that should come at once, on a busy machine. */
const waitMilliseconds = 10_000;

/** Start Node with these words. */
export function openTerminal(words: readonly string[], { columns = 80, rows = 24, env = {} }: Start = {}): Terminal {
  return openCommand(process.execPath, words, { columns, rows, env });
}

/**
 * Start Node with these words from a shell that says what it finds before and after: the exit code, and whether the
 * line's settings are as they were.
 */
export function openFromShell(words: readonly string[], start: Start = {}): Terminal {
  const script = `echo before; old=$(stty -g); "$@"; echo "code $?"; [ "$old" = "$(stty -g)" ] && echo "line as before"; echo after`;
  return openCommand("sh", ["-c", script, "sh", process.execPath, ...words], start);
}

/** Start any command. */
export function openCommand(
  command: string,
  words: readonly string[],
  { columns = 80, rows = 24, env = {} }: Start = {},
): Terminal {
  const emulator = new headless.Terminal({ cols: columns, rows, allowProposedApi: true });
  const pty = spawn(command, [...words], { cols: columns, rows, cwd: root, env: { ...environment, ...env } });
  let received = "";
  let code: number | undefined;
  let cursorShown = true;
  const listeners = new Set<() => void>();
  const changed = () => {
    for (const listener of [...listeners]) listener();
  };
  emulator.parser.registerCsiHandler({ prefix: "?", final: "h" }, (parameters) => {
    if (parameters.includes(25)) cursorShown = true;
    return false;
  });
  emulator.parser.registerCsiHandler({ prefix: "?", final: "l" }, (parameters) => {
    if (parameters.includes(25)) cursorShown = false;
    return false;
  });
  pty.onData((data) => {
    received += data;
    emulator.write(data, changed);
  });
  pty.onExit(({ exitCode, signal }) => {
    code = signal ? -signal : exitCode;
    // What was written last may still be on its way through the emulator.
    setTimeout(() => emulator.write("", changed), 20);
  });

  function rowsNow(): string[] {
    const { active } = emulator.buffer;
    // The emulator may keep cells past its width for a while after a resize; no one sees those.
    return Array.from(
      { length: emulator.rows },
      (_, y) => active.getLine(active.viewportY + y)?.translateToString(true, 0, emulator.cols) ?? "",
    );
  }

  function wait<T>(what: string, value: () => T | undefined): Promise<T> {
    return new Promise((resolve, reject) => {
      const timer = setTimeout(() => {
        listeners.delete(look);
        reject(new Error(`waited in vain for ${what}; the screen is:\n${rowsNow().join("\n")}`));
      }, waitMilliseconds);
      function look(): void {
        const now = value();
        if (now === undefined) return;
        listeners.delete(look);
        clearTimeout(timer);
        resolve(now);
      }
      listeners.add(look);
      look();
    });
  }

  return {
    pty,
    output: () => received,
    rows: rowsNow,
    text: () => rowsNow().join("\n"),
    cursor: () => ({ x: emulator.buffer.active.cursorX, y: emulator.buffer.active.cursorY, shown: cursorShown }),
    isAlternate: () => emulator.buffer.active.type === "alternate",
    type: (bytes) => pty.write(bytes),
    resize(newColumns, newRows) {
      emulator.resize(newColumns, newRows);
      pty.resize(newColumns, newRows);
    },
    scribble: (bytes) => new Promise((resolve) => emulator.write(bytes, resolve)),
    until: async (what, condition) => {
      await wait(what, () => (condition(rowsNow().join("\n")) ? true : undefined));
    },
    ended: () => wait("the end", () => code),
  };
}
