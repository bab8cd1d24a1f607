import { evaluate } from "./evaluate.ts";
import { type Fraction, toNumber } from "./fraction.ts";
import { tokens, type Units } from "./literal.ts";
import { tidy } from "./tidy.ts";

/** Longer than any length a builder writes; what is longer is not looked at. */
const longest = 100;

/** What was typed: a value, or a change of the value that stands there. In base units (mm, degrees), exactly. */
export interface Entry {
  readonly value: Fraction;
  readonly change: boolean;
}

/** A leading + is a change where there is a value to change; taking away is written -= or +-, since -4 is a place. */
function changeOf(text: string): { sign: string; rest: string } | null {
  const found = /^(\+=|-=|\+ ?-|\+)/.exec(text);
  if (found === null) return null;
  return { sign: found[0].includes("-") ? "-" : "+", rest: text.slice(found[0].length) };
}

/**
 * Reads a typed value. `own` is the unit of numbers that name none; `mayChange` says whether a leading +, += or -= is a
 * change. A complaint is the tail of a sentence: "it …" or '"x" is not …'.
 */
export function readEntry(
  text: string,
  units: Units,
  own: Fraction,
  mayChange: boolean,
): Entry | { complaint: string } {
  if (text.length > longest) return { complaint: `it is longer than ${longest} characters` };
  const tidied = tidy(text);
  if (tidied === "") return { complaint: "it is empty" };
  if (tidied.includes(","))
    return { complaint: "it has a comma: write decimals with a point, and no mark between thousands" };
  const change = mayChange ? changeOf(tidied) : null;
  const found = tokens(change === null ? tidied : change.rest, units);
  if ("complaint" in found) return found;
  const worked = evaluate(found, own);
  if ("complaint" in worked) return worked;
  const value = change?.sign === "-" ? { top: -worked.value.top, bottom: worked.value.bottom } : worked.value;
  if (!Number.isFinite(toNumber(value))) return { complaint: "it is too large" };
  return { value, change: change !== null };
}
