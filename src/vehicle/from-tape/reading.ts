import { formatAngle, formatLength, formatRatio, sayLength } from "../units/format.ts";
import { inch, readLength } from "../units/length.ts";
import { readNumber } from "../units/number.ts";
import type { LengthUnit } from "../words.ts";
import { readBenchAngle } from "./angle.ts";
import type { Reading } from "./readings.ts";

/** The angles whose two readings are taken over a distance down the plumb line; the others' lies along a board or a rim. */
const byPlumbLine = ["inclination", "caster"];

function worthOf(
  { key, kind, words }: Reading,
  text: string,
  units: LengthUnit,
  hubHeight: number | null,
): number | string | { readonly complaint: string } {
  if (kind === "word") {
    const begun = plainWord(text);
    const [word, ...others] = begun === "" ? [] : words.filter((each) => plainWord(each).startsWith(begun));
    return word !== undefined && others.length === 0 ? word : { complaint: `not ${words.join(" or ")}` };
  }
  if (kind === "length") {
    const run = runTogether(text, units);
    if (run !== null) return { complaint: run };
    const read = readLength(text, units);
    return "mm" in read ? read.mm : read;
  }
  if (kind === "number") {
    const read = readNumber(text.replace(/\s*turns?\s*$/i, ""));
    return "number" in read ? read.number : read;
  }
  const toe = key === "toe";
  const read = readBenchAngle(text, units, {
    shared: toe,
    diameter: toe && hubHeight !== null ? 2 * hubHeight : null,
    along: byPlumbLine.includes(key) ? "plumb line" : "board",
  });
  return "rad" in read ? read.rad : read;
}

/** A word without what nobody minds: capitals, and a blank for a hyphen. */
function plainWord(text: string): string {
  return text
    .trim()
    .toLowerCase()
    .replace(/[\s-]+/g, " ");
}

/** The unit of bare lengths that a text names, "in" or "inches" as well; null where it names none. */
export function readUnit(text: string): LengthUnit | null {
  const word = plainWord(text);
  if (/^(in|inch|inches|")$/.test(word)) return "in";
  return /^(mm|millimet(re|er)s?)$/.test(word) ? "mm" : null;
}

/** "81/4" is 8 1/4 that lost its blank, or 20 1/4: which, only the builder knows. Null where a text can be but one thing. */
export function runTogether(text: string, units: LengthUnit): string | null {
  const found = /^(-?)(\d+)(\d)\/(\d+)$/.exec(text.trim());
  if (units !== "in" || found === null) return null;
  const [, sign = "", first = "", last = "", under = ""] = found;
  const whole = first + last;
  const bottom = Number(under);
  if (Number(whole) < bottom) return null;
  const split = [first.slice(0, -1), first].find((each) => {
    const top = Number(whole.slice(each.length));
    return each !== "" && top % 2 === 1 && top < bottom;
  });
  if (split === undefined) return null;
  const really = formatLength((Number(whole) / bottom) * inch, { unit: "in", exact: true });
  return `not clear: write "${sign}${split} ${whole.slice(split.length)}/${under}", or "${sign}${really}" if it is that`;
}

/** A reading's value as a builder would say it. */
export function sayReading({ kind }: Pick<Reading, "kind">, value: number, units: LengthUnit): string {
  if (kind === "length") return sayLength(value, units === "in" ? { unit: "in", exact: true } : { unit: "mm" });
  return kind === "angle" ? `${formatAngle(value, 2)}°` : formatRatio(value);
}

function outside({ kind, from, to, key }: Reading, value: number, units: LengthUnit): string | null {
  if (value >= from && value <= to) return null;
  const say = (each: number) => sayReading({ kind }, kind === "length" ? rounded(each, units) : each, units);
  const instead = key === "toe" ? '; for toe across the tyres write it like "1/8 total"' : "";
  const way = value > to ? "more" : "less";
  return `${sayReading({ kind }, value, units)}, ${way} than any front end has: expected ${say(from)} to ${say(to)}${instead}`;
}

/** A bound as it is said: whole inches or millimetres. */
function rounded(mm: number, units: LengthUnit): number {
  const unit = units === "in" ? inch : 1;
  return Math.round(mm / unit) * unit;
}

/**
 * What one reading's text is worth: mm, rad, a bare number, or one of its words. `hubHeight`, mm, is what toe in inches
 * needs. A complaint is the tail of a sentence: '"x" is …'.
 */
export function readReading(
  reading: Reading,
  text: string,
  units: LengthUnit,
  hubHeight: number | null,
): number | string | { readonly complaint: string } {
  const worth = worthOf(reading, text, units, hubHeight);
  const beyond = typeof worth === "number" ? outside(reading, worth, units) : null;
  return beyond === null ? worth : { complaint: beyond };
}
