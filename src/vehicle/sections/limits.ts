import type { QuantityKind } from "../quantity.ts";
import { inch } from "../units/length.ts";
import { degree } from "../value.ts";
import type { Field } from "./field.ts";
import { group, number, optional, sound } from "./fields.ts";

/** A limit that a check holds a value against: close to it past `close`, broken past `broken`; mm, rad or bare. */
export interface Limit {
  readonly close: number;
  readonly broken: number;
}

/** A limit that a car file may set, and what it is where the file says nothing: common practice, no published source. */
export interface LimitKind extends Limit {
  readonly kind: QuantityKind;
  /** Which side of it is bad. */
  readonly bad: "under" | "over";
  readonly help: string;
  readonly low: number;
  readonly high: number;
}

const angle = { kind: "angle", low: 0, high: 90 * degree } as const;
const gap = { kind: "length", low: -100, high: 500 } as const;

/** Every limit, by its key in the file. All defaults are common practice: no standard or handbook is their source. */
export const limitKinds = {
  "rod-to-arm": {
    ...angle,
    bad: "under",
    close: 30 * degree,
    broken: 20 * degree,
    help: "Least angle between tie rod and steering arm, over all steering and travel.",
  },
  "rod-end": {
    ...angle,
    bad: "under",
    close: 3 * degree,
    broken: 0,
    help: "What must be left of a rod end's rated angle.",
  },
  engagement: {
    kind: "ratio",
    low: 0.2,
    high: 5,
    bad: "under",
    close: 1.5,
    broken: 1.5,
    help: "Least thread engagement, in diameters of the thread.",
  },
  adjustment: {
    kind: "length",
    low: 0,
    high: 100,
    bad: "under",
    close: inch / 4,
    broken: 0,
    help: "Least adjustment left each way at a tie rod.",
  },
  clearance: {
    ...gap,
    bad: "under",
    close: inch / 2,
    broken: inch / 4,
    help: "Least distance between parts that move past each other.",
  },
  "shock-stroke": {
    kind: "length",
    low: 0,
    high: 200,
    bad: "under",
    close: inch / 4,
    broken: 0,
    help: "What must be left of a shock's stroke, bump and droop, over all steering and travel.",
  },
  "shaft-joint": {
    ...angle,
    bad: "over",
    close: 30 * degree,
    broken: 35 * degree,
    help: "Bend of a universal joint of the steering shaft.",
  },
} as const satisfies Readonly<Record<string, LimitKind>>;

export type LimitName = keyof typeof limitKinds;

/** The limits that a file sets; what it leaves out is null. */
export type Limits = Readonly<
  Record<LimitName, { readonly close: number | null; readonly broken: number | null } | null>
>;

function limitField(name: LimitName) {
  const { kind, low, high, bad, help } = limitKinds[name];
  const end = (words: string) => optional(number({ kind, low, high }, `${words} Left out, common practice.`));
  return optional(
    sound(
      group(
        {
          close: end(`Counts as close ${bad} this.`),
          broken: end(`Counts as broken ${bad} this.`),
        },
        `${help} Left out, common practice.`,
      ),
      ({ close, broken }, written) => {
        if (close === null || broken === null || (bad === "under" ? close >= broken : close <= broken)) return null;
        const last = written("broken");
        const message = `found ${written("close")}, expected ${bad === "under" ? "more" : "less"} than ${last}: what is broken ${bad} ${last} is close before that`;
        return { key: "close", message };
      },
    ),
  );
}

const names = Object.keys(limitKinds) as LimitName[];

/** What the checks hold values against. */
export const limitsField: Field<Limits> = group(
  Object.fromEntries(names.map((name) => [name, limitField(name)])) as Record<LimitName, ReturnType<typeof limitField>>,
  "What the checks hold values against. Every limit that is left out is common practice, which no standard or handbook stands behind.",
);

/** A limit of a car: its file's own where that has one, else common practice, and which of the two it is. */
export function limitOf(limits: Limits | null, name: LimitName): Limit & { readonly from: "file" | "common practice" } {
  const own = limits?.[name] ?? null;
  const usual: LimitKind = limitKinds[name];
  const said = { close: own?.close ?? null, broken: own?.broken ?? null };
  // A level given alone must not stand on the wrong side of the other one's default.
  const [first, last] = usual.bad === "over" ? [Math.min, Math.max] : [Math.max, Math.min];
  return {
    close: said.close ?? (said.broken === null ? usual.close : first(usual.close, said.broken)),
    broken: said.broken ?? (said.close === null ? usual.broken : last(usual.broken, said.close)),
    from: said.close === null && said.broken === null ? "common practice" : "file",
  };
}
