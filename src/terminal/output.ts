import { writeSync } from "node:fs";
import { cancel } from "./modes.ts";

/** The terminal's end of the line is gone: nothing can be written any more. */
export type Gone = () => void;

/**
 * Bytes to the terminal, without ever waiting for a slow line. Node's own stream would block the whole program on a
 * stalled connection, and would queue frames on one that is merely slow; here at most one frame is on its way, and what
 * is left of it is tried again every few milliseconds.
 */
export interface Output {
  /** Take over the line, with these first bytes. */
  begin(bytes: string): void;
  /** Whether a new frame may be sent; until then the newest one is kept by whoever has it. */
  isFree(): boolean;
  /** Send bytes; only when free. */
  send(bytes: string): void;
  /** Send these last bytes now: after what is on its way if the line takes it in time, else in its place. */
  finish(bytes: string): void;
}

/** What Node's types leave out of a terminal stream. */
interface TerminalStream {
  readonly fd?: number;
  readonly _handle?: { setBlocking?(blocking: boolean): void };
}

const retryMilliseconds = 4;
const finishMilliseconds = 500;

/** `onFree` is called when a frame that had to wait is through, `onGone` when the terminal is no more. */
export function openOutput(stdout: NodeJS.WriteStream, onFree: () => void, onGone: Gone): Output {
  const descriptor = descriptorOf(stdout);
  let left: Uint8Array = new Uint8Array(0);
  let timer: NodeJS.Timeout | undefined;
  let gone = false;

  function push(): void {
    while (left.length > 0 && !gone) {
      const count = write(descriptor, left);
      if (count === "gone") {
        gone = true;
        left = new Uint8Array(0);
        onGone();
      } else if (count === 0) {
        return;
      } else {
        left = left.subarray(count);
      }
    }
  }

  function retry(): void {
    timer = undefined;
    push();
    if (left.length > 0) timer = setTimeout(retry, retryMilliseconds);
    else if (!gone) onFree();
  }

  function send(bytes: string): void {
    if (gone) return;
    left = Buffer.from(bytes);
    push();
    if (left.length > 0) timer = setTimeout(retry, retryMilliseconds);
  }

  return {
    begin(bytes) {
      setBlocking(stdout, false);
      send(bytes);
    },
    isFree: () => left.length === 0,
    send,
    finish(bytes) {
      clearTimeout(timer);
      if (gone) return;
      // What is left of a frame would arrive after the last bytes if it were queued, so it is either sent or cut off.
      if (!drain(descriptor, left)) drain(descriptor, Buffer.from(cancel + bytes));
      else drain(descriptor, Buffer.from(bytes));
      left = new Uint8Array(0);
      setBlocking(stdout, true);
    },
  };
}

function descriptorOf(stdout: NodeJS.WriteStream): number {
  return (stdout as TerminalStream).fd ?? 1;
}

/** Node hides the switch, but the stream is useless for a slow line without it; where it is missing, writes wait. */
function setBlocking(stdout: NodeJS.WriteStream, blocking: boolean): void {
  (stdout as TerminalStream)._handle?.setBlocking?.(blocking);
}

/** Bytes taken by the terminal now, 0 where the line is full. */
function write(descriptor: number, bytes: Uint8Array): number | "gone" {
  try {
    return writeSync(descriptor, bytes);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : undefined;
    return code === "EAGAIN" || code === "EINTR" ? 0 : "gone";
  }
}

/** Write all, waiting for a full line a while; whether it got through. */
function drain(descriptor: number, bytes: Uint8Array): boolean {
  const until = performance.now() + finishMilliseconds;
  let left = bytes;
  while (left.length > 0) {
    const count = write(descriptor, left);
    if (count === "gone") return false;
    left = left.subarray(count);
    if (count === 0) {
      if (performance.now() > until) return false;
      sleep(retryMilliseconds);
    }
  }
  return true;
}

function sleep(milliseconds: number): void {
  Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, milliseconds);
}
