/**
 * A drawing in braille: each cell holds two by four dots, which terminals that know only ASCII show as high and low
 * marks. Text lies over the dots.
 */
export interface Canvas {
  readonly columns: number;
  readonly rows: number;
  readonly dots: Uint8Array;
  readonly text: (string | null)[];
}

/** Dots a cell has across and down. */
export const across = 2;
export const down = 4;

/** The bits of a braille cell, by row and column of its dots (Unicode 15, block U+2800). */
const bits = [
  [0x01, 0x08],
  [0x02, 0x10],
  [0x04, 0x20],
  [0x40, 0x80],
] as const;

/** An empty canvas of so many cells. */
export function newCanvas(columns: number, rows: number): Canvas {
  const cells = Math.max(0, columns) * Math.max(0, rows);
  return {
    columns: Math.max(0, columns),
    rows: Math.max(0, rows),
    dots: new Uint8Array(cells),
    text: new Array<string | null>(cells).fill(null),
  };
}

/** Puts a dot, counted from the top left; beyond the edges nothing. */
export function dot(canvas: Canvas, x: number, y: number): void {
  const column = Math.floor(x / across);
  const row = Math.floor(y / down);
  if (column < 0 || row < 0 || column >= canvas.columns || row >= canvas.rows) return;
  canvas.dots[row * canvas.columns + column] |=
    bits[((y % down) + down) % down]?.[((x % across) + across) % across] ?? 0;
}

/** How a line is drawn: whole, or so many dots and so many gaps in turn. */
export interface Stroke {
  readonly on: number;
  readonly off: number;
}

/** A whole line, one of dashes, and one of single dots. */
export const whole: Stroke = { on: 1, off: 0 };
export const dashed: Stroke = { on: 3, off: 3 };
export const dotted: Stroke = { on: 1, off: 3 };

/** Lines longer than this, in dots, go off towards nowhere; only what can be on a screen of any size is drawn. */
const longest = 20000;

/** A straight line between two places in dots, both ends included. */
export function line(
  canvas: Canvas,
  from: readonly [x: number, y: number],
  to: readonly [x: number, y: number],
  stroke: Stroke = whole,
): void {
  const [x0, y0] = from;
  const dx = to[0] - x0;
  const dy = to[1] - y0;
  const steps = Math.min(longest, Math.max(1, Math.round(Math.max(Math.abs(dx), Math.abs(dy)))));
  if (!Number.isFinite(steps)) return;
  for (let i = 0; i <= steps; i++) {
    if (i % (stroke.on + stroke.off) < stroke.on)
      dot(canvas, Math.round(x0 + (dx * i) / steps), Math.round(y0 + (dy * i) / steps));
  }
}

/** Writes text over the dots from a cell on, cut at the edges. */
export function write(canvas: Canvas, column: number, row: number, text: string): void {
  if (row < 0 || row >= canvas.rows) return;
  [...text].forEach((letter, index) => {
    const at = column + index;
    if (at >= 0 && at < canvas.columns) canvas.text[row * canvas.columns + at] = letter;
  });
}

/** The canvas as lines of text. */
export function canvasLines({ columns, rows, dots, text }: Canvas): readonly string[] {
  return Array.from({ length: rows }, (_, row) =>
    Array.from({ length: columns }, (__, column) => {
      const at = row * columns + column;
      const cell = dots[at] ?? 0;
      return text[at] ?? (cell === 0 ? " " : String.fromCharCode(0x2800 + cell));
    }).join(""),
  );
}
