import type { QuantityKind } from "./quantity.ts";
import { shown } from "./shown.ts";
import { readAngle } from "./units/angle.ts";
import { formatAngle, sayLength } from "./units/format.ts";
import { readLength } from "./units/length.ts";
import { readNumber } from "./units/number.ts";
import type { LengthUnit } from "./words.ts";

/** What a number in a file may be: its kind and its sensible range, mm, rad or bare. */
export interface Range {
  readonly kind: QuantityKind;
  readonly low: number;
  readonly high: number;
}

function limit(value: number, { kind }: Range, units: LengthUnit): string {
  if (kind === "angle") return `${formatAngle(value, 0)} degrees`;
  if (kind === "ratio") return String(value);
  return sayLength(value, units === "in" ? { unit: "in", decimals: 1 } : { unit: "mm" });
}

function valueIn(source: string, kind: QuantityKind, units: LengthUnit): number | { complaint: string } {
  const read =
    kind === "length" ? readLength(source, units) : kind === "angle" ? readAngle(source) : readNumber(source);
  if ("complaint" in read) return read;
  return "mm" in read ? read.mm : "rad" in read ? read.rad : read.number;
}

/** A value as it stands in the file, in quotes unless it is a plain number. */
export function told(source: string): string {
  return /^[-+]?[\d.]{1,20}$/.test(source) ? source : shown(source);
}

/** A text may miss a limit by this much, mm or rad, when it was written as near to it as decimals allow. */
const slack = 1e-8;

/** What a number's text in a file is worth, mm, rad or bare; a complaint where it is none or absurd. */
export function worth(source: string, range: Range, units: LengthUnit): number | { complaint: string } {
  const value = valueIn(source, range.kind, units);
  if (typeof value !== "number") return { complaint: `found ${told(source)}, which is ${value.complaint}` };
  if (value >= range.low - slack && value <= range.high + slack) return value;
  const ends = `${limit(range.low, range, units)} to ${limit(range.high, range, units)}`;
  return { complaint: `found ${told(source)}, expected a value from ${ends}` };
}
