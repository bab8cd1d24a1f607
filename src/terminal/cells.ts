import { toAscii } from "./ascii.ts";
import type { Capabilities } from "./capabilities.ts";
import { cursorMark } from "./cursor.ts";
import { plainStyle, styleOfBlank, withSgr } from "./style.ts";
import { graphemes, widthOf } from "./width.ts";

export interface Size {
  readonly columns: number;
  readonly rows: number;
}

export interface Place {
  readonly x: number;
  readonly y: number;
}

/**
 * What a screen shows, cell by cell in rows. `glyphs` holds one grapheme a cell, the empty text in the second column of
 * a wide one; a glyph is printable, always.
 */
export interface Cells extends Size {
  readonly glyphs: readonly string[];
  readonly styles: Int32Array;
  /** Where the terminal's cursor is to be seen, if anywhere. */
  readonly cursor: Place | undefined;
}

/** What may be shown: without colour there is no style at all. */
export type Look = Pick<Capabilities, "color" | "unicode">;

const blank = " ";

/** A screen of which nothing is known: no cell equals a cell of it. */
export function unknownCells({ columns, rows }: Size): Cells {
  const count = columns * rows;
  return {
    columns,
    rows,
    glyphs: new Array<string>(count).fill("\0"),
    styles: new Int32Array(count).fill(-1),
    cursor: undefined,
  };
}

/**
 * A frame as Ink writes it (lines, SGR sequences) as cells. What lies beyond the size is cut. Every other sequence and
 * every control character is left out, so that no text of a car file can reach the terminal as a command.
 */
export function cellsOf(frame: string, { columns, rows }: Size, look: Look): Cells {
  const glyphs = new Array<string>(columns * rows).fill(blank);
  const styles = new Int32Array(columns * rows);
  let cursor: Place | undefined;
  let style = plainStyle;
  const lines = frame.split("\n");
  for (let y = 0; y < Math.min(rows, lines.length); y++) {
    let x = 0;
    for (const piece of pieces(lines[y] ?? "")) {
      if (piece.sgr !== undefined) {
        if (look.color !== "none") style = withSgr(style, piece.sgr);
        continue;
      }
      for (const grapheme of graphemes(piece.text)) {
        const isMarked = grapheme.includes(cursorMark);
        const glyph = isMarked ? grapheme.replaceAll(cursorMark, "") : grapheme;
        if (glyph === "") continue;
        if (isMarked) cursor = { x: Math.min(x, columns - 1), y };
        x = put(glyph, x, y);
      }
    }
  }
  return { columns, rows, glyphs, styles, cursor };

  function put(grapheme: string, x: number, y: number): number {
    const printed = printable(grapheme);
    const width = Math.max(1, widthOf(printed));
    if (x >= columns) return x + width;
    const at = y * columns + x;
    if (width === 2 && x === columns - 1) {
      glyphs[at] = blank;
    } else if (!look.unicode) {
      [...toAscii(printed, width)].forEach((letter, offset) => {
        glyphs[at + offset] = letter;
      });
    } else {
      glyphs[at] = printed;
      if (width === 2) glyphs[at + 1] = "";
    }
    for (let offset = 0; offset < width && x + offset < columns; offset++) {
      styles[at + offset] = glyphs[at + offset] === blank ? styleOfBlank(style) : style;
    }
    return x + width;
  }
}

interface Piece {
  readonly text: string;
  readonly sgr?: string;
}

/** Sequences that a frame can hold: control sequences, strings up to their end, and an escape with one more character. */
const sequence = /[\x1b\x9b]/;
const sequences = /(?:\x1b\[|\x9b)([0-?]*)([ -/]*)([@-~])|\x1b[\]PX^_][\s\S]*?(?:\x07|\x1b\\|$)|\x1b[ -/]*[0-~]?/g;

function pieces(line: string): Piece[] {
  if (!sequence.test(line)) return [{ text: line }];
  const result: Piece[] = [];
  let last = 0;
  for (const match of line.matchAll(sequences)) {
    if (match.index > last) result.push({ text: line.slice(last, match.index) });
    last = match.index + match[0].length;
    const isSgr = match[3] === "m" && match[2] === "" && /^[\d;]*$/.test(match[1] ?? "");
    if (isSgr) result.push({ text: "", sgr: match[1] ?? "" });
  }
  if (last < line.length) result.push({ text: line.slice(last) });
  return result;
}

/** Characters that act instead of showing: controls, direction marks, halves of a pair. */
const acting = /[\p{Cc}\p{Cs}\u061c\u200e\u200f\u2028-\u202e\u2066-\u2069\ufeff\ufff9-\uffff]/u;

/** A grapheme that is safe to send and has a width: nothing else gets into a cell. */
function printable(grapheme: string): string {
  if (grapheme.length === 1 && grapheme >= " " && grapheme < "\x7f") return grapheme;
  const kept = [...grapheme].filter((letter) => !acting.test(letter)).join("");
  return kept === "" || widthOf(kept) === 0 ? blank : kept;
}
