import type { Study } from "../../measures/study.ts";
import { deviationsHolding } from "../least-squares/chance.ts";
import { type Reading, readings } from "../sensitivity/readings.ts";
import type { Build } from "./built.ts";
import { DEVIATIONS } from "./errors.ts";
import type { Held } from "./held.ts";
import { SHARES, type Spread } from "./sample.ts";

/** So many standard deviations each way hold what is between the ends of a band. */
const HALF = deviationsHolding(SHARES.high - SHARES.low);

/** What a figure is compared by: of a worst value its size, since its sign is that of the worse end of the travel. */
export function comparedOf({ read, bySize }: Reading, study: Study | null): number | null {
  const value = study === null ? null : read(study);
  return value === null || !bySize ? value : Math.abs(value);
}

/** What one standard deviation of each size does to each figure: by figure, by size; null where it cannot be told. */
export type Effects = readonly (readonly (number | null)[])[];

/** Share of a standard deviation by which a size is moved each way for its slope. */
const STEP = 0.25;

/** What is told of a build, as many values each time; null where it does not go together. */
export type Told = (study: Study | null) => readonly (number | null)[];

/** The effect of each size on each value, by central differences about the car without errors. Yields after each size. */
function* slopesOf(build: Build, held: readonly Held[], told: Told): Generator<number, Effects, void> {
  const effects: (number | null)[][] = told(build(new Float64Array(held.length))).map(() => []);
  const at = (i: number, error: number) => {
    const errors = new Float64Array(held.length);
    errors[i] = error;
    return told(build(errors));
  };
  for (const [i, { tolerance }] of held.entries()) {
    const step = (STEP * tolerance) / DEVIATIONS;
    const [up, down] = tolerance === 0 ? [null, null] : [at(i, step), at(i, -step)];
    for (const [r, of] of effects.entries()) {
      const [more, less] = [up?.[r] ?? null, down?.[r] ?? null];
      of.push(tolerance === 0 ? 0 : more === null || less === null ? null : (more - less) / (2 * STEP));
    }
    yield (i + 1) / held.length;
  }
  return effects;
}

/** The effect of each size on each figure. Yields after each size. */
export function effectsOf(build: Build, held: readonly Held[]): Generator<number, Effects, void> {
  return slopesOf(build, held, (study) => readings.map((reading) => comparedOf(reading, study)));
}

/** One standard deviation of each value over builds, as straight lines have it; null where a slope cannot be told. */
export function deviationsOf(build: Build, held: readonly Held[], told: Told): readonly (number | null)[] {
  const slopes = slopesOf(build, held, told);
  let slope = slopes.next();
  while (!slope.done) slope = slopes.next();
  return slope.value.map((effects) => linearBand(0, effects)?.deviation ?? null);
}

/** A band by slopes alone. */
export interface LinearBand {
  readonly low: number;
  readonly high: number;
  /** One standard deviation. */
  readonly deviation: number;
}

/**
 * The band that 5 to 95 of 100 builds are in if the figure were a straight line in every size: errors that are independent
 * add up by their squares (first-order propagation, as in the ISO Guide to the expression of uncertainty in measurement,
 * quoted from memory). Null where a slope cannot be told.
 */
export function linearBand(now: number | null, effects: readonly (number | null)[]): LinearBand | null {
  if (now === null) return null;
  let squares = 0;
  for (const effect of effects) {
    if (effect === null) return null;
    squares += effect * effect;
  }
  const deviation = Math.sqrt(squares);
  return { low: now - HALF * deviation, high: now + HALF * deviation, deviation };
}

/** By what share of the builds' band the ends of both may differ and still count as alike. */
const ALIKE = 0.1;

/** The density of the normal distribution at its 5th and 95th hundredth, per standard deviation. */
const DENSITY = Math.exp(-(HALF ** 2) / 2) / Math.sqrt(2 * Math.PI);

/**
 * Whether the straight-line band is the builds' band: their ends differ by no more than a tenth of it, or by what chance alone
 * does (four standard errors of a quantile, √(p (1 − p) / n) over the density there). Below `nothing` it is no matter.
 */
export function alike(linear: LinearBand, { low, high, told }: Spread, nothing: number): boolean {
  const width = high - low;
  const deviation = Math.max(width / (2 * HALF), linear.deviation);
  const chance = (Math.sqrt((SHARES.low * SHARES.high) / told) / DENSITY) * deviation;
  const most = Math.max(ALIKE * width, 4 * chance, nothing);
  return Math.abs(linear.low - low) <= most && Math.abs(linear.high - high) <= most;
}
