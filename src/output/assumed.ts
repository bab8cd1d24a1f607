import type { Car, Wheel } from "../vehicle/car.ts";
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

/** The angles of a wheel that are nothing but what its drawing says, by the end of the quantity's id that says it. */
const drawnBy: Readonly<Record<string, string>> = {
  toe: ".wheel.toe",
  camber: ".wheel.camber",
  caster: ".upper-arm.joint.ahead",
  kpi: ".upper-arm.joint.out",
};

/** Whether an angle of a wheel, by the figure's id, was assumed with the drawing and not measured. */
export function isAssumedAngle(car: Car, figure: string, wheel: Wheel): boolean {
  const { [figure]: end } = drawnBy;
  return end !== undefined && startingValues(car).has(`${wheel}${end}`);
}
