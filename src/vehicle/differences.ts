import type { Car } from "./car.ts";
import { linkageOf } from "./linkages.ts";
import { mechanismOf } from "./mechanisms.ts";
import { quantities, quantitiesOf } from "./quantities.ts";
import type { Quantity, QuantityKind } from "./quantity.ts";
import { type SectionValue, sectionValues } from "./section-values.ts";
import { sourceAt, type Tree } from "./tree.ts";
import { readLength } from "./units/length.ts";
import { readNumber } from "./units/number.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { worth } from "./worth.ts";
import { readYaml } from "./yaml.ts";

/** What one car says of an input. */
export interface Said {
  /** As the builder wrote it, with its unit; words where the file leaves it out or its front end has none. */
  readonly words: string;
  /** mm, rad or bare; null where it is a choice, or there is none. */
  readonly value: number | null;
}

/** An input of which not all cars say the same. */
export interface Difference {
  /** The quantity's id, its pair where both sides differ alike, or the path in the file. */
  readonly id: string;
  readonly label: string;
  readonly kind: QuantityKind | "choice";
  readonly wheel: Wheel | "each" | null;
  /** One for each car, in their order. */
  readonly said: readonly Said[];
}

/** Nearer than this, mm or rad or bare, two values are the same one, written otherwise. */
const same = 1e-9;

/** A text of the file with the unit that it stands in, if it names none: 14 3/8 is "14 3/8 in". */
export function withUnit(source: string, kind: QuantityKind, units: LengthUnit): string {
  if (kind === "angle") return "number" in readNumber(source) ? `${source}°` : source;
  if (kind === "ratio") return source;
  const [asInches, asMillimetres] = [readLength(source, "in"), readLength(source, "mm")];
  const namesOne = "mm" in asInches && "mm" in asMillimetres && asInches.mm === asMillimetres.mm;
  return namesOne && !/^[-+0. ]*$/.test(source) ? source : `${source} ${units}`;
}

/** A car as differences are read from it. */
interface Written {
  readonly car: Car;
  readonly tree: Tree | null;
  readonly has: ReadonlySet<Quantity>;
}

function writtenOf(car: Car): Written {
  const tree = readYaml(car.text);
  return { car, tree: "complaints" in tree ? null : tree, has: new Set(quantitiesOf(car.form)) };
}

function saidOf({ car, tree, has }: Written, quantity: Quantity): Said {
  if (!has.has(quantity)) return { words: "has none", value: null };
  const { path, shared, kind, absent, low, index } = quantity;
  const value = car.numbers[index] ?? 0;
  const source = tree === null ? null : (sourceAt(tree, path) ?? (shared === null ? null : sourceAt(tree, shared)));
  if (source !== null) return { words: withUnit(source, kind, car.form.units), value };
  if (quantity.pair === "tie-rod.length") return { words: "cut to fit", value: null };
  return absent !== null && absent < low ? { words: "not given", value: null } : { words: "left out: 0", value };
}

function differ(said: readonly Said[]): boolean {
  const [first] = said;
  return said.some(({ words, value }) =>
    first === undefined || value === null || first.value === null
      ? words !== first?.words
      : Math.abs(value - first.value) > same,
  );
}

/** Left and right as one line where all cars say the same of both. */
function paired(lines: readonly Difference[], pairs: ReadonlyMap<string, string>): readonly Difference[] {
  const wordsOf = ({ said }: Difference) => said.map(({ words }) => words).join("\0");
  return lines.flatMap((line): readonly Difference[] => {
    const pair = pairs.get(line.id);
    const other = lines.find((each) => each !== line && pairs.get(each.id) === pair);
    if (pair === undefined || other === undefined || wordsOf(other) !== wordsOf(line)) return [line];
    return line.wheel === "right" ? [] : [{ ...line, id: pair, wheel: "each" }];
  });
}

function choice(id: string, label: string, words: readonly string[]): readonly Difference[] {
  const said = words.map((each) => ({ words: each, value: null }));
  return differ(said) ? [{ id, label, kind: "choice", wheel: null, said }] : [];
}

function choices(cars: readonly Car[]): readonly Difference[] {
  const of = (read: (car: Car) => string | null) => cars.map((car) => read(car) ?? "not given");
  return [
    ...choice(
      "front.linkage",
      "Front end",
      of(({ form }) => linkageOf(form.linkage).label),
    ),
    ...choice(
      "steering.mechanism",
      "Steering",
      of(({ form }) => mechanismOf(form.mechanism).label),
    ),
    ...choice(
      "steering.rack.wheel-left-moves",
      "Steering wheel left moves the rack",
      of(({ form }) => form.wheelLeftMoves),
    ),
    ...choice(
      "steering.relay.turns",
      "Pitman arm turns with or against the steering wheel",
      of(({ form }) => form.pitmanTurns),
    ),
  ];
}

/** What an optional section's value is worth where it is a number, so that 14 1/2 and 14.5 are the same. */
function sectionSaid(value: SectionValue | undefined, { form }: Car): Said {
  if (value === undefined) return { words: "not given", value: null };
  const { source, range } = value;
  if (range === null) return { words: source, value: null };
  const is = worth(source, range, form.units);
  return { words: withUnit(source, range.kind, form.units), value: typeof is === "number" ? is : null };
}

function sectionDifferences(cars: readonly Car[]): readonly Difference[] {
  const all = cars.map((car) => new Map(sectionValues(car).map((each) => [each.path.join(": "), each])));
  const paths = new Set(all.flatMap((each) => [...each.keys()]));
  return [...paths].flatMap((id): readonly Difference[] => {
    const said = cars.map((car, i) => sectionSaid(all[i]?.get(id), car));
    const kind = all.find((each) => each.has(id))?.get(id)?.range?.kind ?? "choice";
    return differ(said) ? [{ id, label: id, kind, wheel: null, said }] : [];
  });
}

/**
 * The inputs of which not all cars say the same, as their builders wrote them: the choices, every quantity of the catalogue
 * in its order, then the optional sections by their places in the file. How a value is written makes no difference.
 */
export function differences(cars: readonly Car[]): readonly Difference[] {
  const written = cars.map(writtenOf);
  const lines = quantities.flatMap((quantity): readonly Difference[] => {
    if (written.every(({ has }) => !has.has(quantity))) return [];
    const said = written.map((each) => saidOf(each, quantity));
    const { id, label, kind, wheel } = quantity;
    return differ(said) ? [{ id, label, kind, wheel, said }] : [];
  });
  const pairs = new Map(quantities.filter(({ wheel }) => wheel !== null).map(({ id, pair }) => [id, pair]));
  return [...choices(cars), ...paired(lines, pairs), ...sectionDifferences(cars)];
}
