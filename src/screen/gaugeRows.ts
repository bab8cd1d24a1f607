import type { Study } from "../measures/study.ts";
import type { Car, Wheel } from "../vehicle/car.ts";
import { pointNames } from "../vehicle/car-readings/points.ts";
import type { CarReading } from "../vehicle/car-readings/reading.ts";
import { type Gauge, usualTolerance } from "../vehicle/car-readings/tolerances.ts";
import { inputOf } from "../vehicle/car-readings/values.ts";
import { linkageOf } from "../vehicle/linkages.ts";
import { inch } from "../vehicle/units/length.ts";
import { degree } from "../vehicle/value.ts";
import type { LengthUnit } from "../vehicle/words.ts";

/** A reading that can be taken of a built car, without what was read: one number. */
export interface GaugeRow {
  /** What its answer is kept by: "turn left lock right", "bump left -76.2", "camber left". */
  readonly key: string;
  readonly gauge: Gauge;
  /** Which wheel's number it is, of turn plates. */
  readonly wheel: Wheel | null;
  /** The reading with nothing read: its number is 0. */
  readonly blank: CarReading;
}

const wheels: readonly Wheel[] = ["left", "right"];

/** Of what a row's key is made; words between spaces. */
export const keyOf = (...words: readonly (string | number)[]): string => words.join(" ");

const asWheel = (word: string | undefined): Wheel | null => (word === "left" || word === "right" ? word : null);

/** The row of a key, where that is one of this car's. */
export function rowOf(key: string, car: Pick<Car, "form">, units: LengthUnit): GaugeRow | null {
  const [word = "", one, two = "", three, four] = key.split(" ");
  const row = (gauge: Gauge, wheel: Wheel | null, reading: Bare): GaugeRow => ({
    key,
    gauge,
    wheel,
    blank: { ...reading, tolerance: usualTolerance(gauge, units, inputOf({ car })), line: 1 },
  });
  const side = asWheel(one);
  switch (word) {
    case "turn": {
      const wheel = asWheel(two === "lock" ? three : four);
      const at = Number(three);
      if (side === null || wheel === null || (two !== "lock" && !Number.isFinite(at))) return null;
      const read = { left: wheel === "left" ? 0 : null, right: wheel === "right" ? 0 : null };
      if (two === "lock") return row("turn-plates", wheel, { kind: "turn", turn: side, ...read, stood: "lock" });
      if (two === "at") return row("turn-plates", wheel, { kind: "turn", turn: side, ...read, stood: at });
      return row("turn-plates", "right", { kind: "turn", turn: side, left: at, right: 0, stood: null });
    }
    case "bump": {
      const travel = Number(two);
      return side === null || !Number.isFinite(travel)
        ? null
        : row("bump-gauge", null, { kind: "bump", wheel: side, travel, toe: 0 });
    }
    case "toe":
      return row("toe", null, { kind: "toe", value: 0 });
    case "straight-ahead":
      return row("straight-ahead", null, { kind: "straight", value: 0 });
    case "camber":
    case "caster":
      return side === null ? null : row(word, null, { kind: word, wheel: side, value: 0 });
    case "rods":
      return side === null ? null : row("rods", null, { kind: "rod", wheel: side, value: 0 });
    case "between": {
      const known = pointNames(car);
      return one === undefined || !known.includes(one) || !known.includes(two)
        ? null
        : row("lengths", null, { kind: "between", from: one, to: two, value: 0 });
    }
  }
  return null;
}

type Bare = CarReading extends infer R ? (R extends CarReading ? Omit<R, "tolerance" | "line"> : never) : never;

/** The key of a reading that was taken, and its number; one for each wheel of turn plates. */
export function keysOf(reading: CarReading): readonly (readonly [key: string, value: number])[] {
  switch (reading.kind) {
    case "turn": {
      const { turn, stood, left, right } = reading;
      if (stood === null)
        return left === null || right === null ? [] : [[keyOf("turn", turn, "beside", left, "right"), right]];
      const at = stood === "lock" ? "lock" : keyOf("at", stood);
      return wheels.flatMap((wheel) => {
        const value = wheel === "left" ? left : right;
        return value === null ? [] : [[keyOf("turn", turn, at, wheel), value] as const];
      });
    }
    case "bump":
      return [[keyOf("bump", reading.wheel, reading.travel), reading.toe]];
    case "toe":
      return [["toe", reading.value]];
    case "straight":
      return [["straight-ahead", reading.value]];
    case "camber":
    case "caster":
      return [[keyOf(reading.kind, reading.wheel), reading.value]];
    case "rod":
      return [[keyOf("rods", reading.wheel), reading.value]];
    case "between":
      return [[keyOf("between", reading.from, reading.to), reading.value]];
  }
}

/** To a mark that is easily set, at most the whole: quarter inches, 5 mm, 5 degrees. */
function onMark(value: number, mark: number): number {
  return Math.max(Math.min(value, mark), Math.floor(value / mark + 1e-9) * mark);
}

/** What a builder reads of this car, in the order of a walk around it: what tells most, each at places easily set. */
export function usualKeys(
  { car, inputKind, inputTravel, inputLeftTurns, wheelTravel }: Study,
  units: LengthUnit,
): readonly string[] {
  const mark = inputKind === "column" ? 5 * degree : units === "in" ? inch / 4 : 5;
  const turns = wheels.flatMap((turn) => {
    const isPlus = turn === inputLeftTurns;
    const half = onMark((isPlus ? inputTravel.left : inputTravel.right) / 2, mark) * (isPlus ? 1 : -1);
    return [keyOf("at", half), "lock"].flatMap((at) => wheels.map((wheel) => keyOf("turn", turn, at, wheel)));
  });
  const travelMark = units === "in" ? inch / 2 : 10;
  const hasTravel = linkageOf(car.form.linkage).noTravel === undefined;
  const travels = hasTravel
    ? [
        -wheelTravel.droop,
        -onMark(wheelTravel.droop / 2, travelMark),
        onMark(wheelTravel.bump / 2, travelMark),
        wheelTravel.bump,
      ]
    : [];
  const points = pointNames(car);
  const tapes = wheels.flatMap((wheel) =>
    ["lower-arm.joint", "upper-arm.joint"].flatMap((end) => {
      const [from, to] = [`${wheel}.tie-rod.outer`, `${wheel}.${end}`];
      return points.includes(from) && points.includes(to) ? [keyOf("between", from, to)] : [];
    }),
  );
  const across = points.includes("left.tie-rod.outer")
    ? [keyOf("between", "left.tie-rod.outer", "right.tie-rod.outer")]
    : [];
  return [
    ...turns,
    ...wheels.flatMap((wheel) => travels.filter((at) => at !== 0).map((at) => keyOf("bump", wheel, at))),
    "toe",
    ...["camber", "caster", "rods"].flatMap((gauge) => wheels.map((wheel) => keyOf(gauge, wheel))),
    "straight-ahead",
    ...tapes,
    ...across,
  ];
}
