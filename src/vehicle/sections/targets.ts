import type { QuantityKind } from "../quantity.ts";
import { inch } from "../units/length.ts";
import { degree } from "../value.ts";
import type { Field } from "./field.ts";
import { group, number, optional } from "./fields.ts";

/** Levels of a target: doubtful past `warn`, bad past `bad`; mm, rad or bare. */
export interface Target {
  readonly warn: number;
  readonly bad: number;
}

/** A target that a car file may set, and what it is where the file says nothing: common practice, no published source. */
export interface TargetKind extends Target {
  readonly kind: QuantityKind;
  /** Which side of its levels is bad. */
  readonly wrong: "under" | "over";
  readonly help: string;
  readonly low: number;
  readonly high: number;
}

const angle = { kind: "angle", low: 0, high: 90 * degree } as const;
const percent = { kind: "ratio", low: -500, high: 500 } as const;

/** Every target, by its key in the file. All defaults are common practice: no standard or handbook is their source. */
export const targetKinds = {
  "lock-difference": {
    ...angle,
    wrong: "over",
    warn: 1 * degree,
    bad: 3 * degree,
    help: "How far the inner locks may differ, left from right.",
  },
  "ackermann-least": {
    ...percent,
    wrong: "under",
    warn: 40,
    bad: 0,
    help: "Least Ackermann at full lock, percent: less scrubs in tight turns.",
  },
  "ackermann-most": {
    ...percent,
    wrong: "over",
    warn: 120,
    bad: 160,
    help: "Most Ackermann at full lock, percent.",
  },
  "toe-change": {
    kind: "length",
    low: 0,
    high: 200,
    wrong: "over",
    warn: inch / 8,
    bad: inch / 2,
    help: "Worst toe change over the whole travel, as a tape finds it across the tyre.",
  },
  "bounce-steer": {
    ...angle,
    wrong: "over",
    warn: 0.5 * degree,
    bad: 1.5 * degree,
    help: "How far both wheels may steer the same way as both go up or down together.",
  },
} as const satisfies Readonly<Record<string, TargetKind>>;

export type TargetName = keyof typeof targetKinds;

/** The targets that a file sets; what it leaves out is null. */
export type Targets = Readonly<
  Record<TargetName, { readonly warn: number | null; readonly bad: number | null } | null>
>;

function targetField(name: TargetName) {
  const { kind, low, high, wrong, help } = targetKinds[name];
  const level = (words: string) => optional(number({ kind, low, high }, `${words} Left out, common practice.`));
  return optional(
    group(
      { warn: level(`Counts as doubtful ${wrong} this.`), bad: level(`Counts as bad ${wrong} this.`) },
      `${help} Left out, common practice.`,
    ),
  );
}

/** Every target's name, in the order of the list. */
export const targetNames = Object.keys(targetKinds) as readonly TargetName[];

/** What the screen's gauges show as bands. */
export const targetsField: Field<Targets> = group(
  Object.fromEntries(targetNames.map((name) => [name, targetField(name)])) as Record<
    TargetName,
    ReturnType<typeof targetField>
  >,
  "What the builder aims at: levels that the screen shows on its gauges. Every level that is left out is common practice, which no standard or handbook stands behind.",
);

/** A target of a car: its file's own levels where that has them, else common practice, and which of the two they are. */
export function targetOf(
  targets: Targets | null,
  name: TargetName,
): Target & Pick<TargetKind, "wrong"> & { readonly from: "file" | "common practice" } {
  const own = targets?.[name] ?? null;
  const { warn, bad, wrong } = targetKinds[name];
  const said = { warn: own?.warn ?? null, bad: own?.bad ?? null };
  // A level given alone must not stand on the wrong side of the other one's default.
  const [first, last] = wrong === "over" ? [Math.min, Math.max] : [Math.max, Math.min];
  return {
    warn: said.warn ?? (said.bad === null ? warn : first(warn, said.bad)),
    bad: said.bad ?? (said.warn === null ? bad : last(bad, said.warn)),
    wrong,
    from: said.warn === null && said.bad === null ? "common practice" : "file",
  };
}

/** How a value stands to a target: in its aim, past its first level, or past its last. */
export type Standing = "good" | "doubtful" | "bad";

/** How a value, in the target's own unit (its size, where its sign does not matter), stands to a target. */
export function standingTo({ warn, bad, wrong }: Target & Pick<TargetKind, "wrong">, value: number): Standing {
  const past = (level: number) => (wrong === "over" ? value > level : value < level);
  return past(bad) ? "bad" : past(warn) ? "doubtful" : "good";
}
