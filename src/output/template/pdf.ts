import {
  clip,
  closePath,
  endPath,
  lineTo,
  moveTo,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rgb,
} from "@cantoo/pdf-lib";
import { drawable, type Face, newPdf, type PaperSize, papers } from "../paper/pdfDocument.ts";
import {
  type At,
  type Box,
  boxOf,
  type Drawing,
  lettered,
  letteredBeside,
  line,
  type Shape,
  scaleBars,
  words,
} from "./flat.ts";

/** Points in a millimetre: 72 in an inch of 25.4 mm, by the definition of PDF's user space (ISO 32000-1, 8.3.2.3). */
const POINTS = 72 / 25.4;
/** White around each page, below it room for its bars and name, and what neighbouring pages both show; mm. */
const margin = 12;
const strip = 24;
const overlap = 12;
/** White around a drawing, mm. */
const around = 8;

const black = rgb(0, 0, 0);
const looks = {
  cut: { thickness: 0.35 * POINTS, dashArray: [] },
  mark: { thickness: 0.2 * POINTS, dashArray: [4 * POINTS, 1.5 * POINTS] },
} as const;

/** Draws shapes on a page, their places in mm moved to where `to` puts them, points. */
function draw(page: PDFPage, shapes: readonly Shape[], plain: Face, to: (at: At) => { x: number; y: number }): void {
  for (const shape of shapes) {
    if (shape.is === "words") {
      const text = drawable(shape.text, plain);
      page.drawText(text, { ...to(shape.at), size: shape.high * POINTS, font: plain.font, color: black });
    } else if (shape.is === "line") {
      const { thickness, dashArray } = looks[shape.layer];
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

/** How many pages side by side, or one below the other, show so much when each adds a step to the first. */
function pagesFor(whole: number, first: number): number {
  return whole <= first ? 1 : 1 + Math.ceil((whole - first) / (first - overlap));
}

interface Tiles {
  readonly page: Page;
  /** What of the drawing a page shows. */
  readonly wide: number;
  readonly high: number;
  readonly columns: number;
  readonly rows: number;
  readonly box: Box;
}

/** A page's width and height, mm. */
interface Page {
  readonly wide: number;
  readonly high: number;
}

/** On pages that stand or lie, whichever takes fewer. */
function tilesOf(shapes: readonly Shape[], size: PaperSize): Tiles {
  const [short, long] = [papers[size][0] / POINTS, papers[size][1] / POINTS];
  const standing = tilesOn(shapes, { wide: short, high: long });
  const lying = tilesOn(shapes, { wide: long, high: short });
  return pagesOf(lying) < pagesOf(standing) ? lying : standing;
}

/** A drawing with what is to be read with it, on one page that stands or lies; null where it takes more. */
function onePage(drawing: Drawing, size: PaperSize): readonly Shape[] | null {
  const [short, long] = [papers[size][0] / POINTS, papers[size][1] / POINTS];
  const rooms = [short, long].map((wide) => wide - 2 * margin - 2 * around);
  const ways = [lettered(drawing), ...rooms.map((room) => letteredBeside(drawing, room))];
  return ways.find((shapes) => shapes !== null && pagesOf(tilesOf(shapes, size)) === 1) ?? null;
}

function tilesOn(shapes: readonly Shape[], page: Page): Tiles {
  const bare = boxOf(shapes);
  const box = {
    left: bare.left - around,
    right: bare.right + around,
    low: bare.low - around,
    high: bare.high + around,
  };
  const room = { wide: page.wide - 2 * margin, high: page.high - 2 * margin - strip };
  return {
    ...room,
    page,
    columns: pagesFor(box.right - box.left, room.wide),
    rows: pagesFor(box.high - box.low, room.high),
    box,
  };
}

function pagesOf({ columns, rows }: Tiles): number {
  return columns * rows;
}

/** A cross in a ring, on which neighbouring pages are laid over each other. */
function register([x, y]: At): readonly Shape[] {
  return [
    line("cut", [x - 4, y], [x + 4, y]),
    line("cut", [x, y - 4], [x, y + 4]),
    { is: "circle", layer: "cut", at: [x, y], radius: 2 },
  ];
}

function tile(
  page: PDFPage,
  shapes: readonly Shape[],
  tiles: Tiles,
  at: { column: number; row: number },
  plain: Face,
  name: string,
): void {
  const { wide, high, box, columns, rows } = tiles;
  const step = { x: wide - overlap, y: high - overlap };
  // The page's window on the drawing: its left lower corner, mm of the drawing.
  const [left, low] = [box.left + at.column * step.x, box.high - high - at.row * step.y];
  const to = ([x, y]: At) => ({ x: (margin + x - left) * POINTS, y: (margin + strip + y - low) * POINTS });
  const corner = (x: number, y: number) => to([left + x, low + y]);
  const [a, b, c, d] = [corner(0, 0), corner(wide, 0), corner(wide, high), corner(0, high)];
  page.pushOperators(
    pushGraphicsState(),
    moveTo(a.x, a.y),
    lineTo(b.x, b.y),
    lineTo(c.x, c.y),
    lineTo(d.x, d.y),
    closePath(),
    clip(),
    endPath(),
  );
  const half = overlap / 2;
  const marks = [
    [half, half],
    [wide - half, half],
    [half, high - half],
    [wide - half, high - half],
  ].flatMap(([x = 0, y = 0]) => register([left + x, low + y]));
  draw(page, [...shapes, ...(pagesOf(tiles) > 1 ? marks : [])], plain, to);
  page.pushOperators(popGraphicsState());
  const place =
    pagesOf(tiles) === 1
      ? "one page"
      : `row ${at.row + 1} of ${rows}, column ${at.column + 1} of ${columns}: lay the ringed crosses over each other`;
  const foot = ([x, y]: At) => ({ x: x * POINTS, y: y * POINTS });
  const below = [
    ...scaleBars([margin + 6, margin + 17]),
    words([margin, margin + 3], `${name}: ${place}`, 3),
    ...[
      "FULL SIZE: print at 100 %,",
      "do not scale to fit. Measure the bars",
      "and one size before cutting.",
      "Geometry only, not strength.",
    ].map((text, i) => words([margin + 135, margin + 20 - 4 * i], text, 2.6)),
  ];
  draw(page, below, plain, foot);
}

/**
 * Drawings as a PDF at full size, over as many pages as each needs, row by row from the top left. Neighbouring pages show
 * the same 12 mm and have the same ringed crosses on them. The same drawings are the same bytes.
 */
export async function drawingsPdf(title: string, drawings: readonly Drawing[], size: PaperSize): Promise<Uint8Array> {
  const { pdf, plain } = await newPdf(title);
  for (const drawing of drawings) {
    const whole = onePage(drawing, size);
    const shapes = whole ?? drawing.shapes;
    const tiles = tilesOf(shapes, size);
    for (let row = 0; row < tiles.rows; row += 1)
      for (let column = 0; column < tiles.columns; column += 1) {
        const page = pdf.addPage([tiles.page.wide * POINTS, tiles.page.high * POINTS]);
        tile(page, shapes, tiles, { column, row }, plain, drawing.title);
      }
    // What is to be read with a drawing of several pages has one of its own.
    if (whole === null) {
      const notes = lettered({ ...drawing, shapes: [] });
      const one = tilesOf(notes, size);
      const page = pdf.addPage([one.page.wide * POINTS, one.page.high * POINTS]);
      tile(page, notes, one, { column: 0, row: 0 }, plain, `${drawing.title}, notes`);
    }
  }
  return pdf.save({ useObjectStreams: false });
}
