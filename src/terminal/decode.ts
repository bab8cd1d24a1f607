import { character, type Key, named, paste } from "./key.ts";
import { keyOfControlSequence, keyOfLinuxFunction, keyOfSingleShift } from "./sequences.ts";

/*
 * Bytes from a terminal to keys, whatever the network did to the bytes: a key stream cut anywhere gives the same
 * keys. The state is plain data; nothing is kept elsewhere.
 *
 * An escape character is the one ambiguity: it is the Escape key, or the start of another key's sequence. `decode`
 * holds it back, and the session calls `lapse` after every `silence` milliseconds without a byte.
 */

/** Milliseconds of silence after which an unfinished sequence has lapsed once. */
export const silence = 50;

/** Silences that a sequence already begun may last: a slow line can part it, and its tail must not show up as text. */
const patience = 10;

/** Silences within a paste, which is long and comes in many packets. */
const pastePatience = 40;

/** Most bytes kept of a paste; a field holds a measurement, not a book. */
const longestPaste = 65536;

/** Most parameter bytes of a control sequence that may still be a key. */
const longestParameters = 32;

const pasteEnd = "\x1b[201~";

type Mode =
  | "ground"
  | "utf8"
  | "escape"
  | "control"
  | "linux"
  | "singleShift"
  | "mouse"
  | "stringStart"
  | "string"
  | "stringEscape"
  | "paste";

/** What has come in and is not a key yet. `held` has one character a byte. */
export interface Decoding {
  readonly mode: Mode;
  readonly held: string;
  /** How much of the mark that ends a paste has come. */
  readonly matched: number;
  readonly lapses: number;
  /** The last byte was a carriage return, so that a line feed after it is the same Enter. */
  readonly afterReturn: boolean;
  /** Escape was taken for a key after a silence; its sequence may still come. */
  readonly afterEscape: boolean;
}

/** Nothing has come in yet. */
export const nothingDecoded: Decoding = {
  mode: "ground",
  held: "",
  matched: 0,
  lapses: 0,
  afterReturn: false,
  afterEscape: false,
};

export interface Decoded {
  readonly keys: readonly Key[];
  readonly state: Decoding;
}

/** Whether a silence would change anything, so that the session has to time one. */
export function isWaiting(state: Decoding): boolean {
  return state.mode !== "ground" || state.afterReturn;
}

/** The keys that the bytes complete, and what is left over. */
export function decode(state: Decoding, bytes: Uint8Array): Decoded {
  if (isInterruptOfPaste(state, bytes)) return interrupted(state);
  const reader = new Reader(state);
  if (bytes.length > 0 && state.afterEscape && startsWithTail(bytes)) reader.resumeEscape();
  for (const byte of bytes) reader.take(byte);
  return { keys: reader.keys, state: reader.state() };
}

/** The keys that a silence settles: a lone escape becomes the Escape key, a sequence that never ended is dropped. */
export function lapse(state: Decoding): Decoded {
  if (!isWaiting(state)) return { keys: [], state };
  const lapses = state.lapses + 1;
  const settled = (...keys: Key[]): Decoded => ({ keys, state: nothingDecoded });
  switch (state.mode) {
    case "ground":
    case "utf8":
      return settled();
    case "escape":
      return { keys: [named("escape")], state: { ...nothingDecoded, afterEscape: true } };
    case "paste":
      return lapses < pastePatience
        ? { keys: [], state: { ...state, lapses } }
        : settled(paste(pastedText(state.held)));
    default:
      if (lapses < patience) return { keys: [], state: { ...state, lapses } };
      return settled(...typedAfterEscape(state));
  }
}

/** Someone pressed Escape and then the very character that also opens a sequence. */
function typedAfterEscape(state: Decoding): Key[] {
  if (state.mode === "control" && state.held === "") return [named("escape"), character("[")];
  if (state.mode === "singleShift" && state.held === "") return [named("escape"), character("O")];
  if (state.mode === "stringStart") return [named("escape"), character(state.held)];
  return [];
}

const interrupt = 0x03;

/** After a silence, Ctrl-C by itself is no part of the paste: its end was lost, and someone wants out. */
function isInterruptOfPaste({ mode, lapses }: Decoding, bytes: Uint8Array): boolean {
  return mode === "paste" && lapses > 0 && bytes.length > 0 && bytes.every((byte) => byte === interrupt);
}

function interrupted({ held }: Decoding): Decoded {
  return { keys: [paste(pastedText(held)), character("c", { ctrl: true })], state: nothingDecoded };
}

/** Nobody types a whole tail between two packets, so it belongs to the escape before it. */
function startsWithTail(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 16));
  return /^(\[[\d;]*[A-DFHPQRSZ~]|O[A-DFHPQRS])/.test(start);
}

class Reader {
  readonly keys: Key[] = [];
  private mode: Mode;
  private held: string;
  private matched: number;
  private lapses: number;
  private afterReturn: boolean;
  private afterEscape: boolean;

  constructor(state: Decoding) {
    this.mode = state.mode;
    this.held = state.held;
    this.matched = state.matched;
    this.lapses = state.lapses;
    this.afterReturn = state.afterReturn;
    this.afterEscape = state.afterEscape;
  }

  state(): Decoding {
    const { mode, held, matched, lapses, afterReturn, afterEscape } = this;
    return { mode, held, matched, lapses, afterReturn, afterEscape };
  }

  resumeEscape(): void {
    this.enter("escape");
  }

  take(byte: number): void {
    this.lapses = 0;
    this.afterEscape = false;
    if (this.mode === "ground") this.ground(byte);
    else if (this.mode === "utf8") this.utf8(byte);
    else if (this.mode === "escape") this.escape(byte);
    else if (this.mode === "control") this.control(byte);
    else if (this.mode === "linux") this.linux(byte);
    else if (this.mode === "singleShift") this.singleShift(byte);
    else if (this.mode === "mouse") this.mouse(byte);
    else if (this.mode === "stringStart") this.stringStart(byte);
    else if (this.mode === "string") this.string(byte);
    else if (this.mode === "stringEscape") this.stringEscape(byte);
    else this.pasted(byte);
  }

  private enter(mode: Mode, held = ""): void {
    this.mode = mode;
    this.held = held;
    this.matched = 0;
  }

  private emit(...keys: (Key | undefined)[]): void {
    for (const key of keys) if (key !== undefined) this.keys.push(key);
  }

  /** What was begun is no sequence after all; the byte stands for itself. */
  private giveUp(byte: number): void {
    this.enter("ground");
    this.ground(byte);
  }

  private ground(byte: number): void {
    // A carriage return is followed by a line feed or a NUL on some lines: still one Enter.
    const isSameEnter = this.afterReturn && (byte === 0x0a || byte === 0x00);
    this.afterReturn = byte === 0x0d;
    if (byte === 0x1b) this.enter("escape");
    else if (byte >= 0xc2 && byte <= 0xf4) this.enter("utf8", String.fromCharCode(byte));
    else if (byte < 0x80 && !isSameEnter) this.emit(keyOfByte(byte));
  }

  private utf8(byte: number): void {
    if ((byte & 0xc0) !== 0x80) {
      this.giveUp(byte);
      return;
    }
    this.held += String.fromCharCode(byte);
    const lead = this.held.charCodeAt(0);
    const length = lead < 0xe0 ? 2 : lead < 0xf0 ? 3 : 4;
    if (this.held.length < length) return;
    const text = Buffer.from(this.held, "latin1").toString("utf8");
    this.enter("ground");
    if (isPrintable(text)) this.emit(character(text));
  }

  private escape(byte: number): void {
    const next = String.fromCharCode(byte);
    if (byte === 0x1b) {
      this.emit(named("escape"));
    } else if (next === "[") {
      this.enter("control");
    } else if (next === "O") {
      this.enter("singleShift");
    } else if (next === "]" || next === "P" || next === "_") {
      this.enter("stringStart", next);
    } else {
      this.enter("ground");
      this.escaped(byte);
    }
  }

  private escaped(byte: number): void {
    if (byte === 0x09) {
      // The Linux console's Shift-Tab.
      this.emit(named("tab", { shift: true }));
    } else if (byte === 0x7f) {
      // Nobody who means to delete a word means to leave the field.
      this.emit(named("backspace", { alt: true }));
    } else {
      // A stalled line hands over Escape and the next key in one packet. Nothing here needs Alt and a letter, so
      // both keys are kept rather than made into one.
      this.emit(named("escape"));
      this.ground(byte);
    }
  }

  private control(byte: number): void {
    if (this.isInterrupted(byte)) return;
    const next = String.fromCharCode(byte);
    const parameters = this.held;
    // rxvt ends a shifted key with the dollar sign, which elsewhere comes before the final.
    const isFinal = byte >= 0x40 || (next === "$" && /^\d+$/.test(parameters));
    if (parameters === "" && next === "[") {
      this.enter("linux");
    } else if (parameters === "" && next === "M") {
      this.enter("mouse");
    } else if (parameters === "200" && next === "~") {
      this.enter("paste");
    } else if (isFinal) {
      this.enter("ground");
      if (parameters.length <= longestParameters) this.emit(keyOfControlSequence(parameters, next));
    } else if (parameters.length <= longestParameters) {
      this.held += next;
    }
  }

  private linux(byte: number): void {
    if (this.isInterrupted(byte) || byte < 0x40) return;
    this.enter("ground");
    this.emit(keyOfLinuxFunction(String.fromCharCode(byte)));
  }

  /** Within a control sequence, a byte that cannot be part of it begins something else. */
  private isInterrupted(byte: number): boolean {
    const isInterrupted = byte < 0x20 || byte > 0x7e;
    if (isInterrupted) this.giveUp(byte);
    return isInterrupted;
  }

  private singleShift(byte: number): void {
    const next = String.fromCharCode(byte);
    if (/[\d;]/.test(next) && this.held.length < longestParameters) {
      this.held += next;
      return;
    }
    const key = keyOfSingleShift(this.held, next);
    if (key !== undefined) {
      this.enter("ground");
      this.emit(key);
      return;
    }
    if (this.held === "") this.emit(named("escape"), character("O"));
    this.giveUp(byte);
  }

  /** The old mouse report: three bytes of any value. */
  private mouse(byte: number): void {
    this.held += String.fromCharCode(byte);
    if (this.held.length === 3) this.enter("ground");
  }

  /** An answer from the terminal, if what follows looks like one; else Escape and a character that were typed. */
  private stringStart(byte: number): void {
    const begins = { "]": /\d/, P: /[\d>!$+]/, _: /G/ }[this.held];
    if (begins?.test(String.fromCharCode(byte))) {
      this.enter("string");
    } else {
      this.emit(named("escape"), character(this.held));
      this.giveUp(byte);
    }
  }

  private string(byte: number): void {
    if (byte === 0x07) this.enter("ground");
    else if (byte === 0x1b) this.enter("stringEscape");
    // No answer holds a control character, so this is someone at the keyboard.
    else if (byte < 0x20) this.giveUp(byte);
  }

  private stringEscape(byte: number): void {
    if (byte === 0x5c) {
      this.enter("ground");
    } else {
      this.enter("escape");
      this.escape(byte);
    }
  }

  private pasted(byte: number): void {
    const matched = this.matched;
    if (byte === pasteEnd.charCodeAt(matched)) {
      this.matched = matched + 1;
      if (this.matched === pasteEnd.length) this.endPaste();
      return;
    }
    this.matched = byte === 0x1b ? 1 : 0;
    const kept = pasteEnd.slice(0, matched) + (byte === 0x1b ? "" : String.fromCharCode(byte));
    if (this.held.length < longestPaste) this.held += kept;
  }

  private endPaste(): void {
    const text = pastedText(this.held);
    this.enter("ground");
    this.emit(paste(text));
  }
}

function keyOfByte(byte: number): Key {
  if (byte === 0x0d || byte === 0x0a) return named("enter");
  if (byte === 0x09) return named("tab");
  if (byte === 0x08 || byte === 0x7f) return named("backspace");
  if (byte === 0x00) return character(" ", { ctrl: true });
  if (byte < 0x1b) return character(String.fromCharCode(byte + 0x60), { ctrl: true });
  if (byte < 0x20) return character(String.fromCharCode(byte + 0x40), { ctrl: true });
  return character(String.fromCharCode(byte));
}

/** Text without the characters that would move things about on a screen: controls, line and direction marks. */
const unprintable = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\ufffd]/u;

function isPrintable(text: string): boolean {
  return !unprintable.test(text);
}

function pastedText(bytes: string): string {
  const text = Buffer.from(bytes, "latin1").toString("utf8").replace(/\r\n?/g, "\n").replaceAll("\t", " ");
  return [...text].filter((letter) => letter === "\n" || isPrintable(letter)).join("");
}
