import type { LengthUnit, Wheel } from "../../vehicle/car.ts";
import { sayLength } from "../../vehicle/units/format.ts";
import { type Block, type Cell, tableOf } from "../paper/paper.ts";
import { degrees, type Length } from "../words.ts";

/** How numbers stand on a sheet. */
export interface Writing {
  readonly unit: LengthUnit;
  /** As a tape is read: inches to 1/32, mm to a tenth. */
  readonly length: Length;
  /** What steel is cut to: a fraction with the decimals that it hides, or mm. */
  readonly cut: Length;
}

/** How a sheet is written in a unit. */
export function writingIn(unit: LengthUnit): Writing {
  const length: Length = (mm) => sayLength(mm, unit === "in" ? { unit, fraction: 32 } : { unit });
  const decimals = (mm: number) => sayLength(mm, { unit: "in", decimals: 3 }).replace(" in", "");
  return { unit, length, cut: (mm) => (unit === "in" ? `${length(mm)} (${decimals(mm)})` : length(mm)) };
}

/** A length with the way it goes: "3 in ahead", "1/8 in lower"; "level" and the like where it is nothing. */
export function wayWords(mm: number, more: string, less: string, length: Length): string {
  const size = length(Math.abs(mm));
  return size === length(0) ? size : `${size} ${mm > 0 ? more : less}`;
}

/** An angle with the way it leans: "7.3° back". */
export function leanWords(angle: number, more: string, less: string): string {
  const size = degrees(Math.abs(angle));
  return size === degrees(0) ? size : `${size} ${angle > 0 ? more : less}`;
}

export const wheels: readonly Wheel[] = ["left", "right"];

/** One line of a table of both sides; null is to be filled in. */
export interface SideRow {
  readonly label: string;
  readonly of: (wheel: Wheel) => Cell;
}

/** Left and right beside each other; one column where every line of them reads alike. */
export function sideTable(head: string, rows: readonly SideRow[]): Block {
  const both = rows.map(({ label, of }) => [label, of("left"), of("right")] as const);
  if (both.every(([, left, right]) => left === right && left !== null))
    return tableOf(
      [head, "each side"],
      both.map(([label, left]) => [label, left]),
      [0, 1],
    );
  return tableOf([head, "left", "right"], both, [0, 1, 2]);
}
