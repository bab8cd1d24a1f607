import fc from "fast-check";

const sgr = fc.constantFrom(
  ...[0, 1, 2, 3, 4, 7, 9, 22, 23, 24, 27, 29, 31, 32, 39, 41, 44, 49, 91, 97, 103].map((code) => `\x1b[${code}m`),
  "\x1b[1;31m",
  "\x1b[7;4;42m",
  "\x1b[m",
  "\x1b[38;5;200m",
  "\x1b[48;2;1;2;3;1m",
);
const word = fc.constantFrom("a", "toe", "0.10", "14 3/8", " ", "    ", "            ", "|", "left", "31.8");
const wide = fc.constantFrom("中", "文字", "°", "──────", "│", "é", "e\u0301", "ｱ", "▲", "⣿", "½", "한");

/** Lines of text, blanks, styles, wide and accented characters, as a view might draw them. */
export function frames(columns: number, rows: number): fc.Arbitrary<string> {
  const piece = fc.oneof({ weight: 4, arbitrary: word }, { weight: 2, arbitrary: wide }, { weight: 2, arbitrary: sgr });
  const line = fc.array(piece, { maxLength: columns }).map((pieces) => pieces.join(""));
  return fc.array(line, { maxLength: rows + 2 }).map((lines) => lines.join("\n"));
}
