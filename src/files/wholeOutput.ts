import { fstatSync, writeSync } from "node:fs";
import type { Writable } from "node:stream";

function isFile(descriptor: number): boolean {
  try {
    return fstatSync(descriptor).isFile();
  } catch {
    return false;
  }
}

/**
 * Has all of what is written to a stream arrive, or the stream fail. Where output goes to a file, Node's own stream takes a
 * write that a full disk cut short for a whole one, and the rest is lost without a word.
 */
export function writeWhole(stream: Writable & { readonly fd?: number }): void {
  const { fd } = stream;
  if (fd === undefined || !isFile(fd)) return;
  stream._write = (chunk: Uint8Array | string, encoding, done) => {
    try {
      let left = typeof chunk === "string" ? Buffer.from(chunk, encoding) : chunk;
      while (left.length > 0) left = left.subarray(writeSync(fd, left));
      done();
    } catch (error) {
      done(error instanceof Error ? error : new Error(String(error)));
    }
  };
}
