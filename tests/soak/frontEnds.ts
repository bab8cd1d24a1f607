import type { Car } from "../../src/vehicle/car.ts";
import { changeFrontEnd } from "../../src/vehicle/change.ts";
import { linkageOf, linkages } from "../../src/vehicle/linkages.ts";
import { mechanismOf, mechanisms } from "../../src/vehicle/mechanisms.ts";
import type { Place } from "../../src/vehicle/places.ts";
import { indexOf, quantities, quantitiesOf } from "../../src/vehicle/quantities.ts";
import type { Quantity } from "../../src/vehicle/quantity.ts";
import { readCar } from "../../src/vehicle/read.ts";
import type { Chance } from "./chance.ts";
import { presetText, presetTexts } from "./presets.ts";

/** Cars without a text: numbers as a file could give them, of every linkage with every mechanism, thousands a second. */

/** Example cars as they are; and of three that are unlike, every other linkage and mechanism that a builder could change them to. */
const unlike = ["check-before-welding", "cut-rods-off-middle", "rack-ahead"];

const makers: readonly (() => Car)[] = [
  ...presetTexts.map((text) => () => read(text)),
  ...unlike.flatMap((name) =>
    linkages.flatMap((linkage) =>
      mechanisms.map(({ word, takeOff }) => () => {
        const car = read(presetText(name));
        const change = { linkage: linkage.name, mechanism: word, ...(takeOff === null ? {} : { takeOff }) };
        return read(changeFrontEnd(car, change).text);
      }),
    ),
  ),
];

const made: Car[] = [];

/** Made when first wanted: reading a text takes longer than solving a thousand poses. */
function oneOfThem({ below }: Chance): Car {
  const which = below(makers.length);
  const car = made[which] ?? makers[which]?.();
  if (car === undefined) throw new Error("there are no cars to begin from");
  made[which] = car;
  return car;
}

function read(text: string): Car {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints[0]?.message);
  return car;
}

const rods: readonly number[] = [indexOf("left.tie-rod.length"), indexOf("right.tie-rod.length")];
const [wheelLeft, wheelRight] = [indexOf("left.wheel.center.out"), indexOf("right.wheel.center.out")];
const byPath = new Map(quantities.map((each) => [each.path.join("."), each.index]));

/** The quantities of a form, those that are each other's other side together. */
const pairsOf = (() => {
  const known = new Map<string, readonly (readonly Quantity[])[]>();
  return ({ linkage, mechanism }: Car["form"]) => {
    const name = `${linkage} ${mechanism}`;
    const of = quantitiesOf({ linkage, mechanism }).filter(({ index }) => !rods.includes(index));
    const made =
      known.get(name) ??
      [...new Set(of.map(({ pair }) => pair))].map((pair) => of.filter((each) => each.pair === pair));
    known.set(name, made);
    return made;
  };
})();

/** What a number can turn into: mostly nearly itself, now and then what a slip of the finger or a trick would make of it. */
function otherwise(
  was: number,
  of: Quantity,
  numbers: Float64Array,
  all: readonly Quantity[],
  most: number,
  chance: Chance,
) {
  const { share, below, one } = chance;
  switch (below(60)) {
    case 0:
      return 0;
    case 1:
      return one([of.low, of.high]);
    case 2:
      return -was;
    case 3:
      return was * 10 ** (below(7) - 3);
    case 4: {
      // As far as another part is: joints above, beside, on each other.
      const other = one(all);
      return other.kind === of.kind ? (numbers[other.index] ?? was) : was;
    }
    case 5:
      return of.low + (of.high - of.low) * share();
    default:
      return (
        was + (2 * share() - 1) * most * (of.kind === "length" ? Math.max(Math.abs(was), 100) : Math.abs(was) + 0.05)
      );
  }
}

function moved(numbers: Float64Array, form: Car["form"], chance: Chance): void {
  const { share, one } = chance;
  const [most, touched] = [one([0.003, 0.02, 0.1, 0.5]), one([0.05, 0.3, 1])];
  const alike = share() < 0.6;
  const pairs = pairsOf(form);
  const all = pairs.flat();
  for (const pair of pairs) {
    let next: number | null = null;
    for (const quantity of pair) {
      const { index, low, high } = quantity;
      const was = numbers[index] ?? 0;
      if (next === null || !alike)
        next = share() > touched ? was : otherwise(was, quantity, numbers, all, most, chance);
      // What a file may leave out stays left out.
      if (was !== 0 || quantity.absent === null) numbers[index] = Math.min(Math.max(next, low), high);
    }
  }
}

/** Whether a file with these numbers would be refused by where its joints stand. */
function isFaulty(numbers: Float64Array, { linkage, mechanism }: Car["form"]): boolean {
  if (!((numbers[wheelLeft] ?? 0) > 0 && (numbers[wheelRight] ?? 0) > 0)) return true;
  const place =
    (wheel: string) =>
    (path: string): Place => [
      numbers[indexOf(`${wheel}.${path}.ahead`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.out`)] ?? 0,
      numbers[indexOf(`${wheel}.${path}.up`)] ?? 0,
    ];
  const { faults } = linkageOf(linkage);
  return (
    faults(place("left")).length + faults(place("right")).length > 0 ||
    mechanismOf(mechanism).faults((path) => numbers[byPath.get(`steering.${path}`) ?? -1] ?? 0).length > 0
  );
}

/** A car with other numbers, its rods cut to fit or not; null where a file that held them would be refused. */
export function otherNumbers(chance: Chance): Car | null {
  const car = oneOfThem(chance);
  const numbers = car.numbers.slice();
  moved(numbers, car.form, chance);
  for (const rod of rods)
    if (numbers[rod] !== 0) numbers[rod] = chance.one([0, (numbers[rod] ?? 0) + 20 * (chance.share() - 0.5)]);
  if (isFaulty(numbers, car.form)) return null;
  const [left, right] = rods.map((index) => (numbers[index] === 0 ? "fit" : "cut"));
  return { ...car, numbers, form: { ...car.form, rods: { left: left ?? "fit", right: right ?? "fit" } } };
}
