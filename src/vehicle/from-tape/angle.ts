import { readAngle } from "../units/angle.ts";
import { readLength } from "../units/length.ts";
import type { LengthUnit } from "../words.ts";

type Read = { readonly rad: number } | { readonly complaint: string };

/** How an angle's two readings were taken. */
export interface Bench {
  /** Whether boards on both wheels share it, half each: toe. */
  readonly shared: boolean;
  /** The tyre's, mm, where toe may be read across it; null where not. */
  readonly diameter: number | null;
  /** What their distance lies along: the leaning thing itself, or the plumb line beside it. */
  readonly along: "board" | "plumb line";
}

function lengths(texts: readonly string[], units: LengthUnit): readonly number[] | { readonly complaint: string } {
  const read: number[] = [];
  for (const text of texts) {
    const length = readLength(text.trim(), units);
    if ("complaint" in length) return { complaint: `no reading: "${text.trim()}" is ${length.complaint}` };
    read.push(length.mm);
  }
  return read;
}

/**
 * An angle as it is read at the bench, rad: degrees, such as 7 or 6 1/2; or two tape readings over their distance,
 * "50 1/8, 50 1/4 over 24": the angle whose sine is second less first over a board's length, or whose tangent it is where
 * the distance lies along a plumb line. Between boards on both wheels (`shared`) half of it is each wheel's. With the
 * tyre's diameter, "45 7/8 front, 46 rear" or rear less front, "1/8 total": toe as inches across the tyre, of both wheels
 * together, half of it diameter × sine of the toe a wheel, toe-in positive (common practice, no source). A toe that could be a length as well as degrees is refused.
 */
export function readBenchAngle(text: string, units: LengthUnit, { shared, diameter, along }: Bench): Read {
  const pair = /^(.+),(.+)\bover\b(.+)$/i.exec(text);
  const total = /^(.+)\btotal$/i.exec(text);
  const across = shared ? frontAndRear(text) : null;
  if (across !== null) {
    if (diameter === null) return { complaint: noDiameter };
    const read = lengths(across, units);
    if ("complaint" in read) return read;
    const [front = 0, rear = 0] = read;
    return ofSine((rear - front) / 2, diameter);
  }
  if (pair !== null) {
    const read = lengths(pair.slice(1), units);
    if ("complaint" in read) return read;
    const [first = 0, second = 0, over = 0] = read;
    const across = (second - first) / (shared ? 2 : 1);
    return along === "board" ? ofSine(across, over) : ofTangent(across, over);
  }
  if (total !== null && shared) {
    if (diameter === null) return { complaint: noDiameter };
    const read = lengths(total.slice(1), units);
    return "complaint" in read ? read : ofSine((read[0] ?? 0) / 2, diameter);
  }
  if (shared && couldBeLength(text, units)) return { complaint: eitherWords(text) };
  const degrees = readAngle(text);
  return "rad" in degrees
    ? { rad: degrees.rad }
    : { complaint: `not degrees such as 6 1/2, nor two readings and their distance such as "50 1/8, 50 1/4 over 24"` };
}

const noDiameter = "no angle yet: toe across the tyre needs the hub's height above the floor";

/** The two distances of "45 7/8 front, 46 rear", in either order, the front one first; null where a text is no such pair. */
function frontAndRear(text: string): readonly string[] | null {
  const found = /^(.+?)\s*\b(front|rear)\b\s*,?\s*(.+?)\s*\b(front|rear)$/i.exec(text.trim());
  const [, first = "", firstAt = "", second = "", secondAt = ""] = found ?? [];
  if (found === null || firstAt.toLowerCase() === secondAt.toLowerCase()) return null;
  return firstAt.toLowerCase() === "front" ? [first, second] : [second, first];
}

/** Whether a text is what a tape shows: a fraction, a unit of length, or any bare number of millimetres but 0. */
function couldBeLength(text: string, units: LengthUnit): boolean {
  if (/deg|°|rad/i.test(text)) return false;
  const read = readLength(text, units);
  if ("complaint" in read || read.mm === 0) return false;
  return units === "mm" || /\/|[½⅓¼¾⅛⅜⅝⅞"']|in|mm|cm|ft/i.test(text);
}

function eitherWords(text: string): string {
  const bare = text.trim().replace(/\s*(deg\w*|°|in\w*|mm|"|'')$/i, "");
  return `not clear: write "${bare} total" for toe across the tyres, rear less front, or "${bare} deg" for degrees a wheel`;
}

function ofSine(across: number, along: number): Read {
  if (!(along > 0) || Math.abs(across) >= along) return { complaint: "an angle that no board can show" };
  return { rad: Math.asin(across / along) };
}

function ofTangent(across: number, along: number): Read {
  if (!(along > 0)) return { complaint: "an angle that no plumb line can show: its gaps are no distance apart" };
  return { rad: Math.atan2(across, along) };
}
