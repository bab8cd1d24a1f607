import type { FigureWords } from "../measures/figure.ts";
import { figures as all } from "../measures/figures.ts";

/** What a figure is: its name here, in JSON and in CSV, what it is in, which way is positive, and what it tells a builder. */
export interface FigureAbout extends FigureWords {
  /** One wheel in one place, both wheels in one place, or the whole car. */
  readonly of: "wheel" | "pose" | "car";
}

/** The one list of outputs. Lengths are mm, angles rad, angles per length rad/mm, percents as 100 = all. */
export const figures: readonly FigureAbout[] = all.map(({ of, id, kind, label, sign, explanation }) => ({
  of,
  id,
  kind,
  label,
  sign,
  explanation,
}));
