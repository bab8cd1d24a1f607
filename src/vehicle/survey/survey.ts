import type { LengthUnit } from "../words.ts";
import { pointsOf, type SurveyForm, type SurveyPoint } from "./points.ts";
import type { SurveyReading } from "./readings.ts";

/** A place on the car, mm: ahead of the front-axle line, to the driver's left of the centreline, above the ground. */
export type VehiclePlace = readonly [ahead: number, left: number, up: number];

/** What a sheet of readings says. */
export interface Survey {
  readonly title: string | null;
  readonly units: LengthUnit;
  readonly form: SurveyForm;
  /** How far one tape reading may be off unless it says otherwise, mm: 19 of 20 are nearer (two standard deviations). */
  readonly tolerance: number;
  /** Every point of the front end, and the sheet's own marks behind them. */
  readonly points: readonly SurveyPoint[];
  readonly readings: readonly SurveyReading[];
  /** Points that are taken as the mirror image of that of the other side: which of which, by their places in the list. */
  readonly mirrors: ReadonlyMap<number, number>;
  /** Where points stand roughly, where the sheet says so, by their places in the list. */
  readonly rough: ReadonlyMap<number, VehiclePlace>;
  /** What the sheet says of the car beside its points, mm, rad or bare, by the quantity's id. */
  readonly given: ReadonlyMap<string, number>;
  /** Its words that are not numbers, by their path below steering: "rack.wheel-left-moves". */
  readonly words: ReadonlyMap<string, string>;
}

/** Whether no reading names a point of the front end: the sheet holds what was written beforehand, of its marks, alone. */
export function isBlank({ form, readings }: Pick<Survey, "form" | "readings">): boolean {
  return ownReadings({ form, readings }).length === 0;
}

/** The readings of a front end's own points: what marks on the floor are to each other says nothing of it. */
export function ownReadings({ form, readings }: Pick<Survey, "form" | "readings">): Survey["readings"] {
  // Marks stand behind the front end's own points.
  const own = pointsOf(form).length;
  return readings.filter(({ points }) => points.some((point) => point < own));
}
