import {
  across,
  type Canvas,
  canvasLines,
  dotted,
  down,
  line,
  newCanvas,
  type Stroke,
  whole,
  write,
} from "./canvas.ts";

/** One end of an axis to the other, with the words that stand at both ends. */
export interface Axis {
  readonly from: number;
  readonly to: number;
  readonly words: readonly [from: string, to: string];
}

/** A curve through places, broken where there is no value. */
export interface Curve {
  readonly points: readonly (readonly [x: number | null, y: number | null])[];
  readonly stroke?: Stroke;
  /** A letter that stands on the curve, for telling it from others without colour. */
  readonly letter?: string;
}

export interface Plot {
  readonly title: string;
  /** To the right, and upward. */
  readonly x: Axis;
  readonly y: Axis;
  readonly curves: readonly Curve[];
  /** Where straight lines cross the plot to compare with, such as nothing. */
  readonly linesAcross?: readonly number[];
  readonly linesUp?: readonly number[];
}

/** How far along a curve its letter stands, as a share of its points. */
const letterAt = 0.85;

/** A plot in lines: its title, the curves with the ends of the upward axis beside them, and the ends of the other below. */
export function plotLines(plot: Plot, columns: number, rows: number): readonly string[] {
  const { x, y } = plot;
  const labelColumns = Math.max(...y.words.map((word) => word.length)) + 1;
  const canvas = newCanvas(columns - labelColumns, rows - 2);
  const place = placer(canvas, x, y);
  for (const at of plot.linesAcross ?? []) line(canvas, place(x.from, at), place(x.to, at), dotted);
  for (const at of plot.linesUp ?? []) line(canvas, place(at, y.from), place(at, y.to), dotted);
  for (const curve of plot.curves) draw(canvas, curve, place);
  const drawn = canvasLines(canvas).map((text, row) => {
    const word = row === 0 ? y.words[1] : row === canvas.rows - 1 ? y.words[0] : "";
    return `${word.padStart(labelColumns - 1)}|${text}`;
  });
  const [from, to] = x.words;
  const below = `${from.padEnd(Math.max(from.length + 1, canvas.columns - to.length))}${to}`;
  return [
    plot.title.slice(0, columns).padEnd(columns),
    ...drawn,
    `${" ".repeat(labelColumns)}${below}`.slice(0, columns).padEnd(columns),
  ];
}

function placer({ columns, rows }: Canvas, x: Axis, y: Axis) {
  const width = columns * across - 1;
  const height = rows * down - 1;
  const share = (at: number, { from, to }: Axis) => (to === from ? 0.5 : (at - from) / (to - from));
  return (atX: number, atY: number): readonly [number, number] => [share(atX, x) * width, (1 - share(atY, y)) * height];
}

function draw(canvas: Canvas, { points, stroke = whole, letter }: Curve, place: ReturnType<typeof placer>): void {
  points.forEach(([x, y], index) => {
    const [nextX = null, nextY = null] = points[index + 1] ?? [];
    if (x !== null && y !== null && nextX !== null && nextY !== null)
      line(canvas, place(x, y), place(nextX, nextY), stroke);
  });
  if (letter === undefined) return;
  const known = points.filter(([x, y]) => x !== null && y !== null);
  const [x = null, y = null] = known[Math.floor(letterAt * (known.length - 1))] ?? [];
  if (x === null || y === null) return;
  const [column, row] = place(x, y);
  write(canvas, Math.round(column / across), Math.floor(row / down), letter);
}

/** An axis that holds all these values, and `least` at least either way from the middle of its own ends. */
export function axisOver(values: readonly (number | null)[], least: number, say: (value: number) => string): Axis {
  const known = values.filter((value) => value !== null);
  const from = Math.min(-least, ...known);
  const to = Math.max(least, ...known);
  return { from, to, words: [say(from), say(to)] };
}
