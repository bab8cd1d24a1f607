import type { Car } from "../vehicle/car.ts";
import { quantitiesOf } from "../vehicle/quantities.ts";
import { startingValues } from "../vehicle/starting/marks.ts";

/** The mark that stands before a number that was not measured, but assumed. */
export const assumedMark = "~";

/** "~ assumed, not measured: lower arm, upper arm, camber, toe": null where every number was given. */
export function assumedWords(car: Car): string | null {
  const ids = startingValues(car);
  if (ids.size === 0) return null;
  const labels = quantitiesOf(car.form)
    .filter(({ id }) => ids.has(id))
    .map(({ label }) => (label.split(",")[0] ?? label).toLowerCase());
  return `${assumedMark} assumed, not measured: ${[...new Set(labels)].join(", ")}`;
}
