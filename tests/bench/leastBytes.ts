import type { Cells } from "../../src/terminal/cells.ts";

/*
 * The least bytes that turn one screen into another, found by exhaustive dynamic programming, to measure the program's
 * own writer against. Written without anything of that writer but the cells that it is given.
 *
 * The commands: print a cell; select graphic rendition, as changes or from a reset; cursor position, up, down, forward,
 * back, to a column, carriage return, backspace; erase to the end of a row, erase n cells. Cells are done row by row
 * from left to right, and within that every choice is weighed: which unchanged cells to print again, where to jump in,
 * where to erase, which pen to hold over blanks.
 *
 * `readdress` says whether the column is taken for unknown after a character beyond ASCII, as the screen has to take it.
 */

export interface Carried {
  /** Where the cursor is, if it is known. */
  readonly cell: number | undefined;
  readonly style: number;
}

export interface Least {
  readonly bytes: number;
  readonly carried: Carried;
}

interface Way {
  readonly bytes: number;
  readonly cell: number | undefined;
}

/** The least bytes from one screen to another of the same size, and where that leaves cursor and pen. */
export function leastBytes(from: Cells, to: Cells, start: Carried, readdress: boolean): Least {
  const { columns, rows, glyphs, styles } = to;
  const count = columns * rows;
  const changed = Array.from(
    { length: count },
    (_, at) => glyphs[at] !== from.glyphs[at] || styles[at] !== from.styles[at],
  );
  const isBlank = (at: number) => glyphs[at] === " " && styles[at] === 0;
  const pens = [...new Set([start.style, 0, ...styles])];
  const blankEnd = new Int32Array(count);
  const nextChanged = new Int32Array(count + 1).fill(count);
  for (let at = count - 1; at >= 0; at--) {
    const isLast = at % columns === columns - 1;
    blankEnd[at] = isBlank(at) ? (isLast ? at + 1 : Math.max(at + 1, blankEnd[at + 1])) : at;
    nextChanged[at] = changed[at] ? at : nextChanged[at + 1];
  }
  if (nextChanged[0] === count) return { bytes: 0, carried: start };

  // best[at * pens + pen]: the cheapest way to have the cursor on the cell, all before it being right.
  const best = new Float64Array((count + 1) * pens.length).fill(Number.POSITIVE_INFINITY);
  let least: Least = { bytes: Number.POSITIVE_INFINITY, carried: start };

  /** From a cursor place, with all before `done` right, to the cells from which the next change can be reached. */
  function goOn(bytes: number, cell: number | undefined, pen: number, done: number): void {
    const goal = nextChanged[done];
    if (goal === count) {
      if (bytes < least.bytes) least = { bytes, carried: { cell, style: pens[pen] } };
      return;
    }
    const rowStart = goal - (goal % columns);
    for (let at = Math.max(done, rowStart, goal - 6); at <= goal; at++)
      offer(at, pen, bytes + moveBytes(cell, at, columns));
    if (cell === done && Math.floor(cell / columns) === Math.floor(goal / columns)) offer(cell, pen, bytes);
  }

  function offer(at: number, pen: number, bytes: number): void {
    const slot = at * pens.length + pen;
    if (bytes < best[slot]) best[slot] = bytes;
  }

  goOn(0, start.cell, pens.indexOf(start.style), 0);
  for (let at = 0; at < count; at++) {
    for (let pen = 0; pen < pens.length; pen++) {
      const bytes = best[at * pens.length + pen];
      if (bytes === Number.POSITIVE_INFINITY || bytes >= least.bytes) continue;
      for (let next = 0; next < pens.length; next++) {
        const restyled = bytes + styleBytes(pens[pen], pens[next]);
        for (const way of waysOn(at, pens[next])) goOn(restyled + way.bytes, way.cell, next, way.done);
      }
    }
  }
  return least;

  /** What can be done with the cursor on a cell and this pen in hand. */
  function waysOn(at: number, style: number): (Way & { done: number })[] {
    const ways: (Way & { done: number })[] = [];
    const rowEnd = at - (at % columns) + columns;
    if (styles[at] === style || (isBlank(at) && showsNothing(style))) {
      const glyph = glyphs[at];
      const width = glyphs[at + 1] === "" && at + 1 < rowEnd ? 2 : 1;
      const done = at + width;
      const isKnown = done < rowEnd && !(readdress && isLastOfRun(at, done));
      if (glyph !== "") ways.push({ bytes: Buffer.byteLength(glyph), cell: isKnown ? done : undefined, done });
    }
    if (blankEnd[at] > at && showsNothing(style)) {
      if (blankEnd[at] === rowEnd) ways.push({ bytes: 3, cell: at, done: rowEnd });
      else {
        for (let done = at + 1; done <= blankEnd[at]; done++) {
          ways.push({ bytes: done - at === 1 ? 3 : 3 + String(done - at).length, cell: at, done });
        }
      }
    }
    // The row alone is known after a character of doubtful width; moves within it are priced from there.
    return ways.map((way) => (way.cell === undefined ? { ...way, cell: -1 - (at - (at % columns)) } : way));
  }

  function isLastOfRun(at: number, done: number): boolean {
    return Buffer.byteLength(glyphs[at]) > 1 && !(Buffer.byteLength(glyphs[done]) > 1);
  }
}

/** A blank printed with this style cannot be told from an untouched one: no background, line or inversion. */
function showsNothing(style: number): boolean {
  return ((style >> 5) & 31) === 0 && style >> 13 === 0;
}

/** Bytes from one cursor place to another; a negative place stands for an unknown column of a row. */
function moveBytes(from: number | undefined, to: number, columns: number): number {
  const y = Math.floor(to / columns);
  const x = to % columns;
  const digits = (value: number) => (value === 1 ? 0 : String(value).length);
  const absolute = x === 0 ? 3 + digits(y + 1) : 4 + digits(y + 1) + String(x + 1).length;
  if (from === undefined) return absolute;
  const isKnown = from >= 0;
  const place = isKnown ? from : -1 - from;
  const rows = Math.abs(y - Math.floor(place / columns));
  const down = rows === 0 ? 0 : 3 + digits(rows);
  const steps = x - (place % columns);
  const across = [x === 0 ? 1 : 3 + String(x + 1).length, x === 0 ? 1 : 1 + 3 + digits(x)];
  if (isKnown)
    across.push(steps === 0 ? 0 : 3 + digits(Math.abs(steps)), steps < 0 ? -steps : Number.POSITIVE_INFINITY);
  return Math.min(absolute, down + Math.min(...across));
}

const ends = [22, 22, 23, 24, 27, 29];
const begins = [1, 2, 3, 4, 7, 9];

/** Bytes of the shortest SGR sequence from one style to another, by trying the change and the fresh start. */
function styleBytes(from: number, to: number): number {
  if (from === to) return 0;
  return Math.min(changeBytes(from, to), 3 + partBytes(partsOf(to)) + (to === 0 ? 0 : 1));
}

function changeBytes(from: number, to: number): number {
  const dropped = (from >> 10) & ~(to >> 10);
  const codes = new Set<number>();
  for (let bit = 0; bit < 6; bit++) if ((dropped >> bit) & 1) codes.add(ends[bit]);
  const lost = codes.has(22) ? 3 : 0;
  for (let bit = 0; bit < 6; bit++) {
    const isOn = ((from >> 10) & ~lost & (1 << bit)) !== 0;
    if (((to >> 10) & (1 << bit)) !== 0 && !isOn) codes.add(begins[bit]);
  }
  if ((from & 31) !== (to & 31)) codes.add(colorCode(to & 31));
  if (((from >> 5) & 31) !== ((to >> 5) & 31)) codes.add(colorCode((to >> 5) & 31) + 10);
  return 3 + partBytes([...codes]);
}

function partsOf(style: number): number[] {
  const codes = begins.filter((_, bit) => (style >> (10 + bit)) & 1);
  if ((style & 31) !== 0) codes.push(colorCode(style & 31));
  if (((style >> 5) & 31) !== 0) codes.push(colorCode((style >> 5) & 31) + 10);
  return codes;
}

function colorCode(color: number): number {
  return color === 0 ? 39 : color <= 8 ? 29 + color : 81 + color;
}

function partBytes(codes: readonly number[]): number {
  return codes.join(";").length;
}
