/** A place on a drawing, mm: x to the right, y up. */
export type At = readonly [x: number, y: number];

/** What a line is for: to be cut or drilled, or to mark by. Words have a layer of their own. */
export type Layer = "cut" | "mark";

export type Shape =
  /** A thin one has no dashes: dimensions and what leads to words. */
  | { readonly is: "line"; readonly layer: Layer; readonly from: At; readonly to: At; readonly thin?: true }
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
  /** From the foot of its first letter to the right, or turned about that by an angle, rad anticlockwise. */
  | { readonly is: "words"; readonly at: At; readonly high: number; readonly text: string; readonly turn?: number };

/** One flat drawing at full size. */
export interface Sketch {
  /** For its file: "tab-left". */
  readonly name: string;
  readonly title: string;
  /** What the reader has to know, whole sentences. */
  readonly notes: readonly string[];
  readonly shapes: readonly Shape[];
}

/** A drawing as it goes to the bench, alone. */
export interface Drawing extends Sketch {
  /** Which car it is for: its title, and the name of its file. */
  readonly car: string;
  /** What stands against cutting yet, whole sentences. */
  readonly before: readonly string[];
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
export const widest = 0.62;
/** How far letters reach above their foot, with some to spare, and below it, as shares of their height, which is a font's own size. */
const above = 1;
const below = 0.25;

export function line(layer: Layer, from: At, to: At): Shape {
  return { is: "line", layer, from, to };
}

export function thin(from: At, to: At): Shape {
  return { is: "line", layer: "mark", from, to, thin: true };
}

export function words(at: At, text: string, high = letters): Shape {
  return { is: "words", at, high, text };
}

/** How wide words are at the most. */
export function widthOf(text: string, high = letters): number {
  return widest * high * text.length;
}

/** The corners of the room that words take, turned as they are. */
export function cornersOf({ at, high, text, turn = 0 }: Extract<Shape, { is: "words" }>): readonly At[] {
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const wide = widthOf(text, high);
  const own: readonly At[] = [
    [0, -below * high],
    [wide, -below * high],
    [wide, above * high],
    [0, above * high],
  ];
  return own.map(([x, y]) => [at[0] + x * cos - y * sin, at[1] + x * sin + y * cos]);
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
  if (shape.is === "words") return cornersOf(shape);
  const {
    at: [x, y],
  } = shape;
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
