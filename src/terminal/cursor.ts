/**
 * Mark of the text cursor in a frame: put after a character, it says that the terminal's own cursor stands on that
 * character. It has no width (a combining grapheme joiner, which no text here has), so that it does not move the
 * layout, and it never reaches the terminal.
 */
export const cursorMark = "\u034f";

/** The first inverse character of a line, which is how Ink's text field draws its cursor, marked as the real one. */
export function cursorFromInverse(line: string): string {
  return line.replace(/\x1b\[7m([\s\S]+?)\x1b\[27m/u, `$1${cursorMark}`);
}
