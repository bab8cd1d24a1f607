import type { Detail } from "../../measures/leastRodAngle.ts";
import type { Study } from "../../measures/study.ts";
import type { Level } from "../../vehicle/sections/goals.ts";
import { type Goal, lacking, scaleOf } from "./goals.ts";
import { dear, type Reading, readingOf, swept } from "./readings.ts";

/** What one miss costs: no gain in what is wanted is worth missing what must be met. */
const weights: Readonly<Record<Level, number>> = { must: 1000, want: 10, nice: 1 };

/**
 * Inside its end a goal whose best is nothing still costs this share of one miss where it stands at its end: less is better.
 */
const CARE = 0.1;

/** What a goal misses by where it cannot be told, because the wheels do not turn or do not close: more than any real miss. */
const UNTOLD = 100;

/** What a car that does not go together costs. */
export const NO_CAR = 1e9;

/** A goal and what a car gives of it. */
export interface Met {
  readonly goal: Goal;
  /** Null where it cannot be told. */
  readonly reading: Reading | null;
  /** By how many of its misses it is missed; 0 where it is met. */
  readonly miss: number;
}

/** How well a car meets its goals. */
export interface Score {
  /** Lower is better; under `care` all is met. */
  readonly total: number;
  readonly met: readonly Met[];
}

/** Whether a goal can be judged by the file at all; what it lacks is told elsewhere and costs nothing. */
export function judgeable(study: Pick<Study, "car" | "suspended">, goal: Goal): boolean {
  if (!study.suspended && travelGoals.has(goal.name)) return false;
  return lacking(study.car, goal.name) === null;
}

const travelGoals: ReadonlySet<string> = new Set(["toe-change", "toe-change-at-lock", "bounce-steer"]);

/** By how many misses a reading misses a goal; 0 where it meets it. */
export function missOf(goal: Goal, reading: Reading | null): number {
  if (reading === null) return UNTOLD;
  const under = goal.least === null ? 0 : goal.least - reading.low;
  const over = goal.most === null ? 0 : reading.high - goal.most;
  const past = Math.max(under, over) / scaleOf(goal);
  // What is past its end by a rounding is met.
  return past > 1e-6 ? past : 0;
}

/**
 * What is left to gain inside a goal whose best is nothing, from 0 to 1: a share of its end. A circle's best is none of
 * these.
 */
function leftToGain({ name, least, most }: Goal, reading: Reading | null): number {
  if (name === "turning-circle" || least !== null || most === null || most <= 0 || reading === null) return 0;
  return Math.min(reading.high / most, 1);
}

/** What a goal costs. */
function costOf({ goal, reading, miss }: Met): number {
  const weight = weights[goal.level];
  // A must is not worth more inside its end than what is wanted.
  return weight * miss + CARE * Math.min(weight, weights.want) * leftToGain(goal, reading);
}

/**
 * How well a car meets goals: the sum of what each costs. `enough`: once the sum is past it, the goals that are left are not
 * read, the dearest last of all, and are out of the total, which is past it anyway. `detail`: how closely the range is
 * looked at for the dear ones. Goals that the file says too little for are left out.
 */
export function scoreOf(
  goals: readonly Goal[],
  study: Study,
  enough = Number.POSITIVE_INFINITY,
  detail: Detail = "whole",
): Score {
  const judged = goals.filter((goal) => judgeable(study, goal));
  const read = new Map<string, Reading | null>();
  const known = new Map<Goal, Met>();
  let sofar = 0;
  for (const goal of cheapestFirst(judged)) {
    if (sofar >= enough) break;
    const key = `${goal.name} ${goal.over}`;
    const reading = read.get(key) ?? readingOf(goal.name, goal.over, study, detail);
    read.set(key, reading);
    const one: Met = { goal, reading, miss: missOf(goal, reading) };
    known.set(goal, one);
    sofar += costOf(one);
  }
  const inOrder = [...judged.filter(({ name }) => !dear.has(name)), ...judged.filter(({ name }) => dear.has(name))];
  const met = inOrder.flatMap((goal) => known.get(goal) ?? []);
  return { total: met.reduce((sum, one) => sum + costOf(one), 0), met };
}

/** What takes least to be read comes first: it may settle that the rest need not be. */
function cheapestFirst(goals: readonly Goal[]): readonly Goal[] {
  const effort = ({ name }: Goal) => (dear.has(name) ? 2 : swept.has(name) ? 1 : 0);
  return [0, 1, 2].flatMap((each) => goals.filter((goal) => effort(goal) === each));
}

/** The musts that a car misses. */
export function missedMusts({ met }: Score): readonly Met[] {
  return met.filter(({ goal, miss }) => goal.level === "must" && miss > 0);
}

/** Whether a must is missed, or would be with its end one miss tighter: what may stand in the way of another. */
export function isTight({ goal, reading, miss }: Met): boolean {
  if (goal.level !== "must") return false;
  const scale = scaleOf(goal);
  const tighter = {
    ...goal,
    least: goal.least === null ? null : goal.least + scale,
    most: goal.most === null ? null : goal.most - scale,
  };
  return miss > 0 || missOf(tighter, reading) > 0;
}
