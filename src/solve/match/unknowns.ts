import type { Study } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import type { BuiltTo } from "../../vehicle/car-readings/reading.ts";
import { isWithin } from "../../vehicle/edit.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { inch } from "../../vehicle/units/length.ts";
import { triedOut } from "../adjusters/rebuilt.ts";

/** Something of the car that may be other than its file says, with what it is on file and how far it may be off. */
export interface Unknown {
  /** One, or both ways of what the file gives one number for. */
  readonly quantities: readonly Quantity[];
  /** mm or rad. */
  readonly onFile: number;
  /** Two standard deviations, mm or rad. */
  readonly tolerance: number;
  /** True for a rod that the file gives no length for: how it was cut is not known, only that it fits about so. */
  readonly open: boolean;
}

/**
 * A rod without a length on file was cut and set on the car, so that its length tells nothing of how true the car is: it
 * may be off by as much as a rod end screws (common practice, no source).
 */
const openRod = inch;

/** Drawn toe turns the tab about the steering axis and nothing else, which the tab's own place does too. */
const saidTwice = ["wheel.toe"];

/** Whether a quantity is the length of a tie rod. */
export function isRod({ pair }: Quantity): boolean {
  return pair === "tie-rod.length";
}

/** What may be off: every uncertain quantity. Where the rack stands as drawn says nothing once rods have their lengths. */
export function unknownsOf({ car, rodLengths }: Study, builtTo: BuiltTo): readonly Unknown[] {
  const { numbers, form } = car;
  const uncertain = quantitiesOf(form).filter(
    ({ roles, pair, kind }) =>
      roles.includes("uncertain") && kind !== "ratio" && !saidTwice.includes(pair) && !pair.endsWith("straight-ahead"),
  );
  const isAlike = (each: Quantity) =>
    isWithin(each) &&
    uncertain.filter(({ pair }) => pair === each.pair).every(({ index }) => numbers[index] === numbers[each.index]);
  return uncertain.flatMap((quantity): readonly Unknown[] => {
    const { pair, wheel, kind, index } = quantity;
    const given = builtTo.of.get(pair) ?? (kind === "angle" ? builtTo.angle : builtTo.length);
    if (isRod(quantity) && wheel !== null) {
      const open = form.rods[wheel] === "fit";
      const tolerance = open && !builtTo.of.has(pair) ? openRod : given;
      return [{ quantities: [quantity], onFile: rodLengths[wheel], tolerance, open }];
    }
    const alike = isAlike(quantity) ? uncertain.filter((each) => each.pair === pair) : [quantity];
    return alike[0] === quantity ? [{ quantities: alike, onFile: numbers[index], tolerance: given, open: false }] : [];
  });
}

/** The car with other values of its unknowns; both rods as cut. */
export function carWith(study: Study, unknowns: readonly Unknown[], x: Float64Array): Car {
  const rods = { ...study.rodLengths };
  const values: Record<string, number> = {};
  unknowns.forEach(({ quantities }, j) => {
    for (const quantity of quantities) {
      if (isRod(quantity) && quantity.wheel !== null) rods[quantity.wheel] = x[j];
      else values[quantity.id] = x[j];
    }
  });
  return triedOut(study.car, { values, rods });
}
