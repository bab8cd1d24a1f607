import type { QuantityKind } from "../quantity.ts";
import { inch } from "../units/length.ts";
import { degree } from "../value.ts";
import type { Field } from "./field.ts";
import { either, group, number, optional, otherwise, sound } from "./fields.ts";
import { type LimitName, limitKinds } from "./limits.ts";

/** How much a goal counts: it has to be met; it is worth much; it decides between places that are alike otherwise. */
export const levels = ["must", "want", "nice"] as const;

export type Level = (typeof levels)[number];

/** What a search may aim at, and how a builder says it. */
export interface GoalKind {
  readonly kind: QuantityKind;
  /** A builder's words, without the value. */
  readonly label: string;
  readonly help: string;
  /** Which end a bare number is; "band" has both, and a bare number is both. */
  readonly ends: "least" | "most" | "band";
  /** True where it can be asked for over a part of the lock and not only at its end. */
  readonly overLock: boolean;
  readonly low: number;
  readonly high: number;
  /**
   * So much past its end weighs as one miss, mm, rad or bare: about what a builder would trade for one miss of another
   * goal. Common practice, no source.
   */
  readonly scale: number;
}

const angle = { kind: "angle", low: 0, high: 90 * degree, overLock: false } as const;
const length = { kind: "length", low: 0, high: 200, overLock: false } as const;
const ground = { kind: "length", low: 0, high: 100_000, overLock: false } as const;

function limitGoal(name: LimitName, label: string, scale: number): GoalKind {
  const { kind, bad, help, low, high } = limitKinds[name];
  return { kind, label, help, ends: bad === "under" ? "least" : "most", overLock: false, low, high, scale };
}

/** Every goal that a file or a command may set, by its key. */
export const goalKinds = {
  ackermann: {
    kind: "ratio",
    label: "Ackermann",
    help: "Ackermann percent, both ways: the least and the most, at full lock or over a part of the lock.",
    ends: "band",
    overLock: true,
    low: -500,
    high: 500,
    scale: 10,
  },
  "off-ideal": {
    ...angle,
    label: "Inner wheel off its ideal",
    help: "The most that the inner wheel's turn may be off its ideal, short of it or past it, at full lock or over a part of the lock.",
    ends: "most",
    overLock: true,
    scale: 1 * degree,
  },
  "toe-change": {
    ...length,
    label: "Worst toe change",
    help: "The most that the toe of either wheel may change over the whole travel, wheels straight ahead, as a tape finds it across the tyre.",
    ends: "most",
    scale: inch / 16,
  },
  "toe-change-at-lock": {
    ...length,
    label: "Worst toe change at lock",
    help: "The most that the toe of either wheel may change over the whole travel, steering at either full lock, as a tape finds it across the tyre.",
    ends: "most",
    scale: inch / 8,
  },
  "bounce-steer": {
    ...angle,
    label: "Worst bounce steer",
    help: "The most that both wheels may steer the same way as both go up or down together.",
    ends: "most",
    scale: 0.25 * degree,
  },
  "lock-difference": {
    ...angle,
    label: "Inner locks' difference",
    help: "How far the inner locks may differ, left from right; 0 for equal ones.",
    ends: "most",
    scale: 0.5 * degree,
  },
  "outer-difference": {
    ...angle,
    label: "Outer locks' difference",
    help: "How far the outer locks may differ, left from right.",
    ends: "most",
    scale: 0.5 * degree,
  },
  "circle-difference": {
    ...ground,
    label: "Turning circles' difference",
    help: "How far the turning circles, curb to curb, may differ, left from right.",
    ends: "most",
    scale: 6 * inch,
  },
  "inner-lock": {
    ...angle,
    label: "Smaller inner lock",
    help: "The least that the inner wheel has to turn at full lock, both ways.",
    ends: "least",
    scale: 1 * degree,
  },
  "turning-circle": {
    ...ground,
    // Less is a number in the wrong unit: no car turns within its own track.
    low: 1500,
    label: "Larger turning circle",
    help: "The most that the turning circle may be, curb to curb, both ways.",
    ends: "most",
    scale: 12 * inch,
  },
  "straight-toe": {
    ...angle,
    label: "Toe off its setting",
    help: "How far the toe of either wheel, straight ahead, may be off what the file sets: it moves where rods stay as cut.",
    ends: "most",
    scale: 0.1 * degree,
  },
  "rod-to-arm": limitGoal("rod-to-arm", "Least rod-to-arm angle", 5 * degree),
  "rod-end": limitGoal("rod-end", "Rod-end angle left", 1 * degree),
  engagement: limitGoal("engagement", "Thread engaged, diameters", 0.1),
  adjustment: limitGoal("adjustment", "Rod adjustment left", inch / 8),
  clearance: limitGoal("clearance", "Clearance", inch / 8),
  "shock-stroke": limitGoal("shock-stroke", "Shock's stroke left", inch / 8),
  "shaft-joint": limitGoal("shaft-joint", "Bend of a shaft joint", 2 * degree),
} as const satisfies Readonly<Record<string, GoalKind>>;

export type GoalName = keyof typeof goalKinds;

export const goalNames = Object.keys(goalKinds) as readonly GoalName[];

/**
 * Whether a goal holds whoever sets which: what every car must keep, as against what a shop would expect of a car whose
 * builder asks for nothing.
 */
export function isKept(name: GoalName | "range"): boolean {
  return name === "range" || name === "straight-toe" || Object.hasOwn(limitKinds, name);
}

/** What a goal asks for, mm, rad or bare. `over`: from which share of the lock on, in (0, 1]; 1 is full lock alone. */
export interface Aim {
  readonly least: number | null;
  readonly most: number | null;
  readonly over: number;
}

/** The goals of one level, as a file sets them; what it leaves out is null. */
export type Aims = Readonly<Record<GoalName, Aim | null>>;

/** A bare number as an aim. */
export function aimAt(name: GoalName, value: number): Aim {
  const { ends } = goalKinds[name];
  return { least: ends === "most" ? null : value, most: ends === "least" ? null : value, over: 1 };
}

/** The whole of a lock begins where the outer wheel has turned enough for percents to say something; as a share, so much. */
const leastShare = 0.1;

const over = otherwise(
  number(
    { kind: "ratio", low: 100 * leastShare, high: 100 },
    "From so many percent of the rack's way to full lock on. Left out, at full lock only.",
  ),
  100,
);

function endField(name: GoalName, words: string) {
  const { kind, low, high } = goalKinds[name];
  return optional(number({ kind, low, high }, words));
}

function aimField(name: GoalName): Field<Aim | null> {
  const kind: GoalKind = goalKinds[name];
  const bare = number(kind, kind.help);
  const single: Field<Aim> = {
    ...bare,
    read: (look) => {
      const value = bare.read(look);
      return value === undefined ? undefined : aimAt(name, value);
    },
  };
  if (!kind.overLock) return optional(single);
  const ends =
    kind.ends === "band"
      ? { least: endField(name, "The least there may be."), most: endField(name, "The most there may be.") }
      : { most: endField(name, "The most there may be.") };
  const parts = sound(group({ ...ends, over }, kind.help), (value, written) => {
    const [least, most] = ["least" in value ? value.least : null, value.most];
    if (least === null && most === null) return { key: "most", message: "missing: the least or the most there may be" };
    if (least !== null && most !== null && least > most)
      return {
        key: "least",
        message: `found ${written("least")}, expected no more than the most, ${written("most")}`,
      };
    return null;
  });
  const mapping: Field<Aim> = {
    ...parts,
    read: (look) => {
      const value = parts.read(look);
      if (value === undefined) return undefined;
      return { least: "least" in value ? value.least : null, most: value.most, over: value.over / 100 };
    },
  };
  return optional(either(single, mapping));
}

/** The goals of one level. */
export function aimsField(help: string): Field<Aims> {
  return group(
    Object.fromEntries(goalNames.map((name) => [name, aimField(name)])) as Record<GoalName, Field<Aim | null>>,
    help,
  );
}
