import { fixed } from "../words.ts";
import { htmlWords } from "./html.ts";

/** One line of a plot. A place that is null breaks it. */
export interface Curve {
  readonly name: string;
  readonly points: readonly (readonly [x: number, y: number | null])[];
  /** How it is told apart on paper without colours. */
  readonly stroke: "solid" | "dashed" | "faint" | "faint dashed";
}

/** A plot in the reader's units. */
export interface Plot {
  readonly across: string;
  readonly up: string;
  readonly curves: readonly Curve[];
}

const WIDE = 640;
const HIGH = 300;
const margin = { left: 58, right: 14, top: 14, bottom: 62 };

const strokes: Readonly<Record<Curve["stroke"], string>> = {
  solid: 'stroke="#000" stroke-width="2"',
  dashed: 'stroke="#000" stroke-width="2" stroke-dasharray="8 5"',
  faint: 'stroke="#888" stroke-width="1.5"',
  "faint dashed": 'stroke="#888" stroke-width="1.5" stroke-dasharray="8 5"',
};

/** A step of 1, 2 or 5 times a power of ten that gives five to ten of them over a span. */
function stepOver(span: number): number {
  const rough = span / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10) * power;
}

/** The ends of an axis, widened where all values are alike, and its marks. */
function axisOf(values: readonly number[]): {
  readonly low: number;
  readonly high: number;
  readonly marks: readonly number[];
} {
  const [least, most] = [Math.min(...values, 0), Math.max(...values, 0)];
  const step = stepOver(most - least || 1);
  const [from, to] = [Math.floor(least / step), Math.max(Math.ceil(most / step), Math.floor(least / step) + 1)];
  return {
    low: from * step,
    high: to * step,
    marks: Array.from({ length: to - from + 1 }, (_, i) => (from + i) * step),
  };
}

/** A number as a mark of an axis has it: "0.05", "20". */
function markWords(value: number): string {
  return String(Number(value.toPrecision(6)) || 0);
}

/** A plot as SVG in the browser's own letters. Numbers are rounded, so that the same plot is the same bytes. */
export function plotSvg({ across, up, curves }: Plot): string {
  const points = curves.flatMap((curve) => curve.points);
  const x = axisOf(points.map(([value]) => value));
  const y = axisOf(points.flatMap(([, value]) => (value === null ? [] : [value])));
  const px = (value: number) =>
    fixed(margin.left + ((value - x.low) / (x.high - x.low)) * (WIDE - margin.left - margin.right), 1);
  const py = (value: number) =>
    fixed(HIGH - margin.bottom - ((value - y.low) / (y.high - y.low)) * (HIGH - margin.top - margin.bottom), 1);
  const line = (x1: string, y1: string, x2: string, y2: string, stroke: string) =>
    `<line x1="${x1}" y1="${y1}" x2="${x2}" y2="${y2}" stroke="${stroke}"/>`;
  const words = (left: string, top: string, anchor: string, text: string) =>
    `<text x="${left}" y="${top}" text-anchor="${anchor}">${htmlWords(text)}</text>`;
  const shade = (value: number) => (value === 0 ? "#000" : "#ddd");
  const path = ({ points: own, stroke }: Curve) => {
    let begun = false;
    const d = own.map(([at, value]) => {
      if (value === null) {
        begun = false;
        return "";
      }
      const piece = `${begun ? "L" : "M"}${px(at)} ${py(value)}`;
      begun = true;
      return piece;
    });
    return `<path d="${d.join("")}" fill="none" ${strokes[stroke]}/>`;
  };
  const legend = curves.map(({ name, stroke }, i) => {
    const left = margin.left + i * 140;
    const top = HIGH - 10;
    return `<path d="M${left} ${top - 4}h26" fill="none" ${strokes[stroke]}/>${words(String(left + 32), String(top), "start", name)}`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDE} ${HIGH}" role="img" aria-label="${htmlWords(`${up} over ${across}`)}" font-size="12" font-family="system-ui, sans-serif">`,
    ...x.marks.map(
      (at) =>
        line(px(at), py(y.low), px(at), py(y.high), shade(at)) +
        words(px(at), fixed(HIGH - margin.bottom + 16, 1), "middle", markWords(at)),
    ),
    ...y.marks.map(
      (at) =>
        line(px(x.low), py(at), px(x.high), py(at), shade(at)) +
        words(fixed(margin.left - 6, 1), fixed(Number(py(at)) + 4, 1), "end", markWords(at)),
    ),
    ...curves.map(path),
    words(fixed((WIDE + margin.left) / 2, 1), fixed(HIGH - margin.bottom + 34, 1), "middle", across),
    `<text transform="translate(14 ${fixed((HIGH - margin.bottom + margin.top) / 2, 1)}) rotate(-90)" text-anchor="middle">${htmlWords(up)}</text>`,
    ...legend,
    "</svg>",
  ].join("\n");
}
