import { htmlWords } from "./escape.ts";
import { type Curve, type Plot, plotShapes, type ShapeWords } from "./plotShapes.ts";

const strokes: Readonly<Record<Curve["stroke"], string>> = {
  solid: 'stroke="#000" stroke-width="2"',
  dashed: 'stroke="#000" stroke-width="2" stroke-dasharray="8 5"',
  faint: 'stroke="#888" stroke-width="1.5"',
  "faint dashed": 'stroke="#888" stroke-width="1.5" stroke-dasharray="8 5"',
};

function wordsSvg({ at: [x, y], anchor, text, upward }: ShapeWords): string {
  const place = upward ? `transform="translate(${x} ${y}) rotate(-90)"` : `x="${x}" y="${y}"`;
  return `<text ${place} text-anchor="${anchor}">${htmlWords(text)}</text>`;
}

/** A plot as SVG, in the browser's own letters. */
export function plotSvg(plot: Plot): string {
  const { wide, high, lines, paths, words } = plotShapes(plot);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${wide} ${high}" role="img" aria-label="${htmlWords(`${plot.up} over ${plot.across}`)}" font-size="12" font-family="system-ui, sans-serif">`,
    ...lines.map(
      ({ from, to, look }) =>
        `<line x1="${from[0]}" y1="${from[1]}" x2="${to[0]}" y2="${to[1]}" stroke="${look === "axis" ? "#000" : "#ddd"}"/>`,
    ),
    ...paths.map(({ d, look }) => `<path d="${d}" fill="none" ${strokes[look]}/>`),
    ...words.map(wordsSvg),
    "</svg>",
  ].join("\n");
}
