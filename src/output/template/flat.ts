import { wrap } from "../table.ts";

/** A place on a drawing, mm: x to the right, y up. */
export type At = readonly [x: number, y: number];

/** What a line is for: to be cut or drilled, or to mark by. Words have a layer of their own. */
export type Layer = "cut" | "mark";

export type Shape =
  | { readonly is: "line"; readonly layer: Layer; readonly from: At; readonly to: At }
  | { readonly is: "circle"; readonly layer: Layer; readonly at: At; readonly radius: number }
  /** Anticlockwise from one angle to the other, rad from the right. */
  | {
      readonly is: "arc";
      readonly layer: Layer;
      readonly at: At;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
    }
  /** From the foot of its first letter to the right. */
  | { readonly is: "words"; readonly at: At; readonly high: number; readonly text: string };

/** One flat drawing at full size. */
export interface Drawing {
  /** For its file: "tab-left". */
  readonly name: string;
  readonly title: string;
  /** What the reader has to know, whole sentences. */
  readonly notes: readonly string[];
  readonly shapes: readonly Shape[];
}

/** A drawing that the file does not say enough for, or a part of one: what it needs, by the file's own keys. */
export interface Wanting {
  readonly what: string;
  readonly needs: string;
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly low: number;
  readonly high: number;
}

/** Height of letters, mm. */
export const letters = 3.2;
/** A line of letters is no wider than that a letter, in a plain font, as a share of their height. */
const widest = 0.62;

export function line(layer: Layer, from: At, to: At): Shape {
  return { is: "line", layer, from, to };
}

export function words(at: At, text: string, high = letters): Shape {
  return { is: "words", at, high, text };
}

/** A cross with its middle on a place. */
export function crossAt([x, y]: At, arm = 4): readonly Shape[] {
  return [line("mark", [x - arm, y], [x + arm, y]), line("mark", [x, y - arm], [x, y + arm])];
}

/** A hole: drilled through where its diameter is given, else only where it is. */
export function holeAt(at: At, diameter: number | null): readonly Shape[] {
  const drilled: readonly Shape[] = diameter === null ? [] : [{ is: "circle", layer: "cut", at, radius: diameter / 2 }];
  return [...drilled, ...crossAt(at, Math.max(4, (diameter ?? 0) / 2 + 3))];
}

function ends(shape: Shape): readonly At[] {
  if (shape.is === "line") return [shape.from, shape.to];
  const {
    at: [x, y],
  } = shape;
  if (shape.is === "words") return [shape.at, [x + widest * shape.high * shape.text.length, y + shape.high]];
  return [
    [x - shape.radius, y - shape.radius],
    [x + shape.radius, y + shape.radius],
  ];
}

/** The least upright box around shapes, words and the whole circles of arcs included. */
export function boxOf(shapes: readonly Shape[]): Box {
  const all = shapes.flatMap(ends);
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)];
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** 100 mm and 4 in to be measured on the print, from their left end. */
export function scaleBars([x, y]: At): readonly Shape[] {
  const bar = (low: number, long: number, text: string): readonly Shape[] => [
    line("mark", [x, low], [x + long, low]),
    line("mark", [x, low - 1.5], [x, low + 1.5]),
    line("mark", [x + long, low - 1.5], [x + long, low + 1.5]),
    words([x + long + 3, low - 1.5], text, 3),
  ];
  return [...bar(y, 100, "100 mm"), ...bar(y - 7, 101.6, "4 in")];
}

/** Letters in a line of notes: across the narrowest paper. */
const noteWidth = 60;
/** Fewer letters in a line than that are no reading. */
const narrowest = 28;

/** Said on every drawing, since it is cut by it. */
export const cautions: readonly string[] = [
  "FULL SIZE: print at 100 %, do not scale to fit.",
  "Measure the bars, and one size of the drawing on the car, before anything is cut.",
  "Geometry only, not strength: have welds and hardware inspected by someone qualified.",
];

/**
 * The shapes of a drawing with its title and notes beside it, in lines of so many letters, for paper that has bars of its own;
 * null where there is no room for a line.
 */
export function letteredBeside({ title, notes, shapes }: Drawing, room: number): readonly Shape[] | null {
  const { left, right, high } = boxOf(shapes);
  const start = right + 8;
  const free = room - (start - left);
  const inLine = (size: number) => Math.floor(free / (widest * size));
  if (inLine(letters) < narrowest) return null;
  const titles = wrap(title, inLine(5));
  const first = high - 5 - (titles.length - 1) * 7;
  const lines = [...notes, ...cautions].flatMap((note) => wrap(note, inLine(letters)));
  return [
    ...shapes,
    ...titles.map((text, i) => words([start, high - 5 - i * 7], text, 5)),
    ...lines.map((text, i) => words([start, first - 8 - i * 5], text)),
  ];
}

/** The shapes of a drawing with its title, its notes and the bars below it: what is printed or cut by. */
export function lettered({ title, notes, shapes }: Drawing): readonly Shape[] {
  const { left, low } = shapes.length > 0 ? boxOf(shapes) : { left: 0, low: 0 };
  const lines = [...notes, ...cautions].flatMap((note) => wrap(note, noteWidth));
  const first = low - 12;
  const below = first - 7 - lines.length * 5.5 - 5;
  return [
    ...shapes,
    words([left, first], title, 5),
    ...lines.map((text, i) => words([left, first - 7 - i * 5.5], text)),
    ...scaleBars([left, below]),
  ];
}
