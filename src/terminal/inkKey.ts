import type { FieldCursor } from "./fieldCursor.ts";
import type { Key, KeyName } from "./key.ts";

const left = "\x1b[D";
const right = "\x1b[C";
const backspace = "\b";

const tails: Partial<Record<KeyName, string>> = {
  up: "\x1b[A",
  down: "\x1b[B",
  right,
  left,
  home: "\x1b[H",
  end: "\x1b[F",
  pageUp: "\x1b[5~",
  pageDown: "\x1b[6~",
  enter: "\r",
  backspace,
  // A bare escape would wait inside Ink for its tail, and swallow the next key for it. This spelling is whole.
  escape: "\x1b[27u",
};

/**
 * The chunks that Ink's parser takes for exactly this key, one after the other; none for a key that does harm there. Its
 * text field takes Delete for Backspace, inserts the letter of a control key, knows no Home or End, and lets its cursor
 * leave the text, after which what is typed lands in the wrong place: so it is moved only as far as it can go.
 */
export function encodeForInk(key: Key, { room }: FieldCursor): readonly string[] {
  if (key.ctrl || key.alt) return [];
  if (key.name === "character") return [key.text];
  if (key.name === "paste") return [key.text.trim().replace(/\s*\n\s*/g, " ")].filter((text) => text !== "");
  if (key.name === "tab") return [key.shift ? "\x1b[Z" : "\t"];
  if (room !== null) {
    if (key.name === "left") return room.left > 0 ? [left] : [];
    if (key.name === "right") return room.right > 0 ? [right] : [];
    if (key.name === "home") return Array.from({ length: room.left }, () => left);
    if (key.name === "end") return Array.from({ length: room.right }, () => right);
    if (key.name === "delete") return room.right > 0 ? [right, backspace] : [];
  }
  const tail = tails[key.name];
  return tail === undefined ? [] : [tail];
}
