import { quantities } from "../quantities.ts";
import type { Quantity } from "../quantity.ts";
import type { Field } from "./field.ts";
import { group, number, optional, sound, word } from "./fields.ts";
import { type Aim, type Aims, aimsField, type GoalName, goalNames, type Level, levels } from "./goals.ts";

/** How the two sides of a quantity move: by the same amount, each by its own, or one side alone. */
export const sideWays = ["alike", "each", "left", "right"] as const;

export type SideWay = (typeof sideWays)[number];

/** Where one quantity may be moved to, mm or rad: from one value to another, or so far each way from where it is. */
export interface Room {
  readonly from: number | null;
  readonly to: number | null;
  readonly within: number | null;
  readonly sides: SideWay | null;
}

/** What a search aims at and what it may move, as a file says it. */
export interface FindSection {
  readonly must: Aims | null;
  readonly want: Aims | null;
  readonly nice: Aims | null;
  /** By a quantity's pair. */
  readonly move: Readonly<Record<string, Room | null>> | null;
  readonly rods: "follow" | "keep" | null;
  /** mm; angles go by half degrees. */
  readonly step: number | null;
}

/** A goal that a file sets. */
export interface SetAim extends Aim {
  readonly name: GoalName;
  readonly level: Level;
}

/** The goals that a file's own part sets, the musts first. */
export function aimsOf(find: FindSection | null): readonly SetAim[] {
  return levels.flatMap((level) =>
    goalNames.flatMap((name): readonly SetAim[] => {
      const aim = find?.[level]?.[name] ?? null;
      return aim === null ? [] : [{ ...aim, name, level }];
    }),
  );
}

/** Every quantity that a search may move, one of each pair, whatever the front end. */
export const movable: readonly Quantity[] = [
  ...new Map(
    quantities.filter(({ roles }) => roles.includes("find")).map((each) => [each.pair, each] as const),
  ).values(),
];

function roomField({ kind, low, high, label }: Quantity): Field<Room | null> {
  const place = (words: string) => optional(number({ kind, low, high }, words));
  return optional(
    sound(
      group(
        {
          from: place("The least value it may have, as the file itself would say it."),
          to: place("The most it may have."),
          within: optional(
            number({ kind, low: 0, high: high - low }, "How far it may move each way from where it is."),
          ),
          sides: optional(word(sideWays, "Both sides alike, each by itself, or one side alone. Left out, both alike.")),
        },
        `${label}: the room that there is for it.`,
      ),
      ({ from, to, within }, written) => {
        if (within !== null)
          return from === null && to === null ? null : { key: "within", message: "give either within, or from and to" };
        if (from === null || to === null)
          return { key: from === null ? "from" : "to", message: "missing: both from and to, or within alone" };
        if (from < to) return null;
        return { key: "from", message: `found ${written("from")}, expected less than to, ${written("to")}` };
      },
    ),
  );
}

/** What `rackwright find` aims at and may move. */
export function findField(): Field<FindSection> {
  return group(
    {
      must: optional(aimsField("Goals that have to be met.")),
      want: optional(aimsField("Goals that are worth much.")),
      nice: optional(aimsField("Goals that decide between places that are alike otherwise.")),
      move: optional(
        group(
          Object.fromEntries(movable.map((each) => [each.pair, roomField(each)])) as Record<string, Field<Room | null>>,
          "What may be moved, and the room there is for it.",
        ),
      ),
      rods: optional(
        word(
          ["follow", "keep"],
          "Whether the tie rods are cut to fit wherever things are moved, or keep their length. Left out: as cut where the file gives lengths.",
        ),
      ),
      step: optional(
        number(
          { kind: "length", low: 0.1, high: 50 },
          "What the builder can measure and weld to: moves are whole steps of this. Left out, 1/16 in or 1 mm.",
        ),
      ),
    },
    "What to search for, and what may be moved for it: see rackwright find.",
  );
}
