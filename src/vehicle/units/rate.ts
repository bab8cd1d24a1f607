import type { LengthUnit } from "../words.ts";
import { inch } from "./length.ts";

/** One pound of force, N: 0.45359237 kg times standard gravity, 9.80665 m/s², both exact by definition. */
const pound = 0.45359237 * 9.80665;

/** One lb/in, N/mm. */
export const poundsPerInch = pound / inch;

/** A spring's rate as a shop says it, N/mm: 600 lb/in, 105 N/mm, 10 kgf/mm; a bare number goes with the length unit. */
export function readRate(text: string, unit: LengthUnit): { readonly value: number } | { readonly complaint: string } {
  const found = /^(\d+(?:\.\d+)?|\.\d+)\s*(lbf?\/in|N\/mm|kgf?\/mm)?$/i.exec(text.trim());
  const rate = Number(found?.[1]);
  if (found === null || !(rate > 0)) return { complaint: 'expected a spring rate such as "600 lb/in" or "105 N/mm"' };
  const named = found[2]?.toLowerCase() ?? (unit === "in" ? "lb/in" : "n/mm");
  if (named.startsWith("lb")) return { value: rate * poundsPerInch };
  return { value: named.startsWith("kg") ? rate * 9.80665 : rate };
}
