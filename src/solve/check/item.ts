import type { RangePlace } from "../../measures/range/watched.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type Limit, type LimitName, limitKinds, limitOf } from "../../vehicle/sections/limits.ts";

/** How a check came out. "not given": the file does not say what it needs. */
export type State = "pass" | "close" | "broken" | "not given";

/**
 * What a number of a check is: mm, mm that a tape is too coarse for, mm of wheel travel (bump positive), rad, a bare number, N/mm, or a direction as shares
 * ahead, out and up.
 */
export type Fact = { readonly id: string; readonly label: string } & (
  | {
      readonly kind: "length" | "fine length" | "travel" | "angle" | "ratio" | "rate" | "diameters";
      readonly value: number | null;
    }
  | { readonly kind: "direction"; readonly value: readonly [ahead: number, out: number, up: number] }
);

/** The parts of a check, in the order they are told. */
export const parts = [
  "sizes",
  "steering",
  "rod ends",
  "threads",
  "clearance",
  "steering shaft",
  "shocks",
  "targets",
  "size",
] as const;

export type Part = (typeof parts)[number];

/** Both sides of a thing of which the worse one is told: its name without a side, and what the other one comes to. */
export interface Sides {
  readonly name: string;
  /** Null where the file does not say enough of the other one, or where it closes nowhere. */
  readonly other: number | null;
  readonly alike: boolean;
}

/** One thing that was checked. */
export interface CheckItem {
  /** Unique, without spaces. */
  readonly id: string;
  readonly part: Part;
  /** A builder's words, side included. */
  readonly label: string;
  /** Of what is told of the worse side alone; null of all else. */
  readonly sides: Sides | null;
  readonly state: State;
  readonly kind: "length" | "angle" | "ratio" | "percent" | "diameters";
  readonly value: number | null;
  readonly limit:
    | (Limit & { readonly bad: "under" | "over"; readonly from: "file" | "common practice" | "the parts" })
    | null;
  /** The wheel that it is about, or the worse of both. */
  readonly wheel: Wheel | null;
  readonly where: RangePlace | null;
  /** What else there is to know, numbers only. */
  readonly facts: readonly Fact[];
  /** What to beware of, and for what is not given the keys that the file lacks. */
  readonly cautions: readonly string[];
}

const wheels: readonly Wheel[] = ["left", "right"];

/** "Left" or "Right", as a line begins. */
export function upperSide(wheel: Wheel): string {
  return wheel === "left" ? "Left" : "Right";
}

/** Sides that are mirrored read the same to rounding, mm or rad. */
const ALIKE = 1e-6;

/** Both sides of a thing, of which the worse comes to a value and the other to another. */
export function sidesOf(name: string, value: number | null, other: number | null): Sides {
  return { name, other, alike: value !== null && other !== null && Math.abs(value - other) < ALIKE };
}

/** What the other side comes to, where it comes to something else. */
export function otherFacts(wheel: Wheel, { other, alike }: Sides, kind: "length" | "angle"): readonly Fact[] {
  if (alike || other === null) return [];
  return [{ id: "otherSide", label: `${wheel === "left" ? "right" : "left"} side`, kind, value: other }];
}

/** How a value stands against a limit. */
export function stateOf(value: number | null, limit: Limit & { readonly bad: "under" | "over" }): State {
  if (value === null) return "not given";
  const past = (end: number) => (limit.bad === "under" ? value < end : value > end);
  if (past(limit.broken)) return "broken";
  return past(limit.close) ? "close" : "pass";
}

/** What an item says beside its value, its state and its limit. */
type Rest = Omit<CheckItem, "state" | "value" | "kind" | "limit" | "sides">;

/** An item that a limit of the car decides. */
export function limited(
  study: Study,
  name: LimitName,
  value: number | null,
  rest: Rest,
  sides: Sides | null = null,
): CheckItem {
  const limit = { ...limitOf(study.car.sections.limits, name), bad: limitKinds[name].bad };
  const kind = name === "engagement" ? "diameters" : limitKinds[name].kind;
  return { ...rest, sides, kind, value, limit, state: stateOf(value, limit) };
}

/** An item that is so or not, without a value. */
export function stated(
  { id, part, label }: Pick<CheckItem, "id" | "part" | "label">,
  state: State,
  cautions: readonly string[] = [],
): CheckItem {
  return {
    id,
    part,
    label,
    sides: null,
    state,
    kind: "length",
    value: null,
    limit: null,
    wheel: null,
    where: null,
    facts: [],
    cautions,
  };
}

/** An item that the file says too little for; `lacks` are the file's own keys. */
export function notGiven(
  part: Part,
  label: string,
  lacks: readonly string[],
  id = `${part.replace(" ", "-")}.not-given`,
): CheckItem {
  return stated({ id, part, label }, "not given", [`Needs in the file: ${lacks.join("; ")}.`]);
}

/**
 * The items of a section that each side has its own of: one "not given" where neither has, and one for the side that has
 * none where the other does.
 */
export function ofSides<T>(
  part: Part,
  label: string,
  section: string,
  given: (wheel: Wheel) => T | null,
  itemsOf: (wheel: Wheel, worth: T) => readonly CheckItem[],
): readonly CheckItem[] {
  const sides = wheels.map((wheel) => ({ wheel, worth: given(wheel) }));
  if (sides.every(({ worth }) => worth === null)) return [notGiven(part, label, [section])];
  return sides.flatMap(({ wheel, worth }) =>
    worth === null
      ? [notGiven(part, `${label}, ${wheel} side`, [`${section}: ${wheel}`], `${section}.not-given.${wheel}`)]
      : itemsOf(wheel, worth),
  );
}
