import type { Car } from "../../vehicle/car.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import type { Room, SideWay } from "../../vehicle/sections/find.ts";
import { startingValues } from "../../vehicle/starting/marks.ts";
import { isTurnStop, leastTurn } from "../../vehicle/stops.ts";
import { inch } from "../../vehicle/units/length.ts";
import { degree } from "../../vehicle/value.ts";
import type { Box } from "../search/problem.ts";
import type { Grid } from "../search/snap.ts";

/** Something that a search moves: one quantity, or both sides of it by the same amount. mm or rad. */
export interface Variable {
  readonly pair: string;
  readonly label: string;
  readonly kind: "length" | "angle";
  /** Which sides go with it; null where the car has only one of it. */
  readonly sides: "both" | "left" | "right" | null;
  readonly quantities: readonly Quantity[];
  /** How far it may be moved from where it is. */
  readonly low: number;
  readonly high: number;
  readonly step: number;
  /** A move that puts it on a whole step of a tape: less than a step, none where it is on one or its sides differ. */
  readonly origin: number;
}

/** What is wrong with a room: the quantity's pair, and why, in a builder's words. */
export interface NoRoom {
  readonly pair: string;
  readonly why: string;
}

/** Rooms by the pairs of their quantities. */
export type Rooms = Readonly<Record<string, Room>>;

/** What a shop can measure and weld to: 1/16 in or 1 mm. */
export function usualStep(car: Pick<Car, "form">): number {
  return car.form.units === "in" ? inch / 16 : 1;
}

/** Angles are set by half degrees: what an angle finder shows. */
const ANGLE_STEP = 0.5 * degree;

/** What a shop would move first: the tab, as far as an upright leaves room for. */
export function usualRooms({ form }: Pick<Car, "form">): Rooms {
  const within = form.units === "in" ? 1.5 * inch : 40;
  const room: Room = { from: null, to: null, within, sides: "alike" };
  return Object.fromEntries(["ahead", "out", "up"].map((key) => [`tie-rod.outer.${key}`, room]));
}

/**
 * Whether the tie rods of a car are cut to fit wherever a search moves things, or keep their length: as the file says, else
 * as they are.
 */
export function rodsOf({ sections, form }: Pick<Car, "sections" | "form">): "follow" | "keep" {
  return sections.find?.rods ?? (form.rods.left === "cut" || form.rods.right === "cut" ? "keep" : "follow");
}

/** The rooms that a file gives. */
export function roomsOf({ sections }: Pick<Car, "sections">): Rooms {
  const given = Object.entries(sections.find?.move ?? {}).flatMap(([pair, room]) =>
    room === null ? [] : [[pair, room]],
  );
  return Object.fromEntries(given);
}

/** The quantities that move as one, for each way of moving sides. */
function together(of: readonly Quantity[], sides: SideWay): readonly (readonly Quantity[])[] {
  if (of.length < 2 || sides === "alike") return [of];
  return sides === "each" ? of.map((each) => [each]) : [of.filter(({ wheel }) => wheel === sides)];
}

/** Why quantities cannot be moved from where they are: they are nowhere, or nobody knows where; null where they can. */
function whyUnfit(car: Car, of: readonly Quantity[]): string | null {
  if (of.some((each) => isTurnStop(each) && car.numbers[each.index] === 0))
    return "the car has no such stop on a side that is to move: give one in the file first";
  const guessed = startingValues(car);
  const isGuess = ({ id, path, roles }: Quantity) =>
    path[0] === "front" && !roles.includes("adjust") && guessed.has(id);
  return of.some(isGuess) ? "where it is now is a starting value that nobody has measured: measure it first" : null;
}

function variableOf(car: Car, of: readonly Quantity[], room: Room, step: number): Variable | NoRoom {
  const [{ pair, label, kind, wheel }] = of as readonly [Quantity, ...Quantity[]];
  if (kind === "ratio") return { pair, why: "it is no length and no angle" };
  const unfit = whyUnfit(car, of);
  if (unfit !== null) return { pair, why: unfit };
  const least = (each: Quantity) => (isTurnStop(each) ? Math.max(leastTurn, each.low) : each.low);
  const low = (each: Quantity) => Math.max(room.from ?? car.numbers[each.index] - (room.within ?? 0), least(each));
  const high = (each: Quantity) => Math.min(room.to ?? car.numbers[each.index] + (room.within ?? 0), each.high);
  const own = kind === "angle" ? ANGLE_STEP : step;
  const from = Math.max(...of.map((each) => low(each) - car.numbers[each.index]));
  const to = Math.min(...of.map((each) => high(each) - car.numbers[each.index]));
  const sides = wheel === null ? null : of.length === 2 ? "both" : wheel;
  const origin = originOf(
    of.map((each) => car.numbers[each.index]),
    own,
  );
  if (counts(to - origin, own, Math.floor) < counts(from - origin, own, Math.ceil))
    return {
      pair,
      why:
        from > to
          ? "its left and right side are too far apart to move alike within it: give each its own (sides: each)"
          : "the room is narrower than one step",
    };
  return { pair, label, kind, sides, quantities: of, low: from, high: to, step: own, origin };
}

/**
 * How far values are from the nearest whole step, so that what is surveyed to hundredths lands on a tape's own marks; nothing
 * where they are on one but for the last bits, or not all equally far from theirs.
 */
function originOf(values: readonly number[], step: number): number {
  const offs = values.map((value) => Math.round(value / step) * step - value);
  const [first = 0] = offs;
  const alike = offs.every((off) => Math.abs(off - first) < 1e-6 * step);
  return alike && Math.abs(first) > 1e-6 * step ? first : 0;
}

/** Whole steps to a place, rounded so; a place that is a whole number of steps but for the last bits is one. */
function counts(place: number, step: number, round: (value: number) => number): number {
  const whole = Math.round(place / step);
  return Math.abs(place / step - whole) < 1e-6 ? whole : round(place / step);
}

/** What a search may move on a car, or what is wrong with the rooms that it was given. */
export function variablesOf(car: Car, rooms: Rooms, step: number): readonly Variable[] | NoRoom {
  const has = quantitiesOf(car.form);
  const variables: Variable[] = [];
  for (const [pair, room] of Object.entries(rooms)) {
    const of = has.filter((each) => each.pair === pair);
    if (of.length === 0) return { pair, why: "this car has none" };
    for (const each of together(of, room.sides ?? "alike")) {
      if (each.length === 0) return { pair, why: `it has no ${room.sides} side` };
      const variable = variableOf(car, each, room, step);
      if ("why" in variable) return variable;
      variables.push(variable);
    }
  }
  return variables;
}

/** The box of the moves, in the order of the variables. */
export function boxOf(variables: readonly Variable[]): Box {
  return {
    low: Float64Array.from(variables, ({ low }) => low),
    high: Float64Array.from(variables, ({ high }) => high),
  };
}

/** The moves to places that are whole steps, within the same box. */
export function gridOf(variables: readonly Variable[]): Grid {
  return {
    step: Float64Array.from(variables, ({ step }) => step),
    origin: Float64Array.from(variables, ({ origin }) => origin),
    first: Int32Array.from(variables, ({ low, step, origin }) => counts(low - origin, step, Math.ceil)),
    last: Int32Array.from(variables, ({ high, step, origin }) => counts(high - origin, step, Math.floor)),
  };
}
