import type { FieldCursor } from "./fieldCursor.ts";
import { graphemes, widthOf } from "./width.ts";

/**
 * Mark of the text cursor in a frame: put after a character, it says that the terminal's own cursor stands on that
 * character. It has no width (a combining grapheme joiner, which no text here has), so that it does not move the
 * layout, and it never reaches the terminal.
 */
export const cursorMark = "\u034f";

/** The first inverse character of a text, which is how Ink's text field draws its cursor. */
const inverse = /\x1b\[7m([\s\S]+?)\x1b\[27m/u;

/** The columns from one to another of a text; a wide character that is only half within is left out. */
function between(text: string, from: number, to: number): string {
  let column = 0;
  let kept = "";
  for (const grapheme of graphemes(text)) {
    const start = column;
    column += widthOf(grapheme);
    if (start >= from && column <= to) kept += grapheme;
  }
  return kept;
}

function columnsOf(text: string): number {
  return graphemes(text).reduce((sum, grapheme) => sum + widthOf(grapheme), 0);
}

/**
 * What a field of Ink's draws, as the part of it that fits into this many columns and has the cursor in it, marked as the
 * real one. It moves by half its width, so that the text stands still while the cursor goes along it.
 */
export function fieldWindow(columns: number): (field: string) => string {
  return (field) => {
    const found = inverse.exec(field);
    const before = found === null ? field : field.slice(0, found.index);
    const under = found?.[1] ?? "";
    const after = found === null ? "" : field.slice(found.index + found[0].length);
    const at = columnsOf(before);
    const over = at + Math.max(1, columnsOf(under)) - columns;
    const half = Math.max(1, Math.floor(columns / 2));
    const from = over <= 0 ? 0 : Math.ceil(over / half) * half;
    const shown = from === 0 ? before : `…${between(before, from + 1, at)}`;
    const cursor = under === "" ? "" : `${under}${cursorMark}`;
    return shown + cursor + between(after, 0, columns - columnsOf(shown) - columnsOf(under));
  };
}

/** How far the cursor of a field of Ink's that holds this text can go either way, from what the field draws. */
export function cursorRoom(field: string, text: string): FieldCursor["room"] {
  const found = inverse.exec(field);
  if (found === null) return null;
  const before = field.slice(0, found.index);
  // The field counts code units, but finds the character to draw as its cursor by counting code points.
  const left = before === text ? text.length : [...before].length;
  return { left, right: text.length - left };
}
