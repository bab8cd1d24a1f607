import type { FigureKind } from "../measures/figure.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { inch } from "../vehicle/units/length.ts";
import { fixed, type Length } from "./words.ts";

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
 * What is typed in inches or degrees is worked with in mm and rad, and the last bits go on the way there and back. A
 * number this near to a decimal of so many digits, as a share of it, is that decimal: 2.7 in comes out as 2.7.
 */
const LAST_BITS = 1e-14;
const TYPED_DIGITS = 12;

function converted(value: number, kind: FigureKind, unit: LengthUnit): number {
  if (kind === "length") return unit === "in" ? value / inch : value;
  if (kind === "angle") return value * DEGREES;
  if (kind === "angle-per-length") return value * DEGREES * (unit === "in" ? inch : 1);
  return value;
}

/** A number of the measures (mm, rad, rad/mm, percent) in the reader's units, not rounded. */
export function inUnits(value: number, kind: FigureKind, unit: LengthUnit): number {
  const own = converted(value, kind, unit);
  const typed = Number(own.toPrecision(TYPED_DIGITS));
  return Math.abs(typed - own) <= LAST_BITS * Math.abs(own) ? typed : own;
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

/** The unit as it stands right behind a number: " in", "°", "°/in", " %". */
function unitBehind(kind: FigureKind, unit: LengthUnit): string {
  if (kind === "angle") return "°";
  if (kind === "angle-per-length") return `°/${unit}`;
  return ` ${unitName(kind, unit)}`;
}

/** A number of the measures with its unit, for a reader who likes lengths written so; "-" where there is none. */
export function figureWords(
  value: number | null | undefined,
  kind: FigureKind,
  unit: LengthUnit,
  length: Length,
): string {
  if (value === null || value === undefined) return "-";
  return kind === "length" ? length(value) : `${written(value, kind, unit)}${unitBehind(kind, unit)}`;
}

/** A number of the measures for a reader, in his units, rounded, without the unit. */
export function written(value: number, kind: FigureKind, unit: LengthUnit): string {
  return fixed(converted(value, kind, unit), DIGITS[unit][kind]);
}
