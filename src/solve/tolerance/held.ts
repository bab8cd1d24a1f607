import type { Car } from "../../vehicle/car.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { goesWith, partsOf, tolerated } from "../../vehicle/sections/tolerances.ts";
import { builderStep } from "../sensitivity/sensitivity.ts";

/** A size of the car, and how closely it is built. */
export interface Held {
  readonly quantity: Quantity;
  /** mm or rad, each way; 0 is held exactly, as by a jig. */
  readonly tolerance: number;
  /** Who says so. Common practice is 1/16 in or 1 mm and a quarter of a degree; no source. */
  readonly from: "file" | "common practice";
  /** Where its error goes in Car.numbers: its own place, and those of what goes with it. */
  readonly places: readonly number[];
}

const built: ReadonlySet<string> = new Set(tolerated.map(({ pair }) => pair));

function heldOne({ form, sections: { tolerances } }: Pick<Car, "form" | "sections">, quantity: Quantity): Held {
  const { pair, kind } = quantity;
  const others = quantitiesOf(form).filter((each) => goesWith[each.pair] === pair);
  const places = [quantity, ...others].map(({ index }) => index);
  const names = [pair, ...partsOf(pair)];
  const own = names.map((name) => tolerances?.of[name]).find((each) => each !== undefined);
  const said = own ?? (kind === "angle" ? tolerances?.angle : tolerances?.length) ?? null;
  return said === null
    ? { quantity, tolerance: builderStep(kind, form.units), from: "common practice", places }
    : { quantity, tolerance: said, from: "file", places };
}

/**
 * Every size of a car that is built to a tolerance: what its file says of that size, else of its part, else of lengths or
 * angles, else common practice. Tie rods' lengths are none of them: they are set by the toe.
 */
export function heldOf(car: Pick<Car, "form" | "sections">): readonly Held[] {
  return quantitiesOf(car.form)
    .filter(({ pair }) => built.has(pair))
    .map((quantity) => heldOne(car, quantity));
}
