import type { Readable, Writable } from "node:stream";
import { reasonOf } from "../files/reason.ts";
import { Ended, Exit } from "./exit.ts";

/** What a command may read from and write to. Data goes to stdout, everything else to stderr. */
export interface Streams {
  readonly stdin: Readable & { readonly isTTY?: boolean };
  readonly stdout: Writable & { readonly isTTY?: boolean; readonly rows?: number };
  readonly stderr: Writable & { readonly isTTY?: boolean };
  readonly env: Readonly<Record<string, string | undefined>>;
}

/** True where someone sits at a terminal: the screen then sees for itself whether it can be drawn or must talk in lines. */
export function onTerminal({ stdin, stdout }: Streams): boolean {
  return stdin.isTTY === true && stdout.isTTY === true;
}

/**
 * Writes a text or bytes and waits until it is on its way. A reader who has gone, as in `| head`, has read all that he wanted:
 * that is no error.
 */
export function write(stream: Writable, data: string | Uint8Array): Promise<void> {
  if (data.length === 0) return Promise.resolve();
  return new Promise((resolve, reject) => {
    // A stream that fails tells its listeners, after the callback; with no listener left it would end the program.
    const failed = (error: NodeJS.ErrnoException) => (error.code === "EPIPE" ? resolve() : reject(unwritten(error)));
    stream.on("error", failed);
    stream.write(data, (error) => {
      if (error) return failed(error);
      stream.off("error", failed);
      resolve();
    });
  });
}

function unwritten(error: Error): Ended {
  return new Ended(Exit.badInput, `what it prints cannot be written: ${reasonOf(error)}.`);
}
