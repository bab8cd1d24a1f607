import { type Study, studyOf } from "../../measures/study.ts";
import { differenced } from "../least-squares/differences.ts";
import type { Equations } from "../least-squares/equations.ts";
import type { Prediction } from "./predictions.ts";
import { carWith, type Unknown } from "./unknowns.ts";

/** Half the difference that a derivative is taken by, mm or rad: far above what a pose is solved to, far below what bends. */
const STEP = { length: 0.05, angle: 1e-4, ratio: 1e-3 } as const;

/**
 * The readings as equations: first what was read on the car, then each unknown's own place on file. x is in units of
 * each unknown's standard deviation from there.
 */
export function equationsOf(study: Study, unknowns: readonly Unknown[], predictions: readonly Prediction[]): Equations {
  const steps = Float64Array.from(unknowns, ({ quantities, tolerance }) => STEP[quantities[0].kind] / (tolerance / 2));
  return differenced(unknowns.length, predictions.length + unknowns.length, steps, (x, misfits) => {
    const at = studyAt(study, unknowns, x);
    if (at === null) return false;
    for (let i = 0; i < predictions.length; i++) {
      const { predict, read, tolerance } = predictions[i];
      const value = predict(at);
      if (value === null) return false;
      misfits[i] = (value - read) / (tolerance / 2);
    }
    misfits.set(x, predictions.length);
    return true;
  });
}

/** The study of the car at a place; null where its front end does not go together there. */
export function studyAt(study: Study, unknowns: readonly Unknown[], x: Float64Array): Study | null {
  const values = Float64Array.from(unknowns, ({ onFile, tolerance }, j) => onFile + (x[j] * tolerance) / 2);
  const at = studyOf(carWith(study, unknowns, values));
  return "refused" in at ? null : at;
}
