import type { FigureKind } from "../measures/figure.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { inch } from "../vehicle/units/length.ts";
import { fixed } from "./words.ts";

// Numbers for machines are not rounded, numbers for readers are; both leave millimetres and radians here.

/** What a report's numbers are in, as JSON says it. */
export type Units = {
  readonly length: LengthUnit;
  readonly angle: "deg";
};

export function unitsOf(length: LengthUnit): Units {
  return { length, angle: "deg" };
}

const DEGREES = 180 / Math.PI;

/**
 * A length in the reader's unit. An inch is 127/5 mm exactly: this way the inches of nearly every length that was typed
 * in inches come out as they were typed, which dividing by 25.4 does not do.
 */
function lengthInUnits(mm: number, unit: LengthUnit): number {
  return unit === "in" ? (mm * 5) / 127 : mm;
}

/** A number of the measures (mm, rad, rad/mm, percent) in the reader's units, not rounded. */
export function inUnits(value: number, kind: FigureKind, unit: LengthUnit): number {
  if (kind === "length") return lengthInUnits(value, unit);
  if (kind === "angle") return value * DEGREES;
  if (kind === "angle-per-length") return value * DEGREES * (unit === "in" ? inch : 1);
  return value;
}

/** The unit's name as a heading: "in", "deg", "deg/in", "%". */
export function unitName(kind: FigureKind, unit: LengthUnit): string {
  if (kind === "length") return unit;
  if (kind === "angle") return "deg";
  if (kind === "angle-per-length") return `deg/${unit}`;
  return "%";
}

const DIGITS: Readonly<Record<LengthUnit, Readonly<Record<FigureKind, number>>>> = {
  in: { length: 3, angle: 2, "angle-per-length": 3, percent: 1 },
  mm: { length: 1, angle: 2, "angle-per-length": 4, percent: 1 },
};

/** A number of the measures for a reader, in his units, rounded, without the unit. */
export function written(value: number, kind: FigureKind, unit: LengthUnit): string {
  return fixed(inUnits(value, kind, unit), DIGITS[unit][kind]);
}
