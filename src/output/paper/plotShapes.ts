import { fixed } from "../words.ts";

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

/** A straight line of a drawing. */
export interface ShapeLine {
  readonly from: readonly [x: string, y: string];
  readonly to: readonly [x: string, y: string];
  readonly look: "axis" | "grid";
}

/** A curve of a drawing, as the path data of SVG. */
export interface ShapePath {
  readonly d: string;
  readonly look: Curve["stroke"];
}

/** Words of a drawing, at the foot of their letters. */
export interface ShapeWords {
  readonly at: readonly [x: string, y: string];
  readonly anchor: "start" | "middle" | "end";
  readonly text: string;
  /** True for words that are read from below to above. */
  readonly upward: boolean;
}

/** A drawing, x to the right and y down, rounded to a tenth, so that the same drawing is the same bytes. */
export interface Shapes {
  readonly wide: number;
  readonly high: number;
  readonly lines: readonly ShapeLine[];
  readonly paths: readonly ShapePath[];
  readonly words: readonly ShapeWords[];
}

const WIDE = 640;
const HIGH = 300;
const margin = { left: 58, right: 14, top: 14, bottom: 62 };

/** A step of 1, 2 or 5 times a power of ten that gives five to ten of them over a span. */
function stepOver(span: number): number {
  const rough = span / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const share = rough / power;
  return (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10) * power;
}

interface Axis {
  readonly low: number;
  readonly high: number;
  readonly marks: readonly number[];
}

/** The ends of an axis, nothing among them, and its marks. */
function axisOf(values: readonly number[]): Axis {
  const [least, most] = [Math.min(...values, 0), Math.max(...values, 0)];
  const step = stepOver(most - least || 1);
  const from = Math.floor(least / step);
  const to = Math.max(Math.ceil(most / step), from + 1);
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

function pathOf(points: Curve["points"], px: (x: number) => string, py: (y: number) => string): string {
  let begun = false;
  const pieces = points.map(([x, y]) => {
    if (y === null) {
      begun = false;
      return "";
    }
    const piece = `${begun ? "L" : "M"}${px(x)} ${py(y)}`;
    begun = true;
    return piece;
  });
  return pieces.join("");
}

/** A plot as the lines, curves and words that it is drawn with. */
export function plotShapes({ across, up, curves }: Plot): Shapes {
  const points = curves.flatMap((curve) => curve.points);
  const x = axisOf(points.map(([value]) => value));
  const y = axisOf(points.flatMap(([, value]) => (value === null ? [] : [value])));
  const foot = HIGH - margin.bottom;
  const px = (value: number) =>
    fixed(margin.left + ((value - x.low) / (x.high - x.low)) * (WIDE - margin.left - margin.right), 1);
  const py = (value: number) => fixed(foot - ((value - y.low) / (y.high - y.low)) * (foot - margin.top), 1);
  const look = (value: number) => (value === 0 ? "axis" : "grid");
  const words = (left: string, top: number, anchor: ShapeWords["anchor"], text: string): ShapeWords => ({
    at: [left, fixed(top, 1)],
    anchor,
    text,
    upward: false,
  });
  const sample = (i: number) => margin.left + i * 140;
  return {
    wide: WIDE,
    high: HIGH,
    lines: [
      ...x.marks.map((at): ShapeLine => ({ from: [px(at), py(y.low)], to: [px(at), py(y.high)], look: look(at) })),
      ...y.marks.map((at): ShapeLine => ({ from: [px(x.low), py(at)], to: [px(x.high), py(at)], look: look(at) })),
    ],
    paths: [
      ...curves.map((curve): ShapePath => ({ d: pathOf(curve.points, px, py), look: curve.stroke })),
      ...curves.map(({ stroke }, i): ShapePath => ({ d: `M${sample(i)} ${HIGH - 14}h26`, look: stroke })),
    ],
    words: [
      ...x.marks.map((at) => words(px(at), foot + 16, "middle", markWords(at))),
      ...y.marks.map((at) => words(fixed(margin.left - 6, 1), Number(py(at)) + 4, "end", markWords(at))),
      words(fixed((WIDE + margin.left) / 2, 1), foot + 34, "middle", across),
      { at: ["14.0", fixed((foot + margin.top) / 2, 1)], anchor: "middle", text: up, upward: true },
      ...curves.map(({ name }, i) => words(fixed(sample(i) + 32, 1), HIGH - 10, "start", name)),
    ],
  };
}
