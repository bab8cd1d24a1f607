import { type Study, studyOf } from "../../measures/study.ts";
import type { Car, LengthUnit } from "../../vehicle/car.ts";
import { type Edit, fitRods, setQuantity } from "../../vehicle/edit.ts";
import { mechanismOf } from "../../vehicle/mechanisms.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { readCar } from "../../vehicle/read.ts";
import { inch } from "../../vehicle/units/length.ts";

/** What a lock's difference can be told by. */
export type LockMeasure = "inner" | "outer" | "turnRadius";

/** The car with its rods cut to fit, whatever its text says. */
export function uncut(car: Car): Car {
  return { ...car, form: { ...car.form, rods: { left: "fit", right: "fit" } } };
}

/** The car with other values for some quantities, by their ids: for trying values out, its text stays behind. */
export function trial(car: Car, values: Readonly<Record<string, number>>): Car {
  const numbers = Float64Array.from(car.numbers);
  for (const [id, value] of Object.entries(values)) numbers[indexOf(id)] = value;
  return { ...car, numbers };
}

/** A quantity's value. */
export function numberOf(car: Car, id: string): number {
  return car.numbers[indexOf(id)] ?? 0;
}

/** Left lock less right lock of a car; null where it cannot be told. */
export function differenceOf(car: Car, measure: LockMeasure): number | null {
  const study = studyOf(car);
  return "refused" in study ? null : study.locks.difference[measure];
}

/** Where a car's rack or column stands at straight ahead, as a quantity's id. */
export function straightAheadId(car: Car): string {
  return `${mechanismOf(car.form.mechanism).section}.straight-ahead`;
}

/** The car's text after some edits, made one after the other. */
export function edited(car: Pick<Car, "text" | "form">, edits: readonly Edit[], fit = false): string {
  const text = edits.reduce((so, edit) => setQuantity({ text: so, form: car.form }, edit), car.text);
  return fit ? fitRods({ text }) : text;
}

/** The study of a text; null where it is no car that stands. */
export function studyOfText(text: string): Study | null {
  const car = readCar(text);
  if ("complaints" in car) return null;
  const study = studyOf(car);
  return "refused" in study ? null : study;
}

/** A worked-out value as it can be written and set: a thousandth of an inch, a hundredth of a mm or of a degree. */
export function settable(value: number, kind: "length" | "angle", units: LengthUnit): number {
  const step = kind === "angle" ? Math.PI / 18000 : units === "in" ? inch / 1000 : 0.01;
  return Math.round(value / step) * step;
}
