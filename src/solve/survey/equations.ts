import type { Survey } from "../../vehicle/survey/survey.ts";
import type { Equations } from "../least-squares/equations.ts";
import { computed } from "./computed.ts";
import { placesFrom, type Unknowns } from "./unknowns.ts";

/** A sum of unknowns that is held at what it is at some place: a convention of where the whole stands, no reading. */
export interface Held {
  readonly by: Float64Array;
  /** What the sum is to be, mm. */
  readonly at: number;
}

/** How tightly a convention is held, mm: far below what a tape shows, and not so far that rounding counts. */
const tight = 0.01;

/** +1 for a point of the left side or of none, -1 for one of the right: which way is out. */
export function outwardOf({ points }: Pick<Survey, "points">, point: number): number {
  return points[point]?.wheel === "right" ? -1 : 1;
}

/** A sheet's readings, and behind them what is held, as equations for the unknowns. */
export function equationsOf(survey: Survey, unknowns: Unknowns, held: readonly Held[]): Equations {
  const { readings, points } = survey;
  const places = new Float64Array(3 * points.length);
  const partials = new Float64Array(9);
  const outward = readings.map((reading) => outwardOf(survey, reading.points[0]));
  const { count, at, sign } = unknowns;
  return {
    unknowns: count,
    readings: readings.length + held.length,
    evaluate: (x, misfits, jacobian) => {
      placesFrom(unknowns, x, places);
      jacobian?.fill(0);
      readings.forEach((reading, row) => {
        misfits[row] = (computed(reading, outward[row], places, partials) - reading.value) / reading.sigma;
        if (jacobian === null) return;
        reading.points.forEach((point, of) => {
          for (let axis = 0; axis < 3; axis++) {
            const unknown = at[3 * point + axis];
            const entry = row * count + unknown;
            if (unknown >= 0)
              jacobian[entry] = jacobian[entry] + (sign[3 * point + axis] * partials[3 * of + axis]) / reading.sigma;
          }
        });
      });
      held.forEach(({ by, at: value }, i) => {
        const row = readings.length + i;
        misfits[row] = (by.reduce((sum, each, j) => sum + each * x[j], 0) - value) / tight;
        jacobian?.set(
          by.map((each) => each / tight),
          row * count,
        );
      });
      return true;
    },
  };
}
