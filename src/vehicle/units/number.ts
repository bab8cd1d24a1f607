import { readEntry } from "./entry.ts";
import { toNumber, whole } from "./fraction.ts";
import type { Units } from "./literal.ts";

const none: Units = { sizes: new Map(), compound: null };

/** A number without a unit as a builder writes it: 16, 15.5, 15 1/2. */
export function readNumber(text: string): { readonly number: number } | { complaint: string } {
  const entry = readEntry(text, none, whole(1), false);
  if ("complaint" in entry) return { complaint: `not a number: ${entry.complaint}; write it like 16 or 15 1/2` };
  return { number: toNumber(entry.value) };
}
