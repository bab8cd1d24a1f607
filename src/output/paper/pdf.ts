import { type PDFDocument, type PDFPage, rgb, degrees as turn } from "@cantoo/pdf-lib";
import { pieces } from "../../vehicle/units/pieces.ts";
import type { Block, Cell, Paper, PaperTable } from "./paper.ts";
import { drawable, type Face, newPdf, type PaperSize, papers } from "./pdfDocument.ts";
import { type Curve, type Plot, plotShapes } from "./plotShapes.ts";

const MARGIN = 40;
const SIZE = 9.5;
const LEADING = 1.32;
const PAD = 3;
const TO_WRITE_IN = 21;

const black = rgb(0, 0, 0);
const grey = rgb(0.55, 0.55, 0.55);
const light = rgb(0.86, 0.86, 0.86);
const shade = rgb(0.93, 0.93, 0.93);

/** Where the next thing goes; pages are added as they are needed. */
interface Sheet {
  readonly pdf: PDFDocument;
  readonly plain: Face;
  readonly bold: Face;
  readonly wide: number;
  readonly high: number;
  page: PDFPage;
  /** From the page's foot. */
  y: number;
}

/** Words broken into lines no wider than so many points; a word that is wider alone is broken within. */
function broken(text: string, { font }: Face, size: number, width: number): readonly string[] {
  const lines: string[] = [];
  let line = "";
  const fits = (words: string) => font.widthOfTextAtSize(words, size) <= width;
  for (const word of pieces(text)) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (fits(longer)) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = "";
    for (const each of word) {
      if (line !== "" && !fits(line + each)) {
        lines.push(line);
        line = "";
      }
      line += each;
    }
  }
  return [...lines, line];
}

function nextPage(sheet: Sheet): void {
  sheet.page = sheet.pdf.addPage([sheet.wide, sheet.high]);
  sheet.y = sheet.high - MARGIN;
}

/** Begins a page where there is less room than that. */
function room(sheet: Sheet, points: number): void {
  if (sheet.y - points < MARGIN) nextPage(sheet);
}

/** A paragraph from the left margin on, and where it came to stand. */
function paragraph(sheet: Sheet, text: string, face: Face, size: number, indent = 0): void {
  const width = sheet.wide - 2 * MARGIN - indent;
  for (const line of broken(drawable(text, face), face, size, width)) {
    room(sheet, size * LEADING);
    sheet.y -= size * LEADING;
    sheet.page.drawText(line, { x: MARGIN + indent, y: sheet.y, size, font: face.font, color: black });
  }
  sheet.y -= PAD;
}

/** Widths of a table's columns: as wide as they need, the widest made narrower until all fit. */
function widthsOf(sheet: Sheet, { heads, rows }: PaperTable): readonly number[] {
  const of = (text: string, { font }: Face) => font.widthOfTextAtSize(text, SIZE) + 2 * PAD + 1;
  const widths = heads.map((head, i) => {
    const cells = rows.map((row) => {
      const { [i]: cell = "" } = row;
      return cell === null ? 60 : of(drawable(cell, sheet.plain), sheet.plain);
    });
    return Math.max(of(drawable(head, sheet.bold), sheet.bold), ...cells);
  });
  const most = sheet.wide - 2 * MARGIN;
  for (let spare = widths.reduce((sum, each) => sum + each, 0) - most; spare > 0; spare -= 1) {
    const widest = widths.indexOf(Math.max(...widths));
    widths[widest] = (widths[widest] ?? 0) - 1;
  }
  return widths;
}

/** How high a row is, points; one to write in is never lower than a pencil needs. */
function rowHigh(cells: readonly Cell[], widths: readonly number[], face: Face): number {
  const counts = cells.map((cell, i) =>
    cell === null ? 1 : broken(drawable(cell, face), face, SIZE, (widths[i] ?? 0) - 2 * PAD).length,
  );
  const high = Math.max(...counts) * SIZE * LEADING + 2 * PAD;
  return cells.includes(null) ? Math.max(high, TO_WRITE_IN) : high;
}

function tableRow(
  sheet: Sheet,
  cells: readonly Cell[],
  widths: readonly number[],
  words: readonly number[],
  face: Face,
): number {
  const lines = cells.map((cell, i) =>
    cell === null ? [""] : broken(drawable(cell, face), face, SIZE, (widths[i] ?? 0) - 2 * PAD),
  );
  const high = rowHigh(cells, widths, face);
  const top = sheet.y;
  let x = MARGIN;
  for (const [i, own] of lines.entries()) {
    const width = widths[i] ?? 0;
    const color = face === sheet.bold ? { color: shade } : {};
    sheet.page.drawRectangle({ x, y: top - high, width, height: high, borderColor: grey, borderWidth: 0.5, ...color });
    for (const [n, line] of own.entries()) {
      const over = words.includes(i) ? PAD : width - PAD - face.font.widthOfTextAtSize(line, SIZE);
      const y = top - PAD - (n + 1) * SIZE * LEADING + SIZE * 0.3;
      sheet.page.drawText(line, { x: x + over, y, size: SIZE, font: face.font, color: black });
    }
    x += width;
  }
  return high;
}

/** A table; its heads stand again at the head of each page that it goes on to. */
function drawTable(sheet: Sheet, table: PaperTable): void {
  const { heads, rows, words } = table;
  const widths = widthsOf(sheet, table);
  const head = () => {
    sheet.y -= tableRow(sheet, heads, widths, words, sheet.bold);
  };
  room(sheet, rowHigh(heads, widths, sheet.bold) + rowHigh(rows[0] ?? heads, widths, sheet.plain));
  head();
  for (const row of rows) {
    if (sheet.y - rowHigh(row, widths, sheet.plain) < MARGIN) {
      nextPage(sheet);
      head();
    }
    sheet.y -= tableRow(sheet, row, widths, words, sheet.plain);
  }
  sheet.y -= 2 * PAD;
}

const looks: Readonly<Record<Curve["stroke"], { readonly color: typeof black; readonly dash: readonly number[] }>> = {
  solid: { color: black, dash: [] },
  dashed: { color: black, dash: [5, 3] },
  faint: { color: grey, dash: [] },
  "faint dashed": { color: grey, dash: [5, 3] },
};

/** How high a plot is that is as wide as the page, with its line of words, points. */
function plotHigh(sheet: Sheet, plot: Plot): number {
  const { wide, high } = plotShapes(plot);
  return (high * (sheet.wide - 2 * MARGIN)) / wide + SIZE * LEADING;
}

function drawPlot(sheet: Sheet, plot: Plot): void {
  const { wide, high, lines, paths, words } = plotShapes(plot);
  const scale = (sheet.wide - 2 * MARGIN) / wide;
  room(sheet, plotHigh(sheet, plot));
  const top = sheet.y;
  const place = ([x, y]: readonly [string, string]) => ({ x: MARGIN + Number(x) * scale, y: top - Number(y) * scale });
  for (const { from, to, look } of lines)
    sheet.page.drawLine({ start: place(from), end: place(to), thickness: 0.6, color: look === "axis" ? black : light });
  for (const { d, look } of paths) {
    const { color, dash } = looks[look];
    sheet.page.drawSvgPath(d, {
      x: MARGIN,
      y: top,
      scale,
      borderColor: color,
      borderWidth: 1.6,
      borderDashArray: [...dash],
    });
  }
  const size = 11 * scale;
  for (const { at, anchor, text, upward } of words) {
    const said = drawable(text, sheet.plain);
    const width = sheet.plain.font.widthOfTextAtSize(said, size);
    const back = anchor === "start" ? 0 : anchor === "middle" ? width / 2 : width;
    const { x, y } = place(at);
    const own = upward ? { x, y: y - back, rotate: turn(90) } : { x: x - back, y };
    sheet.page.drawText(said, { ...own, size, font: sheet.plain.font, color: black });
  }
  sheet.y -= high * scale + PAD;
}

function drawBlock(sheet: Sheet, block: Block): void {
  switch (block.kind) {
    case "words":
      paragraph(sheet, block.text, sheet.plain, SIZE);
      break;
    case "mind":
      paragraph(sheet, `Mind: ${block.text}`, sheet.bold, SIZE, 10);
      break;
    case "list":
      for (const item of block.items) paragraph(sheet, `- ${item}`, sheet.plain, SIZE, 6);
      break;
    case "table":
      drawTable(sheet, block);
      break;
    case "drawing":
      drawPlot(sheet, block.plot);
      paragraph(sheet, block.text, sheet.plain, SIZE - 1);
  }
}

/** A heading, never left alone at a page's foot: what it heads begins below it. */
function heading(sheet: Sheet, text: string, first: Block | undefined): void {
  room(sheet, 50 + (first?.kind === "drawing" ? plotHigh(sheet, first.plot) : 40));
  sheet.y -= 8;
  paragraph(sheet, text, sheet.bold, 12);
  const y = sheet.y + 1;
  sheet.page.drawLine({ start: { x: MARGIN, y }, end: { x: sheet.wide - MARGIN, y }, thickness: 1, color: black });
  sheet.y -= PAD;
}

/** The title and the page's number at the foot of each page, so that loose sheets are put together again. */
function numbered({ pdf, plain, wide }: Sheet, title: string): void {
  const pages = pdf.getPages();
  for (const [i, page] of pages.entries()) {
    const [line = ""] = broken(drawable(title, plain), plain, 8, wide - 2 * MARGIN - 60);
    const count = `${i + 1} of ${pages.length}`;
    const x = wide - MARGIN - plain.font.widthOfTextAtSize(count, 8);
    page.drawText(line, { x: MARGIN, y: MARGIN / 2, size: 8, font: plain.font, color: black });
    page.drawText(count, { x, y: MARGIN / 2, size: 8, font: plain.font, color: black });
  }
}

/**
 * A paper as a PDF whose fonts are inside. It carries no date and no random names, so that the same paper is the same bytes;
 * a character that the fonts have not is written out, never left away.
 */
export async function paperPdf({ title, under, parts, cautions }: Paper, size: PaperSize): Promise<Uint8Array> {
  const { pdf, plain, bold } = await newPdf(title);
  const [wide, high] = papers[size];
  const sheet: Sheet = { pdf, plain, bold, wide, high, page: pdf.addPage([wide, high]), y: high - MARGIN };
  paragraph(sheet, title, bold, 16);
  for (const line of under) paragraph(sheet, line, plain, SIZE);
  for (const { heading: words, blocks } of parts) {
    heading(sheet, words, blocks[0]);
    for (const block of blocks) drawBlock(sheet, block);
  }
  sheet.y -= PAD;
  paragraph(sheet, cautions.join(" "), bold, SIZE);
  numbered(sheet, title);
  return pdf.save({ useObjectStreams: false });
}
