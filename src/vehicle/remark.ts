import { pieces } from "./units/pieces.ts";

/** A printed page and a terminal hold so many characters a line. */
const width = 78;

/** Words as comments of a file, in lines that a printed page and a terminal hold. */
export function remark(words: string, indent = ""): readonly string[] {
  const lines: string[] = [];
  let line = `${indent}#`;
  for (const word of pieces(words)) {
    if (line.length + 1 + word.length > width) {
      lines.push(line);
      line = `${indent}#`;
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}
