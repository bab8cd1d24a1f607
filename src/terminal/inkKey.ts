import type { Key, KeyName } from "./key.ts";

const tails: Partial<Record<KeyName, string>> = {
  up: "\x1b[A",
  down: "\x1b[B",
  right: "\x1b[C",
  left: "\x1b[D",
  home: "\x1b[H",
  end: "\x1b[F",
  pageUp: "\x1b[5~",
  pageDown: "\x1b[6~",
  enter: "\r",
  backspace: "\b",
  // A bare escape would wait inside Ink for its tail, and swallow the next key for it. This spelling is whole.
  escape: "\x1b[27u",
};

/**
 * The one chunk that Ink's parser takes for exactly this key, or undefined for a key that does harm there: its text
 * field takes Delete for Backspace, and inserts the letter of a control key.
 */
export function encodeForInk(key: Key): string | undefined {
  if (key.ctrl || key.alt) return undefined;
  if (key.name === "character") return key.text;
  if (key.name === "paste") return key.text.trim().replace(/\s*\n\s*/g, " ") || undefined;
  if (key.name === "tab") return key.shift ? "\x1b[Z" : "\t";
  return tails[key.name];
}
