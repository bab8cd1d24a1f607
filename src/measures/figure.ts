import type { FrontEnd } from "./frontEnd.ts";

export type FigureKind = "length" | "angle" | "percent" | "angle-per-length";

/** What every figure says of itself. */
export interface FigureWords {
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

/**
 * Read from one wheel of one solved pose that closes. `at` is where that side starts in the pose buffer; poses start at
 * multiples of Pose.Stride.
 */
export interface WheelFigure extends FigureWords {
  readonly of: "wheel";
  readonly read: (poses: Float64Array, at: number, end: FrontEnd) => number | null;
}

/** Read from one pose, both wheels closed. `at` is where the pose starts. */
export interface PoseFigure extends FigureWords {
  readonly of: "pose";
  readonly read: (poses: Float64Array, at: number, end: FrontEnd) => number | null;
}

/** The same figure, null on a front end without suspension, of which it says nothing. */
export function ofSuspension<F extends WheelFigure | PoseFigure>(figure: F): F {
  return { ...figure, read: (poses, at, end) => (end.suspended ? figure.read(poses, at, end) : null) };
}
