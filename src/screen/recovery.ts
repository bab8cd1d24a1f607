import type { Leftover } from "../files/journal.ts";
import { replayed, type Step, stepsOf } from "../files/replay.ts";
import type { Car } from "../vehicle/car.ts";
import { readCar } from "../vehicle/read.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import type { Offer } from "./model.ts";

const minute = 60_000;

/** When something was done, in words; a clock that was set back, or a dead battery of it, makes that the future. */
function ago(when: number, now: number): string {
  const minutes = Math.round((now - when) / minute);
  if (minutes < -1) return "made later than this computer's clock says it is now";
  if (minutes < 1) return "less than a minute ago";
  if (minutes < 120) return minutes === 1 ? "a minute ago" : `${minutes} minutes ago`;
  const hours = Math.round(minutes / 60);
  return hours < 48 ? `${hours} hours ago` : `${Math.round(hours / 24)} days ago`;
}

/** A line or so: the question has no room for more, and the caution below it stays. */
const shortened = (what: string) => (what.length > longestWhat ? `${what.slice(0, longestWhat)}...` : what);
const longestWhat = 100;

function carOf(text: string): Car | null {
  const car = readCar(text);
  return "complaints" in car ? null : car;
}

/**
 * Whether a text has every value as it was edited, and where it was not edited as the file now has it. Edits of other
 * lines alone do not promise that: a file that now is in millimetres makes another length of the same digits.
 */
function hasBoth(merged: Car | null, base: Car | null, edited: Car | null, current: Car): boolean {
  if (merged === null || base === null || edited === null) return false;
  const size = current.numbers.length;
  if ([merged, base, edited].some(({ numbers }) => numbers.length !== size)) return false;
  return current.numbers.every((value, at) => {
    const wanted = edited.numbers[at] === base.numbers[at] ? value : edited.numbers[at];
    return merged.numbers[at] === wanted;
  });
}

/** Leftover edits made again on what the file now holds; null where they are not to be had so. */
function onCurrent({ base, edits, text }: Leftover, current: Car): readonly Step[] | null {
  const steps = replayed(base, edits, current.text);
  const last = steps?.at(-1);
  if (steps === null || last === undefined) return null;
  return hasBoth(carOf(last.text), carOf(base), carOf(text), current) ? steps : null;
}

/** Unsaved changes that were found of a car, as they are offered to the builder. */
export async function offerOf(leftover: Leftover, current: Car): Promise<Offer> {
  const { path, base, edits, stale, whats, when } = leftover;
  if ([leftover.text, base].some(mayHoldProducts)) await prepareProducts();
  const fitting = stale ? onCurrent(leftover, current) : stepsOf(base, edits);
  const count = whats.length === 1 ? "1 change" : `${whats.length} changes`;
  return {
    path,
    steps: fitting ?? stepsOf(base, edits),
    stale,
    base: fitting === null ? base : null,
    what: `${count}, ${ago(when, Date.now())}, the last "${shortened(whats.at(-1) ?? "")}"`,
  };
}
