import {
  clip,
  closePath,
  endPath,
  lineTo,
  moveTo,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  radians,
  rgb,
} from "@cantoo/pdf-lib";
import { drawable, type Face, newPdf, type PaperSize } from "../paper/pdfDocument.ts";
import { wrap } from "../table.ts";
import { type At, type Drawing, line, type Shape, widest, words } from "./flat.ts";
import { scaleBars } from "./lettering.ts";
import { margin, overlapping, POINTS, pagesFrom, strip, type Tiles } from "./tiles.ts";

const black = rgb(0, 0, 0);
const looks = {
  cut: { thickness: 0.35 * POINTS, dashArray: [] },
  thin: { thickness: 0.15 * POINTS, dashArray: [] },
  mark: { thickness: 0.2 * POINTS, dashArray: [4 * POINTS, 1.5 * POINTS] },
} as const;

/** Draws shapes on a page, their places in mm moved to where `to` puts them, points. */
function draw(page: PDFPage, shapes: readonly Shape[], plain: Face, to: (at: At) => { x: number; y: number }): void {
  for (const shape of shapes) {
    if (shape.is === "words") {
      const text = drawable(shape.text, plain);
      const turn = shape.turn === undefined ? {} : { rotate: radians(shape.turn) };
      page.drawText(text, { ...to(shape.at), size: shape.high * POINTS, font: plain.font, color: black, ...turn });
    } else if (shape.is === "line") {
      const { thickness, dashArray } = shape.thin ? looks.thin : looks[shape.layer];
      page.drawLine({ start: to(shape.from), end: to(shape.to), thickness, dashArray: [...dashArray], color: black });
    } else if (shape.is === "circle") {
      const { thickness } = looks[shape.layer];
      const size = shape.radius * POINTS;
      page.drawCircle({ ...to(shape.at), size, borderWidth: thickness, borderColor: black });
    } else drawArc(page, shape, to);
  }
}

/** An arc as SVG's path, whose y goes down: it is put where the page's own y is nothing. */
function drawArc(
  page: PDFPage,
  { at, radius, from, to: end, layer }: Extract<Shape, { is: "arc" }>,
  to: (at: At) => { x: number; y: number },
): void {
  const spot = (angle: number) => {
    const { x, y } = to([at[0] + radius * Math.cos(angle), at[1] + radius * Math.sin(angle)]);
    return `${x} ${-y}`;
  };
  const size = radius * POINTS;
  const large = end - from > Math.PI ? 1 : 0;
  const path = `M ${spot(from)} A ${size} ${size} 0 ${large} 0 ${spot(end)}`;
  page.drawSvgPath(path, { x: 0, y: 0, borderColor: black, borderWidth: looks[layer].thickness });
}

/** A cross in a ring, on which neighbouring pages are laid over each other. */
function register([x, y]: At): readonly Shape[] {
  return [
    line("cut", [x - 4, y], [x + 4, y]),
    line("cut", [x, y - 4], [x, y + 4]),
    { is: "circle", layer: "cut", at: [x, y], radius: 2 },
  ];
}

const half = overlapping / 2;

/** What a page shows of the shapes: it ends at the lines through its crosses where others go on. */
interface Window {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** The lines at which a page goes on on others, and whose they are, in the white beyond them. */
function joinsOf(
  { left, right, low, high }: Window,
  tiles: Tiles,
  at: { column: number; row: number },
): readonly Shape[] {
  const turned = (x: number, y: number, text: string): Shape => ({
    is: "words",
    at: [x, y],
    high: 3,
    text,
    turn: Math.PI / 2,
  });
  const clear = half + 6;
  const shapes: Shape[] = [];
  const said = (name: string) => `${name} goes on from this line: overlap, nothing is drawn here`;
  if (at.row > 0)
    shapes.push(line("mark", [left, high], [right, high]), words([left + clear, high + 1.5], said(`row ${at.row}`), 3));
  if (at.row < tiles.rows - 1)
    shapes.push(line("mark", [left, low], [right, low]), words([left + clear, low - 4], said(`row ${at.row + 2}`), 3));
  if (at.column > 0)
    shapes.push(line("mark", [left, low], [left, high]), turned(left - 1.5, low + clear, said(`column ${at.column}`)));
  if (at.column < tiles.columns - 1)
    shapes.push(
      line("mark", [right, low], [right, high]),
      turned(right + 4, low + clear, said(`column ${at.column + 2}`)),
    );
  return shapes;
}

/** Words in one line of so many letters: what is too long ends in dots. */
function oneLine(text: string, letters: number): string {
  return text.length <= letters ? text : `${wrap(text, letters - 4)[0] ?? ""} ...`;
}

/** Below each page: the bars, which car and drawing, and which part of it. */
function footOf(
  { title, car }: Drawing,
  tiles: Tiles,
  at: { column: number; row: number },
  notesLast: boolean,
): readonly Shape[] {
  const { rows, columns, part, page } = tiles;
  const room = Math.floor((page.wide - 2 * margin) / (widest * 3));
  const place =
    rows * columns === 1
      ? "one page"
      : `row ${at.row + 1} of ${rows}, column ${at.column + 1} of ${columns}: lay the ringed crosses over each other`;
  const which = part === "notes" ? "what to read before cutting" : place;
  return [
    ...scaleBars([margin + 6, margin + 18]),
    words([margin, margin + 3.5], oneLine(`${title}: ${which}`, room), 3),
    words([margin, margin - 1], oneLine(car, room), 3),
    ...[
      ...(notesLast && part === "drawing" ? ["READ FIRST: its page of notes."] : []),
      "FULL SIZE: print at 100 %,",
      "do not scale to fit. Measure the bars",
      "and one size before cutting.",
      "Geometry only, not strength.",
    ].map((text, i) => words([margin + 135, margin + 21.5 - 3.6 * i], text, 2.6)),
  ];
}

function tile(
  page: PDFPage,
  tiles: Tiles,
  at: { column: number; row: number },
  plain: Face,
  foot: readonly Shape[],
): void {
  const { shapes, wide, high, columns, rows } = tiles;
  // The page's left lower corner, mm of the drawing.
  const left = tiles.left + at.column * (wide - overlapping);
  const low = tiles.top - high - at.row * (high - overlapping);
  const to = ([x, y]: At) => ({ x: (margin + x - left) * POINTS, y: (margin + strip + y - low) * POINTS });
  const window: Window = {
    left: left + (at.column > 0 ? half : 0),
    right: left + wide - (at.column < columns - 1 ? half : 0),
    low: low + (at.row < rows - 1 ? half : 0),
    high: low + high - (at.row > 0 ? half : 0),
  };
  const [a, b] = [to([window.left, window.low]), to([window.right, window.high])];
  page.pushOperators(
    pushGraphicsState(),
    moveTo(a.x, a.y),
    lineTo(b.x, a.y),
    lineTo(b.x, b.y),
    lineTo(a.x, b.y),
    closePath(),
    clip(),
    endPath(),
  );
  draw(page, shapes, plain, to);
  page.pushOperators(popGraphicsState());
  if (rows * columns > 1) {
    const [toLeft, toRight] = [at.column > 0, at.column < columns - 1];
    const [up, down] = [at.row > 0, at.row < rows - 1];
    const corners = [
      { x: half, y: half, meets: toLeft || down },
      { x: wide - half, y: half, meets: toRight || down },
      { x: half, y: high - half, meets: toLeft || up },
      { x: wide - half, y: high - half, meets: toRight || up },
    ];
    const crosses = corners.flatMap(({ x, y, meets }) => (meets ? register([left + x, low + y]) : []));
    draw(page, [...crosses, ...joinsOf(window, tiles, at)], plain, to);
  }
  draw(page, foot, plain, ([x, y]) => ({ x: x * POINTS, y: y * POINTS }));
}

/**
 * Drawings as a PDF at full size, over as many pages as each needs, row by row from the top left. Neighbouring pages end at
 * the same line and have the same ringed crosses on it. The same drawings are the same bytes.
 */
export async function drawingsPdf(title: string, drawings: readonly Drawing[], size: PaperSize): Promise<Uint8Array> {
  const { pdf, plain } = await newPdf(title);
  for (const drawing of drawings) {
    const parts = pagesFrom(drawing, size);
    for (const tiles of parts)
      for (let row = 0; row < tiles.rows; row += 1)
        for (let column = 0; column < tiles.columns; column += 1) {
          const page = pdf.addPage([tiles.page.wide * POINTS, tiles.page.high * POINTS]);
          tile(page, tiles, { column, row }, plain, footOf(drawing, tiles, { column, row }, parts.length > 1));
        }
  }
  return pdf.save({ useObjectStreams: false });
}
