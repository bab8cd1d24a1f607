import { safe } from "../shown.ts";
import { add, decimal, type Fraction, multiply, ratio, whole } from "./fraction.ts";
import { whyNoMark } from "./marks.ts";

/**
 * One value as it stands in a text: a number, and the unit written at it, as so much of the base unit (mm or degree);
 * null where none is written, and the reader's own unit is meant unless it is a mere factor.
 */
export interface Literal {
  readonly value: Fraction;
  readonly unit: Fraction | null;
}

/** Units that a reader knows, each as so much of the base unit; `within` may follow `big` as in 1 ft 2 in. */
export interface Units {
  readonly sizes: ReadonlyMap<string, Fraction>;
  readonly compound: { readonly big: ReadonlySet<string>; readonly small: ReadonlySet<string> } | null;
  /** Whether a whole number with a fraction is read off a tape, which has but halves of halves. */
  readonly onTape: boolean;
}

/** What stands in a text, read one after the other; a complaint where it is none of these. */
export type Token =
  | { readonly kind: "literal"; readonly literal: Literal; readonly source: string; readonly spaced: boolean }
  | { readonly kind: "sign"; readonly sign: "+" | "-" | "*" | "/" | "(" | ")"; readonly lone: boolean };

const mixed = /(\d+)(?: +|-)(\d+)\/(\d+)(?![\d.])/y;
const fraction = /(\d+)\/(\d+)(?![\d.])/y;
const plain = /(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d{1,3}(?!\d))?/iy;
const unitWord = / *([a-z]+|"|''|'|°)/iy;
const sign = /[+\-*/()]/y;

function match(pattern: RegExp, text: string, at: number): RegExpExecArray | null {
  pattern.lastIndex = at;
  return pattern.exec(text);
}

/** A number without its unit, and where it ends; null where there is none, a complaint where its bottom is 0. */
function numberAt(
  text: string,
  at: number,
  { onTape }: Units,
): { value: Fraction; end: number } | { complaint: string } | null {
  const long = match(mixed, text, at);
  const short = long ?? match(fraction, text, at);
  if (short !== null) {
    const [front, top, bottom] = long === null ? ["0", short[1], short[2]] : [long[1], long[2], long[3]];
    const part = ratio(BigInt(top ?? 0), BigInt(bottom ?? 0));
    if (part === null) return { complaint: `${short[0]} has 0 below the line` };
    const why = long !== null && onTape ? whyNoMark(BigInt(front ?? 0), BigInt(top ?? 0), BigInt(bottom ?? 0)) : null;
    if (why !== null) return { complaint: why };
    return { value: add(whole(BigInt(front ?? 0)), part), end: at + short[0].length };
  }
  const found = match(plain, text, at);
  return found === null ? null : { value: decimal(found[0]), end: at + found[0].length };
}

/** The unit word at a place, and where it ends. */
function unitAt(text: string, at: number): { word: string; end: number } | null {
  const found = match(unitWord, text, at);
  return found === null ? null : { word: (found[1] ?? "").toLowerCase(), end: at + found[0].length };
}

interface Read {
  readonly literal: Literal;
  readonly end: number;
}

/** Feet may be followed by inches: 1 ft 2 1/2 in, 1' 2", 1'-2 1/2". */
function withInches(feet: Read, text: string, units: Units): Read | { complaint: string } {
  const gap = match(/ *-?(?=[\d.])/y, text, feet.end);
  if (gap === null || units.compound === null) return feet;
  const start = feet.end + gap[0].length;
  const number = numberAt(text, start, units);
  if (number === null || feet.literal.unit === null) return feet;
  if ("complaint" in number) return number;
  const unit = unitAt(text, number.end);
  if (unit !== null && !units.compound.small.has(unit.word))
    return { complaint: `after feet only inches can follow, not "${safe(text.slice(start, unit.end))}"` };
  const inches = units.sizes.get("in") ?? whole(1);
  const value = add(multiply(feet.literal.value, feet.literal.unit), multiply(number.value, inches));
  return { literal: { value, unit: whole(1) }, end: unit?.end ?? number.end };
}

function literalAt(text: string, at: number, units: Units): Read | { complaint: string } | null {
  const number = numberAt(text, at, units);
  if (number === null || "complaint" in number) return number;
  const unit = unitAt(text, number.end);
  if (unit === null) return { literal: { value: number.value, unit: null }, end: number.end };
  const size = units.sizes.get(unit.word);
  if (size === undefined) return { complaint: `"${safe(unit.word)}" is not a unit here` };
  const read = { literal: { value: number.value, unit: size }, end: unit.end };
  return units.compound?.big.has(unit.word) ? withInches(read, text, units) : read;
}

/** A fraction that is still being typed: "4 1/". */
const unfinished = /(?:^|[^\d.])((?:\d+[ -]+)?\d+\/) *$/;
const word = /\S+/y;

/** Splits a text into values and signs. The text has been tidied: plain spaces, one kind of minus, no vulgar fractions. */
export function tokens(text: string, units: Units): readonly Token[] | { complaint: string } {
  const half = unfinished.exec(text)?.[1];
  if (half !== undefined) return { complaint: `"${safe(half)}" is an unfinished fraction, without its lower number` };
  const found: Token[] = [];
  let at = 0;
  while (at < text.length) {
    if (text[at] === " ") {
      at += 1;
      continue;
    }
    const read = literalAt(text, at, units);
    if (read !== null) {
      if ("complaint" in read) return read;
      const source = text.slice(at, read.end);
      const before = found.at(-1);
      if (before?.kind === "literal")
        return { complaint: `"${safe(`${before.source} ${source}`)}" lacks a sign between its two values` };
      found.push({ kind: "literal", literal: read.literal, source, spaced: text[at - 1] === " " });
      at = read.end;
      continue;
    }
    const character = match(sign, text, at)?.[0];
    if (character === undefined) return { complaint: `"${safe(match(word, text, at)?.[0] ?? "")}" is not a number` };
    const lone = (text[at - 1] === " ") === (text[at + 1] === " ");
    found.push({ kind: "sign", sign: character as "+", lone });
    at += 1;
  }
  return found;
}
