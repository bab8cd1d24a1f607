/*
 * The frame's own characters in ASCII, one column for one column, so that one view serves every terminal.
 * A degree sign becomes `d`, as mapping tools write degrees where they have no sign.
 */

const groups: readonly (readonly [string, string])[] = [
  ["─━╌╍┄┅┈┉═╴╶╸╺‐‑‒–—―−", "-"],
  ["│┃╎╏┆┇┊┋║╵╷╹╻", "|"],
  ["┌┍┎┏┐┑┒┓└┕┖┗┘┙┚┛├┝┞┟┠┡┢┣┤┥┦┧┨┩┪┫┬┭┮┯┰┱┲┳┴┵┶┷┸┹┺┻┼┽┾┿╀╁╂╃╄╅╆╇╈╉╊╋╭╮╯╰╔╗╚╝╠╣╦╩╬", "+"],
  ["╱", "/"],
  ["╲", "\\"],
  ["╳×✕✖✗✘", "x"],
  ["█▓▉▊▋▌▐■▬◼", "#"],
  ["▒▆▇▅", "="],
  ["░▄▃", ":"],
  ["▂▁", "_"],
  ["▀▔", "^"],
  ["▏▎▍▕", "|"],
  ["•●◆★◉✓✔", "*"],
  ["○◇☆◌◯□◻", "o"],
  ["·∙⋅…", "."],
  ["←◀◂◄⇐‹«", "<"],
  ["→▶▸►⇒›»", ">"],
  ["↑▲▴△⇑", "^"],
  ["↓▼▾▽⇓", "v"],
  ["↔⇔", "-"],
  ["↕⇕", "|"],
  ["‘’′", "'"],
  ["“”″", '"'],
  ["°", "d"],
  ["±", "+"],
  ["÷", "/"],
  ["≤", "<"],
  ["≥", ">"],
  ["≈", "~"],
  ["≠", "!"],
  ["µμ", "u"],
  ["⚠", "!"],
  ["⏎↵", "<"],
];

const table = new Map(groups.flatMap(([from, to]) => [...from].map((glyph) => [glyph, to] as const)));

/** One grapheme in ASCII, as many characters as it has columns. */
export function toAscii(grapheme: string, width: number): string {
  if (grapheme.length === 1 && grapheme < "\x80") return grapheme;
  const known = table.get(grapheme) ?? brailleToAscii(grapheme);
  if (known !== undefined) return known.padEnd(width);
  const bare = grapheme.normalize("NFKD").charAt(0);
  return (bare > " " && bare < "\x7f" ? bare : "?").padEnd(width, "?");
}

/** A braille cell as a character that lies where its dots lie: high, low, or on the whole height. */
function brailleToAscii(grapheme: string): string | undefined {
  const dots = grapheme.charCodeAt(0) - 0x2800;
  if (grapheme.length !== 1 || dots < 0 || dots > 0xff) return undefined;
  if (dots === 0) return " ";
  const high = (dots & 0b00011011) !== 0;
  const low = (dots & 0b11100100) !== 0;
  if (high && low) return ":";
  return high ? "'" : ".";
}
