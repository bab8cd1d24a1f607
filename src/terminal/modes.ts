/*
 * What is switched on in the terminal while the screen is up, and off again after it. A terminal that does not know a
 * mode ignores it, so that no terminal needs a list of its own.
 *
 * 1049 alternate screen; 7 wrapping at the right edge, off so that the last column can be written; 25 the cursor;
 * 2004 brackets around a paste; 2026 updates shown as a whole.
 */

/** Take over the terminal. The screen is not cleared: the first frame writes every cell. */
export const enter = "\x1b[?1049h\x1b[?7l\x1b[?25l\x1b[?2004h\x1b[m";

/** Give it back: whatever was drawn stays behind on the other screen. */
export const leave = "\x1b[?2026l\x1b[m\x1b[?2004l\x1b[?7h\x1b[?1049l\x1b[?25h";

/** Ends a sequence that was cut in the middle. */
export const cancel = "\x18";

export const beginUpdate = "\x1b[?2026h";
export const endUpdate = "\x1b[?2026l";
export const showCursor = "\x1b[?25h";
export const hideCursor = "\x1b[?25l";
