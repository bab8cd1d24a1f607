import { type PaperSize, papers } from "../paper/pdfDocument.ts";
import { type Box, boxOf, type Drawing, type Shape } from "./flat.ts";
import { cautions, readingOf } from "./lettering.ts";
import { areApart, reaches } from "./overlap.ts";

/** Points in a millimetre: 72 in an inch of 25.4 mm, by the definition of PDF's user space (ISO 32000-1, 8.3.2.3). */
export const POINTS = 72 / 25.4;
/** White around each page, below it room for its bars and name; mm. */
export const margin = 10;
export const strip = 24;
/** What lies under the neighbouring page or over it: both end at the line through their crosses, half way across. */
export const overlapping = 12;
/** White around a drawing, mm. */
const around = 6;

/** A page's width and height, mm. */
interface Page {
  readonly wide: number;
  readonly high: number;
}

/** Shapes over pages, row by row from the left upper one. */
export interface Tiles {
  readonly shapes: readonly Shape[];
  /** What it is, beside the drawing's title. */
  readonly part: "drawing" | "notes";
  readonly page: Page;
  /** What of the drawing a page shows, overlaps included. */
  readonly wide: number;
  readonly high: number;
  readonly columns: number;
  readonly rows: number;
  /** The left upper corner of the first page, on the drawing. */
  readonly left: number;
  readonly top: number;
}

/** How many pages side by side, or one below the other, show so much when each adds a step to the first. */
function pagesFor(whole: number, first: number): number {
  return whole <= first ? 1 : 1 + Math.ceil((whole - first) / (first - overlapping));
}

/** Where neighbouring pages meet, from the first page's edge. */
function joins(count: number, first: number): readonly number[] {
  return Array.from({ length: count - 1 }, (_, i) => first - overlapping / 2 + i * (first - overlapping));
}

/** Where a shape lies across a page or down it, and how much is lost by a join there. */
interface Span {
  readonly from: number;
  readonly to: number;
  readonly worth: number;
}

/** How far the first page is moved out so that the fewest words and holes lie on a join; `spans` are from its edge, unmoved. */
function bestShift(spans: readonly Span[], count: number, first: number, whole: number): number {
  if (count === 1) return 0;
  const slack = count * first - (count - 1) * overlapping - whole;
  const cut = (shift: number) =>
    spans
      .filter(({ from, to }) => joins(count, first).some((join) => from + shift - 1 < join && to + shift + 1 > join))
      .reduce((sum, { worth }) => sum + worth, 0);
  let best = { shift: 0, cuts: cut(0) };
  for (let shift = 2; shift <= slack && best.cuts > 0; shift += 2) {
    const cuts = cut(shift);
    if (cuts < best.cuts) best = { shift, cuts };
  }
  return best.shift;
}

function tilesOn(shapes: readonly Shape[], page: Page, part: Tiles["part"]): Tiles {
  const bare = boxOf(shapes);
  const box: Box = {
    left: bare.left - around,
    right: bare.right + around,
    low: bare.low - around,
    high: bare.high + around,
  };
  const room = { wide: page.wide - 2 * margin, high: page.high - 2 * margin - strip };
  const [across, down] = [box.right - box.left, box.high - box.low];
  const [columns, rows] = [pagesFor(across, room.wide), pagesFor(down, room.high)];
  const whole = shapes
    .filter(({ is }) => is !== "line")
    .map((each) => ({ ...boxOf([each]), worth: each.is === "words" ? 1 : 5 }));
  const xs = whole.map(({ left, right, worth }) => ({ from: left - box.left, to: right - box.left, worth }));
  const ys = whole.map(({ low, high, worth }) => ({ from: box.high - high, to: box.high - low, worth }));
  return {
    shapes,
    part,
    page,
    ...room,
    columns,
    rows,
    left: box.left - bestShift(xs, columns, room.wide, across),
    top: box.high + bestShift(ys, rows, room.high, down),
  };
}

/** Widths of the column that what is to be read stands in, the first that finds room is taken. */
const columns = [120, 170, 105, 90, 80, 70, 56] as const;
/** What each page has below it need not be read beside its drawing as well. */
const onPage = cautions.slice(-1);
/** How closely places for it are tried, and the room around it, mm. */
const grid = 4;
const clear = 3;

/** What is to be read with a drawing, put where its pages are blank and no join goes through it; null where there is no room. */
function readingAmong(drawing: Drawing, tiles: Tiles): readonly Shape[] | null {
  const { left, top, wide, high } = tiles;
  const taken = tiles.shapes.map((each) => ({ each, box: boxOf([each]) }));
  const [across, down] = [joins(tiles.columns, wide), joins(tiles.rows, high)];
  const area = {
    wide: tiles.columns * wide - (tiles.columns - 1) * overlapping,
    high: tiles.rows * high - (tiles.rows - 1) * overlapping,
  };
  for (const column of columns) {
    const reading = readingOf(drawing, [0, 0], column, onPage);
    const size = boxOf(reading);
    const tall = -size.low;
    for (let y = clear; y + tall + clear <= area.high; y += grid)
      for (let x = area.wide - column - clear; x >= clear; x -= grid) {
        if (across.some((join) => join > x - clear && join < x + column + clear)) continue;
        if (down.some((join) => join > y - clear && join < y + tall + clear)) continue;
        const box: Box = {
          left: left + x - clear,
          right: left + x + column + clear,
          high: top - y + clear,
          low: top - y - tall - clear,
        };
        if (taken.every(({ each, box: other }) => areApart(box, other) || !reaches(each, box)))
          return readingOf(drawing, [left + x, top - y], column, onPage);
      }
  }
  return null;
}

const pagesOf = (all: readonly Tiles[]) => all.reduce((sum, { columns, rows }) => sum + columns * rows, 0);

/**
 * The pages of a drawing, which stand or lie, as few as can be: with what is to be read with it where they are blank, or on a
 * last page of its own.
 */
export function pagesFrom(drawing: Drawing, size: PaperSize): readonly Tiles[] {
  const [short, long] = [papers[size][0] / POINTS, papers[size][1] / POINTS];
  const standing: Page = { wide: short, high: long };
  const ways = [standing, { wide: long, high: short }].map((page): readonly Tiles[] => {
    const tiles = tilesOn(drawing.shapes, page, "drawing");
    const reading = readingAmong(drawing, tiles);
    return reading === null
      ? [tiles, tilesOn(readingOf(drawing, [0, 0], columns[0], onPage), standing, "notes")]
      : [{ ...tiles, shapes: [...tiles.shapes, ...reading] }];
  });
  const [first = [], second = first] = ways;
  const [fewer] = [first, second].sort(
    (a, b) => pagesOf(a) - pagesOf(b) || pagesOf(a.slice(0, 1)) - pagesOf(b.slice(0, 1)),
  );
  return fewer ?? [];
}
