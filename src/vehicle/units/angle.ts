import { readEntry } from "./entry.ts";
import { formatAngle } from "./format.ts";
import { decimal, toNumber, whole } from "./fraction.ts";
import type { Units } from "./literal.ts";

const degreesPerRadian = 180 / Math.PI;

const units: Units = {
  sizes: new Map([
    ...["deg", "degree", "degrees", "°"].map((word) => [word, whole(1)] as const),
    ...["rad", "radian", "radians"].map((word) => [word, decimal(String(degreesPerRadian))] as const),
  ]),
  compound: null,
  onTape: false,
};

/** How an angle was read back to the builder. */
export interface ReadAngle {
  readonly rad: number;
  /** The value read, in degrees. */
  readonly echo: string;
}

/**
 * An angle as a builder writes it, rad: 1.5, 1 1/2, 5 deg, 0.1 rad; bare numbers are degrees. With a `base` (rad) a
 * leading + changes it, and -= or +- takes away, as with lengths.
 */
export function readAngle(text: string, base?: number): ReadAngle | { complaint: string } {
  const entry = readEntry(text, units, whole(1), base !== undefined);
  if ("complaint" in entry) return { complaint: `not an angle: ${entry.complaint}; write degrees like 0.5 or 1 1/2` };
  const read = toNumber(entry.value) / degreesPerRadian;
  const rad = entry.change && base !== undefined ? base + read : read;
  return { rad, echo: `${formatAngle(rad, 4)} degrees` };
}
