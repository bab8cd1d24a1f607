import type { Car } from "../car.ts";
import { setQuantity } from "../edit.ts";
import { pairOf, quantityOf } from "../quantities.ts";

/** New values for some quantities, by their ids: mm or rad. */
export type Values = Readonly<Record<string, number>>;

/** Values that differ by less are one and the same, mm or rad: what is written is no finer. */
const same = 1e-9;

/**
 * The car's text with these values, as one edit: a pair whose two sides are alike is written once, for both. A value that
 * is there already is left as it is written.
 */
export function setValues(car: Pick<Car, "text" | "form" | "numbers">, values: Values): string {
  const wanted = (id: string) => values[id] ?? car.numbers[quantityOf(id).index];
  const changes = (id: string) => Math.abs(wanted(id) - car.numbers[quantityOf(id).index]) >= same;
  const pairs = new Set(Object.keys(values).map((id) => quantityOf(id).pair));
  return [...pairs].reduce((text, pair) => {
    const of = pairOf(pair).filter(({ id }) => changes(id));
    if (of.length === 0) return text;
    const all = pairOf(pair).map(({ id }) => wanted(id));
    const value = all[0] ?? 0;
    if (all.every((each) => Math.abs(each - value) < same)) return set(text, pair, "both", value);
    return of.reduce((so, { id, wheel }) => set(so, pair, wheel ?? "both", wanted(id)), text);
  }, car.text);

  function set(text: string, pair: string, sides: "both" | "left" | "right", value: number): string {
    return setQuantity({ text, form: car.form }, { pair, sides, value });
  }
}
