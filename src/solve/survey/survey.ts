import type { SurveyReading } from "../../vehicle/survey/readings.ts";
import type { Survey, VehiclePlace } from "../../vehicle/survey/survey.ts";
import type { Check, Confidence, Deviation } from "../least-squares/confidence.ts";
import { descend } from "../least-squares/descend.ts";
import type { Equations } from "../least-squares/equations.ts";
import { type Blunder, type Snooped, snoop } from "../least-squares/snoop.ts";
import { randomFrom } from "../search/random.ts";
import { equationsOf } from "./equations.ts";
import { axleHeld, type Freedom, freedomsAt } from "./freedoms.ts";
import { startOf } from "./start.ts";
import { placesFrom, type Unknowns, unknownsFrom, unknownsOf } from "./unknowns.ts";

/** A point where the readings put it. */
export interface SurveyedPoint {
  /** Its place in the sheet's list of points. */
  readonly point: number;
  readonly place: VehiclePlace;
  /** One standard deviation of each coordinate, mm; or that the readings do not settle it. */
  readonly deviations: readonly [Deviation, Deviation, Deviation];
  /** True where no reading of its own leads to it: it is the mirror image of the other side's. */
  readonly mirrored: boolean;
}

/** A reading beside what the points make of it. */
export interface SurveyedReading {
  readonly reading: SurveyReading;
  /** What it is between the points as they were settled, mm or rad. */
  readonly computed: number;
  /** How far the others check it; null for one that was set aside. */
  readonly check: Check | null;
}

/** What a sheet of readings comes to. */
export interface Surveyed {
  readonly survey: Survey;
  readonly points: readonly SurveyedPoint[];
  /** In the sheet's order. */
  readonly readings: readonly SurveyedReading[];
  /** Readings that do not fit the others and were set aside, by their places in the sheet. */
  readonly blunders: readonly Blunder[];
  /** In what ways the whole could be moved without a reading noticing: it stands as the starting drawing does. */
  readonly free: readonly Freedom[];
  /**
   * False where no reading tells ahead from behind: the mirror image fits as well, and the one nearer to the drawing is
   * taken.
   */
  readonly facesRead: boolean;
  /** How much more the readings that are left scatter than was said of them: 1 is as said; null where none checks another. */
  readonly scatter: number | null;
  /** The chance of that much scatter or more from readings as good as was said. */
  readonly chance: number | null;
  readonly confidence: Confidence;
  readonly unknowns: Unknowns;
  /** Three coordinates a point of the sheet, mm; those that nothing was read of stand as in the starting drawing. */
  readonly places: Float64Array;
}

/** Why a sheet comes to nothing, in a sentence. */
export interface NoSurvey {
  readonly complaint: string;
}

/** The readings know a coordinate no better than this, mm: it counts as not settled (4 in: common practice, no source). */
const within = 100;

/**
 * A misfit of more sigmas than this says that the start led to another shape than the car's, a point on the wrong side of the
 * others, and more starts are tried. A slip of an inch on the tape, which is no fault of the start, costs the tries too.
 */
const lost = 10;
const tries = 12;
/** How far the starts that are tried stray, mm: as far as a front end's points stand from each other. */
const stray = 250;
/** So many points, those whose readings fit worst, are put elsewhere in a try. */
const strayed = 2;

/** The points of a sheet's readings by weighted least squares, readings that do not fit set aside. */
export function settleSurvey(survey: Survey): Surveyed | NoSurvey {
  const unknowns = unknownsOf(survey);
  const start = startOf(survey);
  const x0 = unknownsFrom(unknowns, start);
  const axle = axleHeld(survey, unknowns);
  const conventions = axle === null ? [] : [axle];
  const { free, held } = freedomsAt(survey, unknowns, conventions, x0);
  const equations = equationsOf(survey, unknowns, [...conventions, ...held]);
  const doubt = { within: new Float64Array(unknowns.count).fill(within) };
  const snooped = snoop(equations, bestStart(survey, unknowns, equations, x0), doubt);
  if (snooped === null) return { complaint: "The readings could not be brought together at all." };
  return surveyed(survey, unknowns, start, free, snooped);
}

/** The unknowns of the points whose readings fit worst, all axes of each. */
function worstFitting({ readings }: Survey, { at }: Unknowns, misfits: Float64Array): readonly number[] {
  const sums = new Map<number, number>();
  readings.forEach(({ points }, i) => {
    for (const point of points) sums.set(point, (sums.get(point) ?? 0) + misfits[i] ** 2);
  });
  const worst = [...sums].sort(([, a], [, b]) => b - a).slice(0, strayed);
  return worst.flatMap(([point]) => [0, 1, 2].map((axis) => at[3 * point + axis])).filter((unknown) => unknown >= 0);
}

/**
 * Where the readings come together best, from the start or, where that leads astray, with the points that fit worst put
 * elsewhere.
 */
function bestStart(survey: Survey, unknowns: Unknowns, equations: Equations, x0: Float64Array): Float64Array {
  const random = randomFrom(1);
  let best = descend(equations, x0);
  if (best === null) return x0;
  for (let n = 0; n < tries && best.misfits.some((misfit) => Math.abs(misfit) >= lost); n++) {
    const from = Float64Array.from(best.x);
    for (const unknown of worstFitting(survey, unknowns, best.misfits)) from[unknown] += (2 * random() - 1) * stray;
    const other = descend(equations, from);
    if (other !== null && other.cost < best.cost) best = other;
  }
  return best.x;
}

function surveyed(
  survey: Survey,
  unknowns: Unknowns,
  start: Float64Array,
  free: readonly Freedom[],
  { settled, kept, blunders }: Snooped,
): Surveyed {
  const { confidence, x, chance, cost } = settled;
  const places = Float64Array.from(start);
  placesFrom(unknowns, x, places);
  const rows = equationsOf(survey, unknowns, []);
  const misfits = new Float64Array(survey.readings.length);
  rows.evaluate(x, misfits, null);
  const rowOf = new Map(kept.map((reading, row) => [reading, row]));
  const named = new Set(survey.readings.flatMap(({ points }) => points));
  // What is held is no reading: where no reading checks another, what it leaves over is no scatter.
  const isChecked = kept.some((reading, row) => reading < survey.readings.length && confidence.checks[row].checked);
  const deviation = (point: number, axis: number) => confidence.deviations[unknowns.at[3 * point + axis]];
  return {
    survey,
    points: unknowns.points.map((point) => ({
      point,
      place: [places[3 * point], places[3 * point + 1], places[3 * point + 2]],
      deviations: [deviation(point, 0), deviation(point, 1), deviation(point, 2)],
      mirrored: !named.has(point),
    })),
    readings: survey.readings.map((reading, i) => {
      const row = rowOf.get(i);
      return {
        reading,
        computed: reading.value + misfits[i] * reading.sigma,
        check: row === undefined ? null : confidence.checks[row],
      };
    }),
    blunders,
    free,
    facesRead: survey.readings.some(({ kind }) => kind === "ahead") || survey.rough.size > 0,
    scatter: isChecked && confidence.freedom > 0 ? Math.sqrt(cost / confidence.freedom) : null,
    chance: isChecked ? chance : null,
    confidence,
    unknowns,
    places,
  };
}
