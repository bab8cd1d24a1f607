import type { Study } from "./study.ts";

export type FigureKind = "length" | "angle" | "percent" | "angle-per-length" | "count";

interface FigureWords {
  /** The name in JSON and CSV, as DEVELOPERS.md's glossary has it. */
  readonly id: string;
  readonly kind: FigureKind;
  /** A builder's words. */
  readonly label: string;
  /** Which way is positive; "" where it has no sign. */
  readonly sign: string;
  /** One or two sentences: what it is and why it matters. */
  readonly explanation: string;
}

/** Read from one wheel of one solved pose. `at` is where that side starts in the pose buffer. */
export interface WheelFigure extends FigureWords {
  readonly of: "wheel";
  readonly read: (poses: Float64Array, at: number, study: Study) => number | null;
}

/** Read from one pose, both wheels. `at` is where the pose starts. */
export interface PoseFigure extends FigureWords {
  readonly of: "pose";
  readonly read: (poses: Float64Array, at: number, study: Study) => number | null;
}

/** Read from a whole study: worst over the travel, locks, lengths to cut. */
export interface CarFigure extends FigureWords {
  readonly of: "car";
  readonly read: (study: Study) => number | null;
}

/** One output: the only list of outputs is made of these. Lengths mm, angles rad, percents as 100 = all. */
export type Figure = WheelFigure | PoseFigure | CarFigure;
