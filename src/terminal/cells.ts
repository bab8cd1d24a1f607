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
  /** The lines that it was made of, and the style before each of them and after the last. */
  readonly lines: readonly string[];
  readonly starts: readonly number[];
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
    lines: [],
    starts: [],
  };
}

/**
 * A frame as Ink writes it (lines, SGR sequences) as cells. What lies beyond the size is cut. Every other sequence and
 * every control character is left out, so that no text of a car file can reach the terminal as a command.
 *
 * @param before an earlier frame in the same size and look: a line that is still the same is not read again
 */
export function cellsOf(frame: string, size: Size, look: Look, before?: Cells): Cells {
  const { columns, rows } = size;
  const lines = frame.split("\n", rows);
  const starts: number[] = [];
  const reader = new LineReader(size, look);
  for (let y = 0; y < lines.length; y++) {
    starts.push(reader.style);
    const isSame = before?.lines[y] === lines[y] && before?.starts[y] === reader.style && before.cursor?.y !== y;
    if (before !== undefined && isSame) reader.copy(before, y);
    else reader.read(lines[y] ?? "", y);
  }
  starts.push(reader.style);
  return { columns, rows, glyphs: reader.glyphs, styles: reader.styles, cursor: reader.cursor, lines, starts };
}

class LineReader {
  readonly glyphs: string[];
  readonly styles: Int32Array;
  cursor: Place | undefined;
  style = plainStyle;
  private x = 0;
  private y = 0;

  constructor(
    private readonly size: Size,
    private readonly look: Look,
  ) {
    this.glyphs = new Array<string>(size.columns * size.rows).fill(blank);
    this.styles = new Int32Array(size.columns * size.rows);
  }

  copy(before: Cells, y: number): void {
    const { columns } = this.size;
    const start = y * columns;
    for (let at = start; at < start + columns; at++) this.glyphs[at] = before.glyphs[at] ?? blank;
    this.styles.set(before.styles.subarray(start, start + columns), start);
    this.style = before.starts[y + 1] ?? plainStyle;
  }

  read(line: string, y: number): void {
    this.x = 0;
    this.y = y;
    for (const piece of pieces(line)) {
      if (piece.sgr === undefined) this.text(piece.text);
      else if (this.look.color !== "none") this.style = withSgr(this.style, piece.sgr);
    }
  }

  private text(text: string): void {
    for (const grapheme of graphemes(text)) {
      if (isAscii(grapheme)) {
        this.set(grapheme);
        this.x++;
      } else {
        this.beyondAscii(grapheme);
      }
    }
  }

  private beyondAscii(grapheme: string): void {
    const isMarked = grapheme.includes(cursorMark);
    const shown = isMarked ? grapheme.replaceAll(cursorMark, "") : grapheme;
    if (shown === "") return;
    if (isMarked) this.cursor = { x: Math.min(this.x, this.size.columns - 1), y: this.y };
    const glyph = printable(shown);
    const width = Math.max(1, widthOf(glyph));
    const isCut = this.x + width > this.size.columns;
    const columns = isCut ? [blank] : this.look.unicode ? [glyph, ""].slice(0, width) : toAscii(glyph, width);
    for (const column of columns) {
      this.set(column);
      this.x++;
    }
  }

  private set(glyph: string): void {
    if (this.x >= this.size.columns) return;
    const at = this.y * this.size.columns + this.x;
    this.glyphs[at] = glyph;
    this.styles[at] = glyph === blank ? styleOfBlank(this.style) : this.style;
  }
}

function isAscii(grapheme: string): boolean {
  return grapheme.length === 1 && grapheme >= " " && grapheme < "\x7f";
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
  if (isAscii(grapheme)) return grapheme;
  const kept = [...grapheme].filter((letter) => !acting.test(letter)).join("");
  return kept === "" || widthOf(kept) === 0 ? blank : kept;
}
