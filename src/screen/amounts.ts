import { type Amounts, usualAmounts } from "../solve/adjusters/adjusters.ts";
import { inch, readLength } from "../vehicle/units/length.ts";
import { readNumber } from "../vehicle/units/number.ts";
import type { LengthUnit } from "../vehicle/words.ts";

/** What a builder says by how much: one of the adjusters', or how much wider a side. */
export type AmountName = keyof Amounts | "widen";

/** Amounts that were typed, in turns or mm; one that was not is as it is usual. */
export type TypedAmounts = Readonly<Partial<Record<AmountName, number>>>;

/** What of the model amounts are read from. */
interface Shown {
  readonly display: { readonly unit: LengthUnit };
}

/** A step of widening: half an inch or 10 mm. */
const wider = { in: inch / 2, mm: 10 } as const;

/** The amounts that are done: what was typed, else what is usual. */
export function amountsOf({
  display,
  amounts,
}: Shown & { readonly amounts: TypedAmounts }): Readonly<Record<AmountName, number>> {
  return { ...usualAmounts(display.unit), widen: wider[display.unit], ...amounts };
}

interface Words {
  /** What it is the amount of. */
  readonly label: string;
  /** What can be typed. */
  readonly hint: string;
  /** What more or less than nothing is. */
  readonly ways: readonly [more: string, less: string] | null;
  /** Nothing is done by less, or by more, turns or mm. */
  readonly from: number;
  readonly to: number;
}

const sizes = { from: 0.01, to: 150 } as const;

/** What each amount is, and the most of it that can be meant. */
const words: Readonly<Record<AmountName, Words>> = {
  turns: {
    label: "Rod ends turned by",
    hint: "Type turns out or longer: 2, 1/2 or 1 1/2 turns; with a minus, or with in behind, turns in.",
    ways: ["out or longer", "in or shorter"],
    from: 0.01,
    to: 50,
  },
  shim: {
    label: "Rack shimmed by",
    hint: "Type a length: 1/8 in or 3 mm; with a minus, shims taken out.",
    ways: ["up", "down"],
    ...sizes,
  },
  rideHeight: {
    label: "Body higher by",
    hint: "Type a length: 1/2 in or 10 mm; with a minus, lower.",
    ways: ["higher", "lower"],
    ...sizes,
  },
  tyre: {
    label: "Tyre's loaded radius more by",
    hint: "Type a length: 1/2 in or 10 mm; with a minus, a smaller tyre.",
    ways: ["more radius", "less radius"],
    ...sizes,
  },
  widen: {
    label: "Wider a side by",
    hint: "Type a length: 1 1/2 in or 40 mm.",
    ways: null,
    ...sizes,
  },
};

/** The question for an amount, and what can be typed. */
export function amountWords(amount: AmountName): { readonly label: string; readonly hint: string } {
  const { label, hint } = words[amount];
  return { label: `${label}:`, hint };
}

/** An amount as it was typed: turns or mm, with what was read; or why it is none, in a sentence. */
export function readAmount(
  amount: AmountName,
  text: string,
  { display }: Shown,
): { readonly value: number; readonly echo: string } | { readonly complaint: string } {
  const { ways, from, to } = words[amount];
  const read = amount === "turns" ? readTurns(text) : readSize(text, display.unit);
  if ("complaint" in read) return { complaint: `That is ${read.complaint}.` };
  const { value, echo } = read;
  const most = amount === "turns" ? `${to} turns` : `${to} mm`;
  if (Math.abs(value) < from) return { complaint: "That is nothing: type by how much." };
  if (Math.abs(value) > to) return { complaint: `That is more than can be meant: at most ${most}.` };
  if (ways === null) return value < 0 ? { complaint: "It must be more than nothing." } : { value, echo: `= ${echo}` };
  return { value, echo: `= ${echo}, ${ways[value < 0 ? 1 : 0]}` };
}

type Read = { readonly value: number; readonly echo: string } | { readonly complaint: string };

function readSize(text: string, unit: LengthUnit): Read {
  const read = readLength(text.trim().replace(/^\+\s*/, ""), unit);
  return "complaint" in read ? read : { value: read.mm, echo: read.echo };
}

/** "2", "1/2 turn", "2 turns in", "1 out". */
function readTurns(text: string): Read {
  const [, number = "", way = ""] = /^\s*\+?(.*?)\s*(?:turns?)?\s*(in|out)?\s*$/i.exec(text) ?? [];
  const read = readNumber(number);
  if ("complaint" in read) return read;
  const value = way.toLowerCase() === "in" ? -read.number : read.number;
  return { value, echo: `${read.echo.replace(/^-/, "")} turn${Math.abs(value) > 1 ? "s" : ""}` };
}
