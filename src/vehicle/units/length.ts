import type { LengthUnit } from "../words.ts";
import { readEntry } from "./entry.ts";
import { type LengthStyle, sayLength } from "./format.ts";
import { decimal, type Fraction, toNumber, whole } from "./fraction.ts";
import type { Units } from "./literal.ts";

/** One inch, mm, exactly (international yard and pound agreement of 1959). */
export const inch = 25.4;

const exactInch = decimal("25.4");
const foot = decimal("304.8");
const mm = whole(1);

const sizes = new Map<string, Fraction>([
  ...["in", "inch", "inches", '"', "''"].map((word) => [word, exactInch] as const),
  ...["ft", "foot", "feet", "'"].map((word) => [word, foot] as const),
  ...["mm", "millimeter", "millimeters", "millimetre", "millimetres"].map((word) => [word, mm] as const),
  ...["cm", "centimeter", "centimeters", "centimetre", "centimetres"].map((word) => [word, whole(10)] as const),
  ...["m", "meter", "meters", "metre", "metres"].map((word) => [word, whole(1000)] as const),
]);

const units: Units = {
  sizes,
  compound: { big: new Set(["ft", "foot", "feet", "'"]), small: new Set(["in", "inch", "inches", '"', "''"]) },
  onTape: true,
};

/** How a length was read back to the builder. */
export interface ReadLength {
  readonly mm: number;
  /** The value read, in the builder's own unit and in the other one. */
  readonly echo: string;
}

function own(unit: LengthUnit): Fraction {
  return unit === "in" ? exactInch : mm;
}

/** A length as both a builder in inches and one in mm would say it, the file's own unit first. */
function echoOf(value: number, unit: LengthUnit): string {
  const styles: readonly LengthStyle[] = [{ unit: "in", exact: true }, { unit: "mm" }];
  const [inches, metric] = styles.map((style) => sayLength(value, style));
  return unit === "in" ? `${inches} = ${metric}` : `${metric} = ${inches}`;
}

/**
 * A plain decimal in whole thousandths at most, worked out in one exact product and one rounding, which gives the same
 * double as the exact way at a tenth of its cost; null for anything else. Nearly all lengths in files are such.
 */
function plainLength(text: string, unit: LengthUnit): number | null {
  const found = /^(-?)(\d{1,9})(?:\.(\d{1,3}))?$/.exec(text);
  if (found === null) return null;
  const [, sign, before = "", after = ""] = found;
  const size = (Number(before + after) * (unit === "in" ? 254 : 10)) / 10 ** (after.length + 1);
  return sign === "-" ? -size || 0 : size;
}

/**
 * A length as a builder writes it, mm: 14 3/8, 14-3/8, 1 ft 2 1/2 in, 1' 2", 365 mm, 36.5 cm, ½, 12 1/2 + 3/8,
 * 365 mm - 1/2 in, 2*(14 3/8). Fractions and inches are exact. Numbers that name no unit are in `unit`.
 *
 * With a `base` (mm), the value that stands there now, a leading + changes it: "+1/16" adds, and "-=1/16" or "+-1/16"
 * takes away. A leading - alone is always a negative length, since places behind the axle are negative.
 */
export function readLength(text: string, unit: LengthUnit, base?: number): ReadLength | { complaint: string } {
  const plain = plainLength(text, unit);
  if (plain !== null) return { mm: plain, echo: echoOf(plain, unit) };
  const entry = readEntry(text, units, own(unit), base !== undefined);
  if ("complaint" in entry)
    return { complaint: `not a length: ${entry.complaint}; write it like 14.375, 14 3/8 or 365 mm` };
  const read = toNumber(entry.value);
  if (!entry.change || base === undefined) return { mm: read, echo: echoOf(read, unit) };
  const changed = base + read;
  return {
    mm: changed,
    echo: `${echoOf(changed, unit)} (${read < 0 ? "less" : "plus"} ${echoOf(Math.abs(read), unit)})`,
  };
}
