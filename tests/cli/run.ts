import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { main } from "../../src/cli/main.ts";

/** What a run of the command line came to. */
export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** What the screen was asked to open; null when it was not. */
  readonly screen: unknown;
}

/** A stream that keeps what is written to it. */
function keeper(isTTY: boolean) {
  const kept: string[] = [];
  const stream = Object.assign(new PassThrough(), { isTTY });
  stream.on("data", (chunk) => kept.push(String(chunk)));
  return { stream, text: () => kept.join("") };
}

/** Runs the command line in this process, as from a pipe unless a terminal is asked for. */
export async function run(
  argv: readonly string[],
  {
    terminal = false,
    env = {},
    typed = [],
  }: { terminal?: boolean; env?: Record<string, string>; typed?: readonly string[] } = {},
): Promise<Ran> {
  const stdout = keeper(terminal);
  const stderr = keeper(terminal);
  const stdin = Object.assign(Readable.from(typed.map((line) => `${line}\n`)), { isTTY: terminal });
  let screen: unknown = null;
  const streams = { stdin, stdout: stdout.stream, stderr: stderr.stream, env: { TERM: "xterm-256color", ...env } };
  const code = await main(argv, streams, (asked) => {
    screen = asked;
    return Promise.resolve(0);
  });
  return { code, out: stdout.text(), err: stderr.text(), screen };
}

/** A folder that is gone after the test file; `put` writes a file in it and gives its path. */
export function folder(): {
  path: string;
  put: (name: string, text: string | Uint8Array) => string;
  remove: () => void;
} {
  const path = mkdtempSync(join(tmpdir(), "rackwright-"));
  return {
    path,
    put: (name, text) => {
      writeFileSync(join(path, name), text);
      return join(path, name);
    },
    remove: () => rmSync(path, { recursive: true, force: true }),
  };
}
