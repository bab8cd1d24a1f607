import type { FigureKind } from "../measures/figure.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { formatLength } from "../vehicle/units/format.ts";
import { inch } from "../vehicle/units/length.ts";
import { inUnits, unitName } from "./numbers.ts";
import { fixed } from "./words.ts";

/**
 * How many decimals a number bears whose doubt is so much: down to the first digit of the doubt, or the second where the
 * first is a 1, as uncertainties are usually said.
 */
export function decimalsFor(doubt: number): number {
  if (!(doubt > 0)) return 0;
  const power = Math.floor(Math.log10(doubt));
  return Math.max(0, (doubt / 10 ** power < 2 ? 1 : 0) - power);
}

/** A number in the reader's unit with no more decimals than its doubt (mm or rad, two standard deviations) bears. */
export function borne(value: number, doubt: number, kind: FigureKind, unit: LengthUnit): string {
  return fixed(inUnits(value, kind, unit), decimalsFor(inUnits(doubt, kind, unit)));
}

/** "0.19 +- 0.06 in": with its doubt, which 19 of 20 keep within. */
export function withDoubt(value: number, doubt: number, kind: FigureKind, unit: LengthUnit): string {
  return `${borne(value, doubt, kind, unit)} +- ${borne(doubt, doubt, kind, unit)} ${unitName(kind, unit)}`;
}

/** " (3/16 in)": a length as a tape has it, where it is known to an eighth; nothing else. */
export function onTheTape(value: number, doubt: number, unit: LengthUnit): string {
  if (unit !== "in" || doubt > inch / 8) return "";
  const text = formatLength(Math.abs(value), { unit, fraction: doubt < inch / 32 ? 32 : 16 });
  return text === "0" ? "" : ` (${text} in)`;
}
