import type { Car, Wheel } from "../../vehicle/car.ts";
import type { Values } from "../../vehicle/edits/values.ts";
import { indexOf } from "../../vehicle/quantities.ts";

// What a map of a tab's plane is, apart from how it is worked out: the screen knows this before any map is asked for.

/** The plane in which tie-rod tabs are moved: out from the middle of the car, and ahead or up. */
export interface TabPlane {
  readonly wheels: readonly Wheel[];
  readonly plane: "ahead" | "up";
}

/** Why a tab cannot be at a place, the first that holds. */
export const noGos = ["does not close", "dead point", "rim", "tyre", "shock", "arm", "frame tube"] as const;

export type NoGo = (typeof noGos)[number];

/** A car with its tabs at one place. */
export interface TabCell {
  /** Empty where the front end does not close over its whole range: nothing could then be said of the whole. */
  readonly values: readonly (number | null)[];
  readonly noGo: NoGo | null;
}

/** A map as far as it is worked out. */
export interface TabMap {
  /** Cells in rows; those that are not worked out yet are undefined. */
  readonly cells: readonly (TabCell | undefined)[];
  /** What the clearances lack, in the file's own keys. */
  readonly lacks: readonly string[];
}

/** The tabs' own numbers so far from where they stand, mm: out, and ahead or up. */
export function tabsAt({ numbers }: Car, { wheels, plane }: TabPlane, out: number, other: number): Values {
  return Object.fromEntries(
    wheels.flatMap((wheel) =>
      [["out", out] as const, [plane, other] as const].map(([way, by]) => {
        const id = `${wheel}.tie-rod.outer.${way}`;
        return [id, numbers[indexOf(id)] + by];
      }),
    ),
  );
}

/** A cell that stands for those beside it until they are worked out themselves. */
export function standIn(at: number, columns: number): number {
  const [row, column] = [Math.floor(at / columns), at % columns];
  return (row - (row % 2)) * columns + column - (column % 2);
}
