import type { Car } from "./car.ts";
import { quantitiesOf } from "./quantities.ts";
import { sourceAt } from "./tree.ts";
import { readYaml } from "./yaml.ts";

const known = new WeakMap<object, ReadonlySet<string>>();

/** The ids of the quantities that a car's file leaves out, so that they are at their defaults. */
export function leftOut(car: Pick<Car, "text" | "form">): ReadonlySet<string> {
  const found = known.get(car);
  if (found !== undefined) return found;
  const tree = readYaml(car.text);
  const isThere = (path: readonly string[] | null) =>
    path !== null && !("complaints" in tree) && sourceAt(tree, path) !== null;
  const all = quantitiesOf(car.form).filter(({ path, shared }) => !isThere(path) && !isThere(shared));
  const ids = new Set(all.map(({ id }) => id));
  known.set(car, ids);
  return ids;
}
