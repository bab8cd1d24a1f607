import { readAngle } from "../units/angle.ts";
import { readLength } from "../units/length.ts";
import type { LengthUnit } from "../words.ts";

type Read = { readonly rad: number } | { readonly complaint: string };

function lengths(texts: readonly string[], units: LengthUnit): readonly number[] | { readonly complaint: string } {
  const read: number[] = [];
  for (const text of texts) {
    const length = readLength(text.trim(), units);
    if ("complaint" in length) return { complaint: `"${text.trim()}" is ${length.complaint}` };
    read.push(length.mm);
  }
  return read;
}

/**
 * An angle as it is read at the bench, rad: degrees, such as 7 or 6 1/2; or two tape readings across a board of stated
 * length, "50 1/8, 50 1/4 over 24": the angle whose sine is second less first over the board. Between boards on both
 * wheels (`shared`) half of it is each wheel's. With the tyre's diameter, "1/8 total": toe as inches across the tyre, of
 * both wheels together, diameter × sine of the toe a wheel (common practice, no source).
 */
export function readBenchAngle(
  text: string,
  units: LengthUnit,
  { shared, diameter }: { readonly shared: boolean; readonly diameter: number | null },
): Read {
  const pair = /^(.+),(.+)\bover\b(.+)$/i.exec(text);
  const total = /^(.+)\btotal$/i.exec(text);
  if (pair !== null) {
    const read = lengths(pair.slice(1), units);
    if ("complaint" in read) return read;
    const [first = 0, second = 0, board = 0] = read;
    return ofSine((second - first) / (shared ? 2 : 1), board);
  }
  if (total !== null && diameter !== null) {
    const read = lengths(total.slice(1), units);
    return "complaint" in read ? read : ofSine((read[0] ?? 0) / 2, diameter);
  }
  const degrees = readAngle(text);
  return "rad" in degrees
    ? { rad: degrees.rad }
    : { complaint: `not degrees such as 6 1/2, nor two readings over a board such as "50 1/8, 50 1/4 over 24"` };
}

function ofSine(across: number, along: number): Read {
  if (!(along > 0) || Math.abs(across) >= along) return { complaint: "an angle that no board can show" };
  return { rad: Math.asin(across / along) };
}
