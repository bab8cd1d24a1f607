import type { Cells, Place } from "./cells.ts";
import { beginUpdate, endUpdate, hideCursor, showCursor } from "./modes.ts";
import { type CursorPlace, motion } from "./motion.ts";
import { leavesBlank, plainStyle, restyle } from "./style.ts";
import { byteLength, isDoubtful } from "./width.ts";

/** What the terminal was left with after the last bytes sent. */
export interface Pen {
  /** Undefined where nothing is known of it. */
  readonly place: CursorPlace | undefined;
  readonly style: number;
  readonly cursorShown: boolean;
}

/** The pen just after the terminal was entered. */
export const freshPen: Pen = { place: undefined, style: plainStyle, cursorShown: false };

export interface Update {
  readonly bytes: string;
  readonly pen: Pen;
}

/**
 * The bytes that turn what a terminal shows from one screen into another of the same size, and the pen they leave it
 * with. Only changed cells are sent. Between two changed stretches of a row the cheaper is taken: to move the cursor, or to
 * write the cells between once more. After any character beyond ASCII the column is taken as unknown.
 */
export function diff(from: Cells, to: Cells, pen: Pen): Update {
  const writer = new Writer(from, to, pen);
  for (let y = 0; y < to.rows; y++) writer.row(y);
  const drawn = writer.bytes;
  writer.cursor(to.cursor);
  const bytes = drawn === "" ? writer.bytes : beginUpdate + writer.bytes + endUpdate;
  return { bytes, pen: writer.pen() };
}

/** Cells `start` to `end` (not included) of a row, to be written or to be erased. */
interface Stretch {
  readonly start: number;
  readonly end: number;
  readonly erase: boolean;
}

class Writer {
  bytes = "";
  private place: CursorPlace | undefined;
  private style: number;
  private cursorShown: boolean;

  constructor(
    private readonly from: Cells,
    private readonly to: Cells,
    pen: Pen,
  ) {
    this.place = pen.place;
    this.style = pen.style;
    this.cursorShown = pen.cursorShown;
  }

  pen(): Pen {
    return { place: this.place, style: this.style, cursorShown: this.cursorShown };
  }

  cursor(cursor: Place | undefined): void {
    if (cursor !== undefined) this.moveTo(cursor);
    if ((cursor !== undefined) === this.cursorShown) return;
    this.cursorShown = cursor !== undefined;
    this.bytes += this.cursorShown ? showCursor : hideCursor;
  }

  row(y: number): void {
    const tail = this.tail(y);
    for (const stretch of this.stretches(y, tail ?? this.to.columns)) {
      if (stretch.erase) this.erase(stretch, y);
      else this.write(stretch, y);
    }
    if (tail !== undefined) this.eraseTail(tail, y);
  }

  private isChanged(at: number): boolean {
    return this.from.glyphs[at] !== this.to.glyphs[at] || this.from.styles[at] !== this.to.styles[at];
  }

  private isErasable(at: number): boolean {
    return this.to.glyphs[at] === " " && this.to.styles[at] === plainStyle;
  }

  /** The column from which erasing to the end of the row is cheaper than writing blanks, if there is one. */
  private tail(y: number): number | undefined {
    const { columns } = this.to;
    let start: number | undefined;
    let count = 0;
    for (let x = columns - 1; x >= 0 && this.isErasable(y * columns + x); x--) {
      if (!this.isChanged(y * columns + x)) continue;
      start = x;
      count++;
    }
    return count > eraseTail.length ? start : undefined;
  }

  private stretches(y: number, limit: number): Stretch[] {
    const { columns } = this.to;
    const result: Stretch[] = [];
    let x = 0;
    while (x < limit) {
      if (!this.isChanged(y * columns + x)) {
        x++;
        continue;
      }
      let start = x;
      while (x < limit && this.isPartOfChange(y * columns + x)) {
        let blankEnd = x;
        while (blankEnd < limit && this.isErasable(y * columns + blankEnd) && this.isChanged(y * columns + blankEnd))
          blankEnd++;
        const goesOn = blankEnd < limit && this.isPartOfChange(y * columns + blankEnd);
        const blanks = blankEnd - x;
        const cost = eraseCells(blanks).length + (goesOn ? motion({ x, y }, { x: blankEnd, y }).length : 0);
        if (blanks > cost) {
          if (x > start) result.push({ start, end: x, erase: false });
          result.push({ start: x, end: blankEnd, erase: true });
          start = blankEnd;
        }
        x = Math.max(blankEnd, x + 1);
      }
      if (x > start) result.push({ start, end: x, erase: false });
    }
    return result;
  }

  /** The second column of a wide character goes with the first, changed or not. */
  private isPartOfChange(at: number): boolean {
    return this.isChanged(at) || this.to.glyphs[at] === "";
  }

  private write({ start, end }: Stretch, y: number): void {
    this.reach(start, y);
    this.put(start, end, y);
  }

  private erase({ start, end }: Stretch, y: number): void {
    this.reach(start, y);
    this.clearStyle();
    this.bytes += eraseCells(end - start);
  }

  private eraseTail(start: number, y: number): void {
    if (!this.isBlankBetween(start, y)) this.reach(start, y);
    this.clearStyle();
    this.bytes += eraseTail;
  }

  /** Whether the cursor stands before this column with nothing but blanks between, so that erasing may start right there. */
  private isBlankBetween(end: number, y: number): boolean {
    const place = this.place;
    if (place?.x === undefined || place.y !== y || place.x > end) return false;
    for (let x = place.x; x < end; x++) if (!this.isErasable(y * this.to.columns + x)) return false;
    return true;
  }

  /** Terminals erase with the background of the pen. */
  private clearStyle(): void {
    if (!leavesBlank(this.style)) this.restyle(plainStyle);
  }

  /** Bring the cursor to a column: by moving, or by writing what is there already. */
  private reach(x: number, y: number): void {
    const place = this.place;
    const move = motion(place, { x, y });
    if (place?.x !== undefined && place.y === y && place.x < x) {
      const { columns } = this.to;
      const needed = this.isErasable(y * columns + x) ? undefined : this.to.styles[y * columns + x];
      const limit = move.length + (needed === undefined ? 0 : restyle(this.style, needed).length);
      if (this.bridgeCost(place.x, x, y, needed, limit) <= limit) {
        this.put(place.x, x, y);
        return;
      }
    }
    this.bytes += move;
    this.place = { x, y };
  }

  /** Bytes of writing the cells between once more, or more than the limit if it cannot be had for that. */
  private bridgeCost(start: number, end: number, y: number, needed: number | undefined, limit: number): number {
    const { columns, glyphs } = this.to;
    let cost = 0;
    let style = this.style;
    for (let x = start; x < end && cost <= limit; x++) {
      if (!isAscii(glyphs[y * columns + x] ?? "")) return limit + 1;
      const next = this.styleToWrite(x, end, y, style);
      cost += restyle(style, next).length + 1;
      style = next;
    }
    return needed === undefined ? cost : cost + restyle(style, needed).length;
  }

  private put(start: number, end: number, y: number): void {
    const { columns, glyphs } = this.to;
    for (let x = start; x < end; x++) {
      const glyph = glyphs[y * columns + x] ?? " ";
      if (glyph === "") continue;
      if (this.place?.x !== x) this.moveTo({ x, y });
      this.restyle(this.styleToWrite(x, end, y, this.style));
      if (isAscii(glyph)) this.putAscii(glyph, x, y);
      else if (isDoubtful(glyph)) this.putDoubtful(glyph, x, y);
      else this.putRun(glyph, x, y, end);
    }
  }

  private putAscii(glyph: string, x: number, y: number): void {
    this.bytes += glyph;
    // At the right edge terminals differ in whether the cursor stands on the last cell or after it.
    this.place = { x: x + 1 < this.to.columns ? x + 1 : undefined, y };
  }

  /** A character of agreed width: the next one may follow it if it is beyond ASCII too, else the place is looked up afresh. */
  private putRun(glyph: string, x: number, y: number, end: number): void {
    const { columns, glyphs } = this.to;
    this.bytes += glyph;
    const width = glyphs[y * columns + x + 1] === "" ? 2 : 1;
    const next = x + width < end ? (glyphs[y * columns + x + width] ?? " ") : " ";
    this.place = { x: isAscii(next) || isDoubtful(next) ? undefined : x + width, y };
  }

  /** Both columns are blanked first, since some terminals fill only one of them. */
  private putDoubtful(glyph: string, x: number, y: number): void {
    const width = this.to.glyphs[y * this.to.columns + x + 1] === "" ? 2 : 1;
    if (width === 2) {
      this.bytes += "  ";
      this.place = { x: x + 2 < this.to.columns ? x + 2 : undefined, y };
      this.moveTo({ x, y });
    }
    this.bytes += glyph;
    this.place = { x: undefined, y };
  }

  /**
   * The style to write a cell with. An untouched blank shows nothing of most styles, so the pen may keep its own, or
   * take on that of the next character.
   */
  private styleToWrite(x: number, end: number, y: number, style: number): number {
    const { columns, styles } = this.to;
    const at = y * columns + x;
    if (!this.isErasable(at)) return styles[at] ?? plainStyle;
    if (leavesBlank(style)) return style;
    let next = x + 1;
    while (next < end && this.isErasable(y * columns + next)) next++;
    const coming = next < end ? (styles[y * columns + next] ?? plainStyle) : plainStyle;
    return leavesBlank(coming) ? coming : plainStyle;
  }

  private moveTo(place: Place): void {
    this.bytes += motion(this.place, place);
    this.place = place;
  }

  private restyle(style: number): void {
    this.bytes += restyle(this.style, style);
    this.style = style;
  }
}

const eraseTail = "\x1b[K";

function eraseCells(count: number): string {
  return `\x1b[${count}X`;
}

function isAscii(glyph: string): boolean {
  return byteLength(glyph) === 1;
}
