import { type Study, studyOf } from "../../measures/study.ts";
import type { Car, Wheel } from "../../vehicle/car.ts";
import { cutRods, fitRods } from "../../vehicle/edit.ts";
import { setValues, type Values } from "../../vehicle/edits/values.ts";
import { indexOf } from "../../vehicle/quantities.ts";

/** A change of a car before it is written: new values, and what becomes of its tie rods. */
export interface Rebuilt {
  readonly values: Values;
  /** Lengths, mm, eye to eye, that both rods have from now on; cut to fit; or as the file has them. */
  readonly rods: Readonly<Record<Wheel, number>> | "fit" | "as they are";
}

/** The car's numbers and form with a change, its text left behind: for trying it out. */
export function triedOut(car: Car, { values, rods }: Rebuilt): Car {
  const numbers = Float64Array.from(car.numbers);
  for (const [id, value] of Object.entries(values)) numbers[indexOf(id)] = value;
  if (rods === "as they are") return { ...car, numbers };
  const fit = rods === "fit";
  for (const wheel of ["left", "right"] as const) numbers[indexOf(`${wheel}.tie-rod.length`)] = fit ? 0 : rods[wheel];
  const state = fit ? "fit" : "cut";
  return { ...car, numbers, form: { ...car.form, rods: { left: state, right: state } } };
}

/** The study of a car with a change; null where its front end does not go together then. */
export function studyTriedOut(car: Car, change: Rebuilt): Study | null {
  const study = studyOf(triedOut(car, change));
  return "refused" in study ? null : study;
}

/** The car's text with the same change. */
export function rebuiltText(car: Car, { values, rods }: Rebuilt): string {
  const text = setValues(car, values);
  if (rods === "as they are") return text;
  return rods === "fit" ? fitRods({ text }) : cutRods({ text, form: car.form }, rods);
}
