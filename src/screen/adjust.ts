import type { Car } from "../vehicle/car.ts";
import { quantitiesOf } from "../vehicle/quantities.ts";
import type { Quantity } from "../vehicle/quantity.ts";
import type { Bench, Sides } from "./model.ts";

/** A line of the list of things to adjust: one quantity, or the left and right of one. */
export interface Adjustable {
  readonly pair: string;
  /** Heads the lines that belong together, such as "Tie-rod tab". */
  readonly group: string;
  /** The line's own word in its group, such as "ahead". */
  readonly name: string;
  /** The whole name, such as "Tie-rod tab, ahead". */
  readonly label: string;
  readonly quantities: readonly Quantity[];
}

/** The part of a label that several lines share, and what is left: "Rack, up" and "Rack offset" both belong to "Rack". */
function partsOf(label: string, groups: readonly string[]): readonly [group: string, name: string] {
  const comma = label.indexOf(", ");
  if (comma > 0) return [label.slice(0, comma), label.slice(comma + 2)];
  const group = groups.find((each) => label.startsWith(`${each} `)) ?? label.split(" ")[0] ?? label;
  return [group, label.slice(group.length + 1)];
}

/** Whether a line is one of those that a builder moves first: they head the list. */
export function isFirst({ quantities }: Adjustable): boolean {
  return quantities.some((each) => each.roles.includes("adjust"));
}

const lists = new WeakMap<readonly Quantity[], readonly Adjustable[]>();

/** All that can be adjusted on a car: first what is moved first, then the rest, both in the order of the list of quantities. */
export function adjustables(car: Pick<Car, "form">): readonly Adjustable[] {
  const quantities = quantitiesOf(car.form);
  const known = lists.get(quantities);
  if (known !== undefined) return known;
  const lines = linesOf(quantities);
  const list = [...lines.filter(isFirst), ...lines.filter((line) => !isFirst(line))];
  lists.set(quantities, list);
  return list;
}

function linesOf(quantities: readonly Quantity[]): readonly Adjustable[] {
  const groups = quantities.flatMap(({ label }) => (label.includes(", ") ? [label.slice(0, label.indexOf(", "))] : []));
  return [...new Set(quantities.map((each) => each.pair))].map((pair) => {
    const members = quantities.filter((each) => each.pair === pair);
    const label = members[0]?.label ?? pair;
    const [group, name] = partsOf(label, groups);
    return { pair, group, name, label, quantities: members };
  });
}

/** The line of a pair; the first one where the car has no such pair. */
export function adjustableOf(car: Car, pair: string): Adjustable {
  const list = adjustables(car);
  const found = list.find((each) => each.pair === pair) ?? list[0];
  if (found === undefined) throw new Error("nothing of this car can be adjusted");
  return found;
}

/** True for a tie rod's length, which is no input while the rods are cut to fit. */
function isRodLength(quantity: Quantity): boolean {
  return quantity.pair === "tie-rod.length";
}

/**
 * What a quantity is worth on the bench, mm or rad. A rod that is cut to fit has the length that it must be cut to;
 * null while that cannot be told.
 */
export function valueNow(bench: Pick<Bench, "car" | "study">, quantity: Quantity): number | null {
  const { car, study } = bench;
  if (isRodLength(quantity) && quantity.wheel !== null && car.form.rods[quantity.wheel] === "fit") {
    return "refused" in study ? null : study.rodLengths[quantity.wheel];
  }
  return car.numbers[quantity.index] ?? null;
}

/** The quantities of a line that a change on these sides is about. */
export function quantitiesOn(line: Adjustable, sides: Sides): readonly Quantity[] {
  return line.quantities.filter((each) => each.wheel === null || sides === "both" || each.wheel === sides);
}

/** True for the place that the wheels are drawn straight at, which nothing asks for while both rods are as cut. */
function isStraightAhead({ path }: Quantity): boolean {
  return path.at(-1) === "straight-ahead";
}

/** True where a line is the length of rods one of which is cut to fit. */
export function isFittedRod(car: Car, line: Adjustable, sides: Sides): boolean {
  return quantitiesOn(line, sides).some(
    (each) => isRodLength(each) && each.wheel !== null && car.form.rods[each.wheel] === "fit",
  );
}

/** Why a line cannot be changed just now, in words; null when it can. */
export function whyFixed(car: Car, line: Adjustable, sides: Sides): string | null {
  if (isFittedRod(car, line, sides))
    return "The rods are cut to fit, so their length follows. c makes them as cut; Enter takes the length of a rod that is there.";
  const { left, right } = car.form.rods;
  const ignored = left === "cut" && right === "cut" && line.quantities.some(isStraightAhead);
  return ignored
    ? "Rods as cut ignore it: they themselves set where the wheels are straight. Press c to cut them to fit."
    : null;
}
