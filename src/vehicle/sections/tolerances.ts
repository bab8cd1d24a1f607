import { quantities } from "../quantities.ts";
import type { Quantity, QuantityKind } from "../quantity.ts";
import { degree } from "../value.ts";
import type { Field } from "./field.ts";
import { group, number, optional, word } from "./fields.ts";

/** How closely a car is built, as its file says it: mm or rad, each way; null where the file says nothing. */
export interface Tolerances {
  /** Of every length and of every angle that has none of its own. */
  readonly length: number | null;
  readonly angle: number | null;
  /** By a quantity's pair, or by the part that it belongs to: "tie-rod.outer.ahead", "tie-rod.outer". */
  readonly of: Readonly<Record<string, number>>;
  /** Whether camber and caster can be set again at the arms. */
  readonly arms: "adjustable" | "welded" | null;
}

/**
 * Pairs that are off by as much as another one and have no tolerance of their own: a centre link only moves where the axes of
 * pitman arm and idler arm are parallel.
 */
export const goesWith: Readonly<Record<string, string>> = {
  "relay.idler.lean-back": "relay.pitman.lean-back",
  "relay.idler.lean-left": "relay.pitman.lean-left",
};

/** Every quantity that is built to a tolerance, one of each pair, whatever the front end; a tie rod is set by its toe. */
export const tolerated: readonly Quantity[] = [
  ...new Map(
    quantities
      .filter(({ roles, pair }) => roles.includes("build") && pair !== "tie-rod.length" && !(pair in goesWith))
      .map((each) => [each.pair, each] as const),
  ).values(),
];

/** The parts that a pair belongs to, the nearest first: "lower-arm.joint" and "lower-arm" for "lower-arm.joint.out". */
export function partsOf(pair: string): readonly string[] {
  const keys = pair.split(".");
  return keys.slice(1).map((_, i) => keys.slice(0, keys.length - 1 - i).join("."));
}

/** Parts of which every number is a length, so that one tolerance can stand for all of them. */
const partNames: readonly string[] = [...new Set(tolerated.flatMap(({ pair }) => partsOf(pair)))].filter((part) =>
  tolerated.every(({ pair, kind }) => !partsOf(pair).includes(part) || kind === "length"),
);

/** No shop builds worse than this, mm and rad: more is a slip of the pen. */
const most: Readonly<Record<"length" | "angle", number>> = { length: 50, angle: 10 * degree };

function each(kind: QuantityKind, words: string): Field<number | null> {
  const own = kind === "angle" ? "angle" : "length";
  return optional(number({ kind: own, low: 0, high: most[own] }, words));
}

const names: Readonly<Record<string, Field<number | null>>> = Object.fromEntries([
  ...partNames.map((part) => [
    part,
    each("length", `How closely ${part} is built, each of its lengths, each way. Left out, as length.`),
  ]),
  ...tolerated.map(({ pair, kind, label }) => [
    pair,
    each(kind, `${label}: how closely it is built, each way. Left out, as its part, else as ${kind}.`),
  ]),
]);

const whole = group(
  {
    length: each("length", "How closely any other length is built, each way. Left out, 1/16 in or 1 mm."),
    angle: each("angle", "How closely any other angle is built, each way. Left out, 0.25 degrees."),
    arms: optional(
      word(
        ["adjustable", "welded"],
        "Whether camber and caster are set again at the arms once all is welded. Left out, adjustable where the linkage can be.",
      ),
    ),
    ...names,
  } as Record<string, Field<unknown>>,
  "How closely the car is built: see rackwright tolerance. What is left out is common practice, which no standard or handbook stands behind.",
);

/** How closely each size of the car is built. */
export const tolerancesField: Field<Tolerances> = {
  ...whole,
  read: (look) => {
    const read = whole.read(look);
    if (read === undefined) return undefined;
    const { length, angle, arms, ...of } = read as Record<string, number | null> & Pick<Tolerances, "arms">;
    return {
      length,
      angle,
      arms,
      of: Object.fromEntries(Object.entries(of).filter((entry): entry is [string, number] => entry[1] !== null)),
    };
  },
};
