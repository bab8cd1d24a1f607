import type { QuantityKind } from "../quantity.ts";
import { readAngle } from "../units/angle.ts";
import { formatLength } from "../units/format.ts";
import { inch, readLength } from "../units/length.ts";
import { readNumber } from "../units/number.ts";
import { degree } from "../value.ts";
import type { LengthUnit } from "../words.ts";

/** A text and its value differ by no more than this, mm, rad or bare: far below what is built, and above rounding. */
const tolerance: Readonly<Record<QuantityKind, number>> = { length: 1e-9, angle: 1e-12, ratio: 1e-12 };

/** What a value is to be written as. */
export interface Writing {
  readonly kind: QuantityKind;
  /** mm or rad. */
  readonly value: number;
  readonly units: LengthUnit;
  /** The builder's own text for it, if he typed one. */
  readonly as?: string | undefined;
  /** What stands there now: its manner is kept. */
  readonly now?: string | null;
}

function worth(text: string, kind: QuantityKind, units: LengthUnit): number {
  if (kind === "length") {
    const read = readLength(text, units);
    return "mm" in read ? read.mm : Number.NaN;
  }
  const read = kind === "angle" ? readAngle(text) : readNumber(text);
  return "rad" in read ? read.rad : "number" in read ? read.number : Number.NaN;
}

function isWorth(text: string, { kind, value, units }: Writing): boolean {
  return Math.abs(worth(text, kind, units) - value) <= tolerance[kind];
}

/** The shortest decimal that is worth a value to within `within`; both in the same unit. */
export function shortest(value: number, within: number): string {
  for (let digits = 1; digits < 17; digits++) {
    const rounded = Number(value.toPrecision(digits));
    if (Math.abs(rounded - value) <= within) return String(rounded === 0 ? 0 : rounded);
  }
  return String(value);
}

/** A text as YAML: bare where it is a plain decimal, else in quotes that it does not hold itself. */
export function scalar(text: string): string {
  if (/^-?(0|[1-9]\d*)(\.\d+)?$/.test(text)) return text;
  if (!text.includes('"') && !text.includes("\\")) return `"${text}"`;
  return text.includes("'") ? JSON.stringify(text) : `'${text}'`;
}

const sizes: Readonly<Record<string, number>> = { in: inch, mm: 1, cm: 10 };

/** The same manner as what stands there: fractions stay fractions, and a unit that is written stays written. */
function inTheManner(writing: Writing): string | null {
  const { now, value, kind, units } = writing;
  if (now === null || now === undefined || kind !== "length") return null;
  const unit = /^-?[\d.]+ ?(mm|cm|in)$/.exec(now)?.[1];
  if (unit !== undefined) return `${shortest(value / (sizes[unit] ?? 1), tolerance.length / inch)} ${unit}`;
  if (units !== "in" || !/^-?(\d+[ -])?\d+\/\d+$/.test(now)) return null;
  return formatLength(value, { unit: "in", exact: true });
}

/** A value's text in the file, as YAML: the builder's own where he typed one that is worth it, else in the manner of before. */
export function written(writing: Writing): string {
  const { kind, value, units, as } = writing;
  for (const text of [as?.trim(), inTheManner(writing)])
    if (text !== undefined && text !== null && isWorth(text, writing)) return scalar(text);
  const size = kind === "angle" ? degree : kind === "length" && units === "in" ? inch : 1;
  return shortest(value / size, tolerance[kind] / size);
}
