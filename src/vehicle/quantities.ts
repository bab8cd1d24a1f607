import { cornerValues } from "./corner.ts";
import type { Linkage } from "./linkage.ts";
import { linkages } from "./linkages.ts";
import type { Mechanism } from "./mechanism.ts";
import { mechanisms } from "./mechanisms.ts";
import type { Quantity } from "./quantity.ts";
import type { Value } from "./value.ts";
import { travelValues, wholeValues } from "./whole.ts";
import type { Wheel } from "./words.ts";

type Unplaced = Omit<Quantity, "index">;

const wheels: readonly Wheel[] = ["left", "right"];

function unplaced(value: Value, wheel: Wheel | null, path: readonly string[], shared: Quantity["shared"]): Unplaced {
  const { kind, label, help, low, high, absent, roles } = value;
  const pair = (value.twin?.path ?? value.path).join(".");
  const id = wheel === null ? pair : `${wheel}.${pair}`;
  return { id, pair, path, shared, wheel, kind, label, help, low, high, absent, roles };
}

/** One of it on the car, or two where it is told apart by the way it goes; a twin belongs to its wheel. */
function single(value: Value, section: readonly string[]): readonly Unplaced[] {
  const path = [...section, ...value.path];
  if (!value.eachWay) return [unplaced(value, value.twin?.wheel ?? null, path, null)];
  return wheels.map((wheel) => unplaced(value, wheel, [...path, wheel], path));
}

/** One of each at each side of the front end. */
function sided(values: readonly Value[]): readonly Unplaced[] {
  return wheels.flatMap((wheel) =>
    values.map((value) => unplaced(value, wheel, ["front", wheel, ...value.path], ["front", "both", ...value.path])),
  );
}

/** All that these linkages and mechanisms have. Where two share a part, such as a lower arm, it is there once. */
function listOf(linked: readonly Linkage[], steered: readonly Mechanism[]) {
  const suspended = linked.some((each) => each.noTravel === undefined);
  const all = [
    ...[...wholeValues, ...(suspended ? travelValues : [])].flatMap((value) => single(value, [])),
    ...sided([...linked.flatMap((each) => each.values), ...cornerValues]),
    ...steered.flatMap((each) => each.values.flatMap((value) => single(value, ["steering"]))),
  ];
  return new Map(all.map((each) => [each.id, each]));
}

/**
 * The one list of inputs: every number that a car file can hold, whatever its linkage and mechanism. Schema, reading,
 * editing, the list of things to adjust and all help are made from it. A quantity's index is its place in this list.
 */
export const quantities: readonly Quantity[] = [...listOf(linkages, mechanisms).values()].map((each, index) => ({
  ...each,
  index,
}));

const byId = new Map(quantities.map((each) => [each.id, each]));

/**
 * The quantity with that id, such as "left.tie-rod.outer.ahead".
 * An id that is not in the list is a mistake in the program, and throws.
 */
export function quantityOf(id: string): Quantity {
  const found = byId.get(id);
  if (found === undefined) throw new Error(`no quantity is called ${id}`);
  return found;
}

/** The place in Car.numbers of the quantity with that id. Look it up once, outside of loops. */
export function indexOf(id: string): number {
  return quantityOf(id).index;
}

/** The quantities that share a pair: one, or left and right. A pair that is not in the list throws. */
export function pairOf(pair: string): readonly Quantity[] {
  const found = quantities.filter((each) => each.pair === pair);
  if (found.length === 0) throw new Error(`no quantity belongs to the pair ${pair}`);
  return found;
}

const ofForm = new Map<string, readonly Quantity[]>();

/** The quantities that a car of that linkage and mechanism has, in the list's order. */
export function quantitiesOf(form: { readonly linkage: string; readonly mechanism: string }): readonly Quantity[] {
  const name = `${form.linkage} ${form.mechanism}`;
  const known = ofForm.get(name);
  if (known !== undefined) return known;
  // Made when first asked for: a car is of one form, and all the others would cost every start.
  const ids = listOf(
    linkages.filter((each) => each.name === form.linkage),
    mechanisms.filter((each) => each.name === form.mechanism),
  );
  const made = quantities.filter((each) => ids.has(each.id));
  ofForm.set(name, made);
  return made;
}
