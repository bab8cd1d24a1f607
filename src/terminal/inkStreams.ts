import { EventEmitter } from "node:events";
import type { Size } from "./cells.ts";

/** The keyboard as Ink sees it: one chunk, one key, taken at once, so that the next key finds its work done. */
export interface InkKeyboard {
  readonly stream: NodeJS.ReadStream;
  /** Hand over one chunk; it has been dealt with when this returns. */
  type(chunk: string): void;
}

class Keyboard extends EventEmitter {
  readonly isTTY = true;
  private chunks: string[] = [];

  read(): string | null {
    return this.chunks.shift() ?? null;
  }

  type(chunk: string): void {
    this.chunks.push(chunk);
    this.emit("readable");
    this.chunks = [];
  }

  // The session owns the real terminal's modes; Ink asks for them in vain.
  setRawMode(): this {
    return this;
  }

  setEncoding(): this {
    return this;
  }

  ref(): this {
    return this;
  }

  unref(): this {
    return this;
  }
}

/** A keyboard for Ink that only the session types on. */
export function inkKeyboard(): InkKeyboard {
  const keyboard = new Keyboard();
  return {
    stream: keyboard as unknown as NodeJS.ReadStream,
    type: (chunk) => keyboard.type(chunk),
  };
}

/** The screen as Ink sees it: it writes one whole frame a render. */
export interface InkScreen {
  readonly stream: NodeJS.WriteStream;
  /** Take no more frames. Ink draws one more as it ends, on a screen that is no longer ours. */
  mute(): void;
}

class Screen extends EventEmitter {
  readonly isTTY = true;
  readonly writableLength = 0;
  muted = false;

  constructor(
    private readonly size: () => Size,
    private readonly onFrame: (frame: string | undefined) => void,
  ) {
    super();
  }

  get columns(): number {
    return this.size().columns;
  }

  get rows(): number {
    return this.size().rows;
  }

  write(frame: string, written?: () => void): boolean {
    // An empty write with something to do afterwards is the last one. What came before it is no frame of the view,
    // but Ink's farewell: after a fault, the fault itself, with its place in the program.
    const isLast = typeof written === "function";
    // A lone control sequence is about a cursor that is ours.
    const isFrame = frame !== "" && !/^\x1b\[\?\d+[hl]$/.test(frame);
    if (!this.muted && (isFrame || isLast)) this.onFrame(isLast ? undefined : frame);
    if (isLast) {
      this.muted = true;
      setImmediate(written);
    }
    return true;
  }
}

/** A screen for Ink that hands each whole frame to the session, and undefined when the last one is void. */
export function inkScreen(size: () => Size, onFrame: (frame: string | undefined) => void): InkScreen {
  const screen = new Screen(size, onFrame);
  return {
    stream: screen as unknown as NodeJS.WriteStream,
    mute: () => {
      screen.muted = true;
    },
  };
}
