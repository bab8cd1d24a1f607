import type { Quantity } from "../vehicle/quantity.ts";
import { readAngle } from "../vehicle/units/angle.ts";
import { readLength } from "../vehicle/units/length.ts";
import { readNumber } from "../vehicle/units/number.ts";
import { adjustableOf, isFittedRod, quantitiesOn, valueNow } from "./adjust.ts";
import type { Model } from "./model.ts";

/** A typed value as it was understood, for one quantity: mm, rad or bare, or why it is none. */
export type Reading = { readonly value: number; readonly echo: string } | { readonly complaint: string };

/** Reads what was typed for a quantity that is worth `base` now; bare numbers are in the unit that is shown. */
export function readFor(text: string, quantity: Quantity, base: number | null, model: Pick<Model, "display">): Reading {
  const from = base ?? undefined;
  const readers = {
    angle: () => readAngle(text, from),
    length: () => readLength(text, model.display.unit, from),
    ratio: () => readNumber(text, from),
  } as const;
  const read = readers[quantity.kind]();
  if ("complaint" in read) return read;
  const value = "rad" in read ? read.rad : "mm" in read ? read.mm : read.number;
  return Number.isFinite(value) ? { value, echo: read.echo } : { complaint: "that is no size a car can have" };
}

/** True for text that changes the value that stands there, such as "+1/16" or "-=1/8". */
export function isChange(text: string): boolean {
  return /^\s*(\+|-=)/.test(text);
}

/** Where a length below nothing is, by the last word of what it is for. */
const behind: Readonly<Record<string, string>> = {
  ahead: "behind the axle line",
  out: "across the centreline",
  up: "below the ground",
};

/** Said of a value that begins with a minus, since it is a place of its own and takes nothing off; "" of any other. */
function minusNote(text: string, { kind, path }: Quantity): string {
  const [, size] = /^\s*-\s*([^=\s].*)$/.exec(text) ?? [];
  if (size === undefined) return "";
  const where = kind === "length" ? behind[path.at(-1) ?? ""] : undefined;
  return `, ${where ?? "below 0"}; to take it off type -=${size.trim()}`;
}

/** What is read of the text in the field so far, in words under it: the value, or the complaint; null while it is empty. */
export function echoOf(model: Model): { readonly text: string; readonly good: boolean } | null {
  const { focus, bench, selected, sides } = model;
  if (focus.on !== "entry" || focus.text.trim() === "") return null;
  const [first, second] = quantitiesOn(adjustableOf(bench.car, selected), sides);
  if (first === undefined) return null;
  const reading = readFor(focus.text, first, valueNow(bench, first), model);
  if ("complaint" in reading) return { text: reading.complaint, good: false };
  const differ = second !== undefined && valueNow(bench, first) !== valueNow(bench, second);
  const note = differ && isChange(focus.text) ? "; the right side by as much" : "";
  const fitted = isFittedRod(bench.car, adjustableOf(bench.car, selected), sides) ? "; as cut from then on" : "";
  return { text: `= ${reading.echo}${note}${minusNote(focus.text, first)}${fitted}`, good: true };
}

const samples = {
  length: "Type 14 3/8 in or 365 mm; +1/16 in adds, -=1/16 in takes away.",
  angle: "Type degrees, such as 1.5 or 1 1/2; +0.5 adds, -=0.5 takes away.",
  ratio: "Type a plain number, such as 16 or 15 1/2; +0.5 adds, -=0.5 takes away.",
} as const;

/** What can be typed for a quantity, said under the field while it is empty. */
export function sampleOf({ kind }: Pick<Quantity, "kind">): string {
  return samples[kind];
}
