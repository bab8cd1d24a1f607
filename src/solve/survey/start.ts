import { drawingOf, placeIn } from "../../vehicle/survey/drawing.ts";
import type { Kind, SurveyReading } from "../../vehicle/survey/readings.ts";
import type { Survey } from "../../vehicle/survey/survey.ts";
import { computed } from "./computed.ts";
import { outwardOf } from "./equations.ts";

/** Which coordinate a reading gives outright. */
const direct: Readonly<Partial<Record<Kind, number>>> = { ahead: 0, out: 1, height: 2 };

/** The middle of some numbers; null where there are none. */
function median(numbers: readonly number[]): number | null {
  const sorted = [...numbers].sort((a, b) => a - b);
  return sorted.length === 0 ? null : sorted[Math.floor(sorted.length / 2)];
}

/**
 * Rough places to begin with, three coordinates a point: the linkage's starting drawing, made as large as the distances on
 * the sheet say; then what the sheet says of places outright. A mark of the builder's own begins in the middle of the
 * points that it is read to, on its own side.
 */
export function startOf(survey: Survey): Float64Array {
  const { points, readings, rough } = survey;
  const drawing = drawingOf(survey.form);
  const places = new Float64Array(3 * points.length).fill(Number.NaN);
  points.forEach((point, i) => {
    const at = placeIn(drawing, point);
    if (at !== null) places.set(at, 3 * i);
  });
  const size = sizeOf(readings, places);
  for (let i = 0; i < places.length; i++) places[i] *= size;
  for (const [point, at] of rough) places.set(at, 3 * point);
  readOutright(survey, places);
  for (let round = 0; round < 2; round++) {
    points.forEach((_, point) => {
      if (Number.isNaN(places[3 * point])) placeMark(survey, point, places);
    });
    readOutright(survey, places);
  }
  for (let i = 0; i < places.length; i++) if (Number.isNaN(places[i])) places[i] = 0;
  return places;
}

/** How much larger the car is than the drawing, by the middle of what each distance says. */
function sizeOf(readings: readonly SurveyReading[], places: Float64Array): number {
  const partials = new Float64Array(9);
  const ratios = readings.flatMap((reading) => {
    if (reading.kind !== "distance" && reading.kind !== "plumb") return [];
    const drawn = computed(reading, 1, places, partials);
    return drawn > 1 ? [reading.value / drawn] : [];
  });
  return median(ratios) ?? 1;
}

/** Heights, outs and aheads that the sheet gives are taken as they are read: of several, the middle one. */
function readOutright(survey: Survey, places: Float64Array): void {
  const { readings, points } = survey;
  points.forEach((_, point) => {
    for (let axis = 0; axis < 3; axis++) {
      const values = readings.flatMap(({ kind, points: [first, from], value }) => {
        if (first !== point || direct[kind] !== axis) return [];
        const sign = axis === 1 ? outwardOf(survey, point) : 1;
        const base = from === undefined ? 0 : places[3 * from + axis];
        return Number.isNaN(base) ? [] : [base + sign * value];
      });
      const value = median(values);
      if (value !== null) places[3 * point + axis] = value;
    }
  });
}

/** How far aside of those points a mark begins, mm: never among them, where it could go to either side. */
const aside = 100;

function placeMark({ readings, points }: Survey, mark: number, places: Float64Array): void {
  const others = new Set(
    readings.filter((reading) => reading.points.includes(mark)).flatMap((reading) => reading.points),
  );
  const known = [...others].filter((each) => each !== mark && !Number.isNaN(places[3 * each]));
  const mean = (axis: number) =>
    known.reduce((sum, each) => sum + places[3 * each + axis], 0) / Math.max(known.length, 1);
  const wheel = points[mark].wheel;
  const side = wheel === null ? mean(1) : (wheel === "left" ? 1 : -1) * Math.max(Math.abs(mean(1)), aside);
  [mean(0) - aside, side, mean(2)].forEach((value, axis) => {
    if (Number.isNaN(places[3 * mark + axis])) places[3 * mark + axis] = value;
  });
}
