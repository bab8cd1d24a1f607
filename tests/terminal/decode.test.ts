import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Decoding, decode, isWaiting, lapse, nothingDecoded } from "../../src/terminal/decode.ts";
import { character, chord, type Key, named, paste } from "../../src/terminal/key.ts";

/*
 * Byte sequences are those of the published control-sequence list of xterm ("XTerm Control Sequences", PC-style
 * function keys, bracketed paste, mouse tracking), of ECMA-48, and of the terminfo entries named beside them
 * [M: recalled from memory, not looked up again].
 */

function keysOf(text: string | Uint8Array): Key[] {
  return [...decode(nothingDecoded, bytesOf(text)).keys];
}

function bytesOf(text: string | Uint8Array): Uint8Array {
  return typeof text === "string" ? Buffer.from(text) : text;
}

function chordsOf(text: string | Uint8Array): string[] {
  return keysOf(text).map(chord);
}

/** Let silences pass until nothing is waited for. */
function settled(state: Decoding): { keys: Key[]; silences: number } {
  const keys: Key[] = [];
  let now = state;
  let silences = 0;
  while (isWaiting(now)) {
    const decoded = lapse(now);
    keys.push(...decoded.keys);
    now = decoded.state;
    silences++;
    if (silences > 1000) throw new Error("waits for ever");
  }
  return { keys, silences };
}

const sequences: readonly (readonly [string, string])[] = [
  ["\x1b[A", "up"],
  ["\x1b[B", "down"],
  ["\x1b[C", "right"],
  ["\x1b[D", "left"],
  ["\x1bOA", "up"],
  ["\x1bOB", "down"],
  ["\x1bOC", "right"],
  ["\x1bOD", "left"],
  ["\x1b[1;2A", "shift+up"],
  ["\x1b[1;3B", "alt+down"],
  ["\x1b[1;5C", "ctrl+right"],
  ["\x1b[1;6D", "ctrl+shift+left"],
  ["\x1bO1;5A", "ctrl+up"],
  ["\x1bO5C", "ctrl+right"],
  ["\x1b[a", "shift+up"], // rxvt
  ["\x1bOd", "ctrl+left"], // rxvt
  ["\x1b[H", "home"],
  ["\x1bOH", "home"],
  ["\x1b[1~", "home"], // linux, screen
  ["\x1b[7~", "home"], // rxvt
  ["\x1b[F", "end"],
  ["\x1bOF", "end"],
  ["\x1b[4~", "end"],
  ["\x1b[8~", "end"],
  ["\x1b[5~", "pageUp"],
  ["\x1b[6~", "pageDown"],
  ["\x1b[6;5~", "ctrl+pageDown"],
  ["\x1b[2~", "insert"],
  ["\x1b[3~", "delete"],
  ["\x1b[3;2~", "shift+delete"],
  ["\x1b[3$", "shift+delete"], // rxvt
  ["\x1b[3^", "ctrl+delete"], // rxvt
  ["\x1b[3@", "ctrl+shift+delete"], // rxvt
  ["\x1bOP", "f1"],
  ["\x1bOS", "f4"],
  ["\x1b[11~", "f1"],
  ["\x1b[15~", "f5"],
  ["\x1b[17~", "f6"],
  ["\x1b[24~", "f12"],
  ["\x1b[1;5P", "ctrl+f1"],
  ["\x1b[1;2R", "shift+f3"],
  ["\x1b[[A", "f1"], // linux
  ["\x1b[[E", "f5"], // linux
  ["\x1b[Z", "shift+tab"],
  ["\x1b\t", "shift+tab"], // linux
  ["\x1bOM", "enter"], // keypad
  ["\x1bOk", "+"], // keypad
  ["\x1bOu", "5"], // keypad
  ["\r", "enter"],
  ["\n", "enter"],
  ["\t", "tab"],
  ["\x7f", "backspace"],
  ["\b", "backspace"],
  ["\x1b\x7f", "alt+backspace"],
  ["\x03", "ctrl+c"],
  ["\x1a", "ctrl+z"],
  ["\x1c", "ctrl+\\"],
  ["\0", "ctrl+space"],
  ["a", "a"],
  ["Q", "Q"],
  [" ", "space"],
  ["°", "°"],
  ["½", "½"],
  ["中", "中"],
  ["😀", "😀"],
];

/** Reports that are no keys: nobody pressed anything. */
const reports: readonly string[] = [
  "\x1b[<0;10;20M", // mouse, SGR
  "\x1b[<0;10;20m",
  "\x1b[M !!", // mouse, X10
  "\x1b[M\x1b[\x9b", // mouse, X10: any bytes
  "\x1b[I", // focus
  "\x1b[O",
  "\x1b[?62;22c", // device attributes
  "\x1b[24;80R", // cursor position
  "\x1b[?2026;2$y", // mode report
  "\x1b[97;5u", // keys of other protocols, which are never asked for
  "\x1b[27;5;9~",
  "\x1b[201~",
  "\x1b[99~",
  "\x1b]11;rgb:0000/0000/0000\x07", // background colour
  "\x1b]11;rgb:0000/0000/0000\x1b\\",
  "\x1bP>|name(1)\x1b\\", // version
  "\x1b_Gi=31;OK\x1b\\",
  "\x80\x9b\xff\xc0\xc1",
];

describe("decode", () => {
  it.each(sequences)("reads %j as %s", (bytes, name) => {
    expect(chordsOf(bytes)).toEqual([name]);
  });

  it.each(reports)("drops the report %j, and reads what comes after it", (report) => {
    expect(chordsOf(Buffer.from(`${report}a`, "latin1"))).toEqual(["a"]);
  });

  it("tells Backspace and Delete apart", () => {
    expect(keysOf("\x7f\x1b[3~")).toEqual([named("backspace"), named("delete")]);
  });

  it("reads a carriage return and a line feed together as one Enter, and two line feeds as two", () => {
    expect(chordsOf("\r\na\r\0b\n\n")).toEqual(["enter", "a", "enter", "b", "enter", "enter"]);
  });

  it("gives every character of a chunk as a key of its own, Enter included", () => {
    expect(chordsOf("12 3/8\rjj")).toEqual(["1", "2", "space", "3", "/", "8", "enter", "j", "j"]);
  });

  it("keeps Escape and a letter in one packet as two keys", () => {
    expect(chordsOf("\x1bq")).toEqual(["escape", "q"]);
    expect(chordsOf("\x1b\x1b[A")).toEqual(["escape", "up"]);
    expect(chordsOf("\x1bPa")).toEqual(["escape", "P", "a"]);
    expect(chordsOf("\x1bOK")).toEqual(["escape", "O", "K"]);
  });

  it("takes a paste as one key, its lines parted by line feeds and its control characters gone", () => {
    expect(keysOf("\x1b[200~14 3/8\r\nin\rup\x1b[A\x07\x1b[201~x")).toEqual([
      paste("14 3/8\nin\nup[A"),
      character("x"),
    ]);
    expect(keysOf("\x1b[200~\x1b[20\x1b[201~")).toEqual([paste("[20")]);
  });

  it("drops what is no text in UTF-8: stray, cut short, too long, half of a pair, direction marks", () => {
    const bytes = Buffer.concat([
      Buffer.from([0xb0, 0xc2]),
      Buffer.from("a"),
      Buffer.from([0xe0, 0x80, 0x80, 0xed, 0xa0, 0x80, 0xf4, 0x90, 0x80, 0x80]),
      Buffer.from("\u202e\u200f\u2028b"),
    ]);
    expect(chordsOf(bytes)).toEqual(["a", "b"]);
  });

  it("gives the same keys however the bytes are cut, every known sequence among them", () => {
    const tokens = [...sequences.map(([bytes]) => Buffer.from(bytes)), ...reports.map((r) => Buffer.from(r, "latin1"))];
    const token = fc.oneof(
      fc.constantFrom(...tokens),
      fc.string({ unit: "grapheme" }).map((text) => Buffer.from(text)),
      fc.string().map((text) => Buffer.from(`\x1b[200~${text}\x1b[201~`)),
      fc.uint8Array({ maxLength: 6 }),
    );
    fc.assert(
      fc.property(fc.array(token, { maxLength: 12 }), fc.array(fc.nat({ max: 7 })), (parts, cuts) => {
        const bytes = Buffer.concat(parts);
        const whole = decode(nothingDecoded, bytes);
        const keys: Key[] = [];
        let state = nothingDecoded;
        let at = 0;
        for (let cut = 0; at < bytes.length; cut++) {
          const length = cuts.length === 0 ? 1 : (cuts[cut % cuts.length] ?? 0) + (cut % 2);
          const decoded = decode(state, bytes.subarray(at, at + length));
          keys.push(...decoded.keys);
          state = decoded.state;
          at += length;
        }
        expect(keys).toEqual(whole.keys);
        expect(state).toEqual(whole.state);
      }),
      { numRuns: 1000 },
    );
  });

  it("comes to rest after any bytes, within a bounded time, and then reads keys as ever", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        const { state } = decode(nothingDecoded, bytes);
        const { silences } = settled(state);
        expect(silences).toBeLessThanOrEqual(40);
        let rested = state;
        while (isWaiting(rested)) rested = lapse(rested).state;
        expect(decode(rested, Buffer.from("k")).keys.map(chord)).toEqual(["k"]);
      }),
      { numRuns: 1000 },
    );
  });

  it("never gives a character that is not printable", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 64 }), (bytes) => {
        const { keys, state } = decode(nothingDecoded, bytes);
        for (const key of [...keys, ...settled(state).keys]) expect(key.text).not.toMatch(/(?!\n)[\p{Cc}\p{Cs}]/u);
      }),
    );
  });

  it("keeps a bounded amount of endless input", () => {
    const endless = [`\x1b[200~${"7".repeat(1e6)}`, `\x1b[${"1;".repeat(5e5)}`, `\x1b]1${"x".repeat(1e6)}`];
    for (const text of endless) {
      expect(decode(nothingDecoded, Buffer.from(text)).state.held.length).toBeLessThanOrEqual(65536);
    }
    const [key] = decode(nothingDecoded, Buffer.from(`\x1b[200~${"7".repeat(1e6)}\x1b[201~`)).keys;
    expect(key?.text).toBe("7".repeat(65536));
  });
});

describe("a silence", () => {
  it("makes a lone escape the Escape key, at once", () => {
    const { state } = decode(nothingDecoded, Buffer.from("\x1b"));
    expect(lapse(state).keys).toEqual([named("escape")]);
  });

  it("leaves a sequence that has begun alone, so that a late tail is still the key", () => {
    let { state } = decode(nothingDecoded, Buffer.from("\x1b["));
    state = lapse(lapse(state).state).state;
    expect(decode(state, Buffer.from("A")).keys).toEqual([named("up")]);
  });

  it("still takes a whole tail for its key when Escape was already given up for lost", () => {
    const { state } = lapse(decode(nothingDecoded, Buffer.from("\x1b")).state);
    expect(decode(state, Buffer.from("[A")).keys).toEqual([named("up")]);
    expect(decode(state, Buffer.from("[")).keys).toEqual([character("[")]);
  });

  it("gives back what was typed after Escape and only looked like the start of a sequence", () => {
    for (const [typed, text] of [
      ["\x1b[", "["],
      ["\x1bO", "O"],
      ["\x1b]", "]"],
    ] as const) {
      const { state } = decode(nothingDecoded, Buffer.from(typed));
      expect(settled(state).keys).toEqual([named("escape"), character(text)]);
    }
  });

  it("hears Ctrl-C by itself after a silence in a paste, whose end was lost; without a silence it is part of it", () => {
    const begun = decode(nothingDecoded, bytesOf("\x1b[200~14"));
    const silent = lapse(begun.state);
    expect(decode(silent.state, bytesOf("\x03"))).toEqual({
      keys: [paste("14"), character("c", { ctrl: true })],
      state: nothingDecoded,
    });
    const inside = decode(begun.state, bytesOf("\x03"));
    expect(inside.keys).toEqual([]);
    expect(decode(inside.state, bytesOf(" 3/8\x1b[201~")).keys).toEqual([paste("14 3/8")]);
  });

  it("lets a paste wait longer than a key, and in the end gives what came of it", () => {
    const { state } = decode(nothingDecoded, Buffer.from("\x1b[200~14 3/8"));
    const { keys, silences } = settled(state);
    expect(keys).toEqual([paste("14 3/8")]);
    expect(silences).toBe(40);
  });
});
