import { readEntry } from "./entry.ts";
import { formatRatio } from "./format.ts";
import { toNumber, whole } from "./fraction.ts";
import type { Units } from "./literal.ts";

const none: Units = { sizes: new Map(), compound: null, onTape: false };

/**
 * A number without a unit as a builder writes it: 16, 15.5, 15 1/2. With a `base` a leading + changes it, and -= or +-
 * takes away, as with lengths. `echo` is how it was read back.
 */
export function readNumber(
  text: string,
  base?: number,
): { readonly number: number; readonly echo: string } | { complaint: string } {
  const entry = readEntry(text, none, whole(1), base !== undefined);
  if ("complaint" in entry) return { complaint: `not a number: ${entry.complaint}; write it like 16 or 15 1/2` };
  const read = toNumber(entry.value);
  const number = entry.change && base !== undefined ? base + read : read;
  return { number, echo: formatRatio(number) };
}
