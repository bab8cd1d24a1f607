import type { Readable, Writable } from "node:stream";

/** What a command may read from and write to. Data goes to stdout, everything else to stderr. */
export interface Streams {
  readonly stdin: Readable & { readonly isTTY?: boolean };
  readonly stdout: Writable & { readonly isTTY?: boolean };
  readonly stderr: Writable & { readonly isTTY?: boolean };
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** True where a screen can be drawn and keys can be read. */
export function onTerminal({ stdin, stdout, env }: Streams): boolean {
  return stdin.isTTY === true && stdout.isTTY === true && env.TERM !== "dumb";
}

/**
 * Writes a text and waits until it is on its way. A reader who has gone, as in `| head`, has read all that he wanted:
 * that is no error.
 */
export function write(stream: Writable, text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const settle = (error?: Error | null) => {
      stream.off("error", settle);
      if (error && (error as NodeJS.ErrnoException).code !== "EPIPE") reject(error);
      else resolve();
    };
    // A stream that fails tells its listeners as well as the callback; without a listener it would end the program.
    stream.on("error", settle);
    stream.write(text, settle);
  });
}
