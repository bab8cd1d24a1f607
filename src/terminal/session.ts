import type { Instance, RenderOptions } from "ink";
import { createElement, type ReactNode } from "react";
import type { Capabilities } from "./capabilities.ts";
import { type Cells, cellsOf, type Size, unknownCells } from "./cells.ts";
import { type Decoded, decode, isWaiting, lapse, nothingDecoded, silence } from "./decode.ts";
import { diff, freshPen } from "./diff.ts";
import { type FieldCursor, FieldCursorContext } from "./fieldCursor.ts";
import { isGone } from "./gone.ts";
import { holdWrites } from "./held.ts";
import { inkKeyboard, inkScreen } from "./inkStreams.ts";
import { inkTyping } from "./inkTyping.ts";
import { chord, type Key } from "./key.ts";
import { enter, leave } from "./modes.ts";
import { openOutput } from "./output.ts";
import { endBySignal } from "./raise.ts";

/*
 * The screen's hold on the terminal, from the first frame to the last. State lives outside React; Ink only draws:
 *
 *     const capabilities = prepareEnvironment(process.env, {}, process);   // environment.ts, before Ink
 *     const { render } = await import("ink");
 *     const session = createSession({ stdin: process.stdin, stdout: process.stdout, stderr: process.stderr, capabilities });
 *     let model = start(car);
 *     const code = await session.run({
 *       render,
 *       view: () => <Screen model={model} size={session.size()} />,
 *       onKey(key) {                                       // one key at a time, Ctrl-C among them; Ctrl-Z is done here
 *         if (model.field) return session.sendToInk(key);  // to a mounted <TextField>; its onChange changes the model
 *         model = update(model, key);
 *         if (model.done) session.quit(0);
 *         session.invalidate();                            // drawn once, when this turn of the event loop ends
 *       },
 *       onResize: () => undefined,                         // view() is drawn anew in any case
 *       onEnd: (reason) => journal.close(reason),          // once, on every way out, after the terminal is given back
 *     });
 */

/** Why a session ends. */
export type End =
  | { readonly kind: "quit"; readonly code: number }
  | { readonly kind: "signal"; readonly signal: Signal; readonly code: number }
  | { readonly kind: "error"; readonly error: unknown; readonly code: number }
  /** The line dropped, or the terminal was closed. */
  | { readonly kind: "gone"; readonly code: number };

/** What the session asks of the program on the screen. */
export interface App {
  /** Ink's `render`: handed in, so that Ink is imported after the environment is set. */
  readonly render: (node: ReactNode, options: RenderOptions) => Instance;
  /** The screen as it is to be seen now. */
  readonly view: () => ReactNode;
  /** Exactly one key. */
  readonly onKey: (key: Key) => void;
  /** The terminal has another size; the view is drawn anew afterwards. */
  readonly onResize?: (size: Size) => void;
  /** The session is over: save what is to be saved. Called once, whatever ended it. */
  readonly onEnd?: (end: End) => void;
}

export interface Session {
  size(): Size;
  /** Enter the terminal and stay until an end; gives the exit code of `quit`. Every other end exits the process. */
  run(app: App): Promise<number>;
  /** The view is out of date. It is drawn when this turn of the event loop ends. */
  invalidate(): void;
  /** Hand a key to Ink's own input, after drawing what is out of date, so that a field just opened is there to take it. */
  sendToInk(key: Key): void;
  /** Give the terminal back and end with this exit code. */
  quit(code: number): void;
}

/** The streams of the process, and what the terminal can do. */
export interface SessionOptions {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
  readonly stderr: NodeJS.WriteStream;
  readonly capabilities: Capabilities;
}

/** Signals that end a program which does not listen to them: those at which it would leave the terminal as it is. */
const signals = { SIGHUP: 1, SIGINT: 2, SIGQUIT: 3, SIGUSR2: 12, SIGALRM: 14, SIGTERM: 15, SIGXCPU: 24 } as const;
export type Signal = keyof typeof signals;

/** Exit code of a fault of the program itself (EX_SOFTWARE of sysexits.h). */
export const internalError = 70;

/** Keys that may wait for their turn before no more are read. */
const mostKeys = 1000;

/** Milliseconds of work on keys after which a frame is drawn before the next key. */
const slice = 16;

/**
 * Milliseconds that Ctrl-C waits for the keys before it. What is then still not done is dropped, as a terminal drops what
 * was typed ahead of an interrupt (the INTR character of POSIX termios): whoever presses it wants an end of that.
 */
const interruptPatience = 500;

/** Milliseconds after which a suspension that the system did not grant is over. */
const suspension = 100;

/** A session on a terminal; nothing is touched before `run`. */
export function createSession({ stdin, stdout, stderr, capabilities }: SessionOptions): Session {
  let size = sizeOf(stdout);
  let app: App | undefined;
  let instance: Instance | undefined;
  let resolveRun: (code: number) => void = () => undefined;
  let ended = false;
  let suspended = false;
  let resumedAt = Number.NEGATIVE_INFINITY;

  let decoding = nothingDecoded;
  let silenceTimer: NodeJS.Timeout | undefined;
  let keys: readonly Key[] = [];
  /** When a Ctrl-C that is among the keys came, ms of the clock that nobody sets; null where none is. */
  let interruptedAt: number | null = null;

  let outOfDate = false;
  let turn: NodeJS.Immediate | undefined;
  let frame: string | undefined;
  let shown: Cells = unknownCells(size);
  let pen = freshPen;

  const fieldCursor: FieldCursor = { room: null };
  const keyboard = inkKeyboard();
  const typing = inkTyping(keyboard, fieldCursor);
  const screen = inkScreen(
    () => size,
    (drawn) => {
      frame = drawn;
      schedule();
    },
  );
  const output = openOutput(stdout, schedule, () => finish({ kind: "gone", code: 128 + signals.SIGHUP }));
  const held = holdWrites([stdout, stderr]);

  function schedule(): void {
    if (!ended && turn === undefined) turn = setImmediate(takeTurn);
  }

  function takeTurn(): void {
    turn = undefined;
    if (ended || suspended) return;
    if (typing.isBusy()) {
      leaveTurnToInk();
      return;
    }
    // On a line that has not taken the last frame yet, the next one is drawn when it has.
    if (output.isFree()) {
      attempt(draw);
      paint();
    }
    handleKeys();
  }

  function draw(): void {
    if (!outOfDate || app === undefined) return;
    outOfDate = false;
    instance?.rerender(viewOf(app));
  }

  function viewOf(program: App): ReactNode {
    return createElement(FieldCursorContext.Provider, { value: fieldCursor }, program.view());
  }

  function paint(): void {
    if (ended || suspended || frame === undefined || !output.isFree()) return;
    const next = cellsOf(frame, size, capabilities, shown);
    frame = undefined;
    const update = diff(shown, next, pen);
    shown = next;
    pen = update.pen;
    if (update.bytes !== "") output.send(update.bytes);
  }

  function invalidate(): void {
    outOfDate = true;
    schedule();
  }

  function sendToInk(key: Key): void {
    if (ended) return;
    // A field whose text was changed from outside moves its cursor in a second pass, and listens anew after that.
    typing.take(key, outOfDate);
    draw();
    schedule();
  }

  function leaveTurnToInk(): void {
    attempt(() => {
      if (typing.turn()) outOfDate = true;
    });
    schedule();
  }

  function take(bytes: Uint8Array): void {
    clearTimeout(silenceTimer);
    settle(decode(decoding, bytes));
  }

  function settle(decoded: Decoded): void {
    const waiting = keys.length > 0;
    decoding = decoded.state;
    if (isWaiting(decoding)) silenceTimer = setTimeout(() => settle(lapse(decoding)), silence);
    keys = keys.concat(decoded.keys);
    if (decoded.keys.some(isInterrupt)) interruptedAt ??= performance.now();
    // While keys wait, the turn that was left for them takes these too: otherwise a fast line would never see a frame.
    if (waiting) schedule();
    else handleKeys();
  }

  /**
   * Key after key, for as long as a frame may wait; after one for Ink the rest wait for the next turn, as React wants time
   * between two updates.
   */
  function handleKeys(): void {
    const until = performance.now() + slice;
    dropBeforeInterrupt();
    let handled = 0;
    while (handled < keys.length && isReadyForKey() && (handled === 0 || performance.now() < until)) {
      const key = keys[handled++];
      if (key === undefined) continue;
      if (chord(key) === "ctrl+z") suspend();
      else attempt(() => app?.onKey(key));
    }
    keys = keys.slice(handled);
    if (!keys.some(isInterrupt)) interruptedAt = null;
    if (keys.length > 0) schedule();
    // Whoever pastes a book into the keyboard waits, and the program's memory does not grow.
    if (keys.length > mostKeys) stdin.pause();
    else if (!ended && !suspended) stdin.resume();
  }

  function isReadyForKey(): boolean {
    return !ended && !suspended && !typing.isBusy();
  }

  function dropBeforeInterrupt(): void {
    if (interruptedAt === null || performance.now() - interruptedAt < interruptPatience) return;
    const at = keys.findLastIndex(isInterrupt);
    if (at > 0) keys = keys.slice(at);
  }

  /** Errors in the program's own handlers end the session like any other. */
  function attempt(work: () => void): void {
    try {
      work();
    } catch (error) {
      fail(error);
    }
  }

  function fail(error: unknown): void {
    finish({ kind: "error", error, code: internalError });
  }

  function enterTerminal(): void {
    stdin.setRawMode(true);
    size = sizeOf(stdout);
    shown = unknownCells(size);
    pen = freshPen;
    output.begin(enter);
  }

  function redraw(): void {
    app?.onResize?.(size);
    invalidate();
  }

  function suspend(): void {
    suspended = true;
    output.finish(leave);
    stdin.setRawMode(false);
    held.release();
    process.off("SIGTSTP", suspend);
    setTimeout(() => {
      if (suspended) resume();
    }, suspension);
    // The whole group, since a shell waits for all of it.
    process.kill(0, "SIGTSTP");
  }

  function resume(): void {
    // The system may tell of the same return twice, by the end of the wait and by the signal.
    if (ended || (!suspended && performance.now() - resumedAt < suspension)) return;
    resumedAt = performance.now();
    if (suspended) {
      suspended = false;
      process.on("SIGTSTP", suspend);
      held.hold();
    } else {
      // Stopped and continued from outside: someone else may have had the terminal, in another mode.
      stdin.setRawMode(false);
    }
    enterTerminal();
    attempt(redraw);
  }

  function resized(): void {
    const now = sizeOf(stdout);
    if (now.columns === size.columns && now.rows === size.rows) return;
    size = now;
    shown = unknownCells(size);
    pen = { ...freshPen, style: pen.style, cursorShown: pen.cursorShown };
    attempt(redraw);
  }

  function finish(end: End): void {
    if (ended) return;
    ended = true;
    screen.mute();
    clearTimeout(silenceTimer);
    if (!suspended) output.finish(leave);
    attemptQuietly(() => stdin.setRawMode(false));
    stdin.off("data", take);
    stdin.pause();
    held.release();
    attemptQuietly(() => instance?.unmount());
    attemptQuietly(() => app?.onEnd?.(end));
    unlisten();
    if (end.kind === "error") attemptQuietly(() => stderr.write(`${messageOf(end.error)}\n`));
    if (end.kind === "gone" || isGone(stdout)) endBySignal("SIGHUP");
    else if (end.kind === "quit") resolveRun(end.code);
    else process.exit(end.code);
  }

  const handlers: readonly (readonly [string, (argument: unknown) => void])[] = [
    ...Object.entries(signals).map(
      ([signal, number]) =>
        [signal, () => finish({ kind: "signal", signal: signal as Signal, code: 128 + number })] as const,
    ),
    ["uncaughtException", fail],
    ["unhandledRejection", fail],
    ["SIGTSTP", suspend],
    ["SIGCONT", resume],
    // A file that may grow no more: the write itself says so. With nobody listening, a package of Ink's ends the program.
    ["SIGXFSZ", () => undefined],
    ["exit", (code) => finish({ kind: "quit", code: Number(code) })],
  ];

  function hangUp(): void {
    finish({ kind: "gone", code: 128 + signals.SIGHUP });
  }

  function listen(): void {
    for (const [event, handler] of handlers) process.on(event, handler);
    stdin.on("data", take);
    for (const event of ["end", "close", "error"]) stdin.on(event, hangUp);
    stdout.on("error", hangUp);
    stdout.on("resize", resized);
  }

  function unlisten(): void {
    for (const [event, handler] of handlers) process.off(event, handler);
    for (const event of ["end", "close"]) stdin.off(event, hangUp);
    stdout.off("resize", resized);
    // The listeners for errors stay: what fails after the end is no longer anybody's concern.
  }

  return {
    size: () => size,
    invalidate,
    sendToInk,
    quit: (code) => finish({ kind: "quit", code }),
    run(program) {
      app = program;
      return new Promise((resolve) => {
        resolveRun = resolve;
        listen();
        held.hold();
        enterTerminal();
        stdin.resume();
        attempt(() => {
          instance = program.render(viewOf(program), {
            stdin: keyboard.stream,
            stdout: screen.stream,
            stderr,
            debug: true,
            exitOnCtrlC: false,
            patchConsole: false,
          });
          instance.waitUntilExit().catch(fail);
        });
      });
    },
  };
}

function isInterrupt(key: Key): boolean {
  return chord(key) === "ctrl+c";
}

/** The size now: no signal tells of a change made while the process was stopped. */
function sizeOf(stdout: NodeJS.WriteStream & { _refreshSize?(): void }): Size {
  stdout._refreshSize?.();
  const [columns, rows] = stdout.getWindowSize();
  return { columns: columns || 80, rows: rows || 24 };
}

/** One line in words, without the places in the program that only its makers can read. */
function messageOf(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  const line = text.split("\n")[0]?.trim() || "no reason given";
  return `rackwright stopped by a fault of its own: ${line}`;
}

/** On the way out nothing may stand in the way, not even a second fault. */
function attemptQuietly(work: () => void): void {
  try {
    work();
  } catch {
    // The first fault is the one that is told.
  }
}
