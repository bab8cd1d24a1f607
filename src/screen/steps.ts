import type { QuantityKind } from "../vehicle/quantity.ts";
import { sayLength } from "../vehicle/units/format.ts";
import { inch } from "../vehicle/units/length.ts";
import type { Display } from "./model.ts";

/** A step that the arrow keys take: its size in mm, rad or bare, and its words. */
export interface Step {
  readonly size: number;
  readonly words: string;
}

const degree = Math.PI / 180;

type Steps = readonly [Step, ...Step[]];

function stepsOf([first, ...more]: readonly [number, ...number[]], step: (size: number) => Step): Steps {
  return [step(first), ...more.map(step)];
}

const inches = stepsOf([1 / 32, 1 / 16, 1 / 8, 1 / 4, 1], (size) => ({
  size: size * inch,
  words: sayLength(size * inch, { unit: "in", fraction: 32 }),
}));
const millimetres = stepsOf([0.5, 1, 2, 5, 10], (size) => ({ size, words: `${size} mm` }));
const bare = stepsOf([0.1, 0.5, 1, 2, 5], (size) => ({ size, words: `${size}` }));
const degrees = stepsOf([0.1, 0.25, 0.5, 1, 5], (size) => ({ size: size * degree, words: `${size}°` }));

/** Steps there are of each kind, smallest first. */
export const stepCount = 5;

/** The step chosen at first: 1/16 in, 1 mm, 0.25 degrees, 0.5 of a bare number. */
export const firstStep = 1;

/** The steps for one kind of quantity, in the unit that is shown, the smallest first. */
export function stepsFor(kind: QuantityKind, display: Pick<Display, "unit">): Steps {
  if (kind === "angle") return degrees;
  if (kind === "ratio") return bare;
  return display.unit === "in" ? inches : millimetres;
}

/**
 * A value one step on. It lands on a mark of the smallest step (a 32nd, half a millimetre, a tenth of a degree), so
 * that a length found as 15.782 in becomes one that a tape shows.
 */
export function stepped(value: number, ways: number, kind: QuantityKind, display: Pick<Display, "unit" | "step">) {
  const steps = stepsFor(kind, display);
  const finest = steps[0].size;
  const size = steps[display.step]?.size ?? finest;
  return Math.round((value + ways * size) / finest) * finest;
}
