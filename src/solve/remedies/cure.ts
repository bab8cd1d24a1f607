import type { Study } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import type { Edit } from "../../vehicle/edit.ts";
import type { NoRemedy, Remedy } from "./remedy.ts";
import { differenceOf, type LockMeasure, numberOf, straightAheadId, studyOfText, trial, uncut } from "./trial.ts";

/** What a remedy is made from. */
export interface Patient {
  readonly study: Study;
  readonly car: Car;
  /** The car with its rods cut to fit and its steering on its middle: what most remedies go on from. */
  readonly mended: Car;
}

export type Cure = (patient: Patient) => Remedy | NoRemedy;

/** Locks that differ by less are equal to any turn plate, rad. */
export const EQUAL = (0.05 * Math.PI) / 180;

/** A remedy whose text stands as a car; else why not. */
export function remedy(name: string, made: Omit<Remedy, "after">): Remedy | NoRemedy {
  const after = studyOfText(made.text);
  return after === null ? no(made.key, name, "the front end does not go together then") : { ...made, after };
}

export function no(key: string, name: string, why: string): NoRemedy {
  return { key, name, why };
}

export function both(pair: string, value: number): Edit {
  return { pair, sides: "both", value };
}

/** The edits that set the steering on its middle; none where it is there. */
export function onMiddle(car: Car): readonly Edit[] {
  const id = straightAheadId(car);
  return numberOf(car, id) === 0 ? [] : [both(id, 0)];
}

/** The patient as every remedy sees him. */
export function patientOf(study: Study): Patient {
  const { car } = study;
  return { study, car, mended: trial(uncut(car), { [straightAheadId(car)]: 0 }) };
}

export const equalAlready = "the locks are equal as soon as the rods are right and the steering stands on its middle";

/** Whether nothing is left to cure by that measure once rods and middle are right. */
export function isMended(mended: Car, measure: LockMeasure): boolean {
  const left = differenceOf(mended, measure);
  return left !== null && Math.abs(left) < (measure === "turnRadius" ? 5 : EQUAL);
}
