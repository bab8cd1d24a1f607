import type { Goal } from "../solve/goals/goals.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { nearest } from "../vehicle/nearest.ts";
import { movable, type Room, sideWays } from "../vehicle/sections/find.ts";
import {
  type Aim,
  aimAt,
  type GoalKind,
  type GoalName,
  goalKinds,
  goalNames,
  type Level,
} from "../vehicle/sections/goals.ts";
import { safe } from "../vehicle/shown.ts";
import { readNumber } from "../vehicle/units/number.ts";
import { worth } from "../vehicle/worth.ts";
import { Ended, Exit } from "./exit.ts";

/** The two halves of "name=words". */
function halves(option: string, text: string, like: string): readonly [name: string, words: string] {
  const at = text.indexOf("=");
  if (at < 1)
    throw new Ended(Exit.badInput, `${option} "${safe(text)}" is not understood: give it like ${option} ${like}.`);
  return [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

function unknown(option: string, name: string, known: readonly string[]): Ended {
  const meant = nearest(name, known);
  const advice = meant === null ? `There are ${known.join(", ")}.` : `Did you mean "${meant}"?`;
  return new Ended(Exit.badInput, `${option}: there is nothing called "${safe(name)}". ${advice}`);
}

function isGoal(name: string): name is GoalName {
  return Object.hasOwn(goalKinds, name);
}

/** A number of an option, mm, rad or bare, within its sensible range. */
function numberOf(
  option: string,
  text: string,
  kind: Pick<GoalKind, "kind" | "low" | "high">,
  unit: LengthUnit,
): number {
  const value = worth(text.trim(), kind, unit);
  if (typeof value === "number") return value;
  throw new Ended(Exit.badInput, `${option}: ${value.complaint}.`);
}

function aimOf(option: string, name: GoalName, words: string, unit: LengthUnit): Aim {
  const kind: GoalKind = goalKinds[name];
  const [ends = "", share] = words.split(/\s+over\s+/);
  if (share !== undefined && !kind.overLock)
    throw new Ended(Exit.badInput, `${option}: ${name} is asked for as it is: leave "over ${safe(share)}" out.`);
  const read = share === undefined ? { number: 100 } : readNumber(share);
  if ("complaint" in read || !(read.number >= 10 && read.number <= 100))
    throw new Ended(
      Exit.badInput,
      `${option}: over "${safe(share ?? "")}" must be a percent of the lock from 10 to 100.`,
    );
  const over = read.number / 100;
  const [from = "", to, more] = ends.split(/\s+to\s+/);
  if (more !== undefined || (to !== undefined && kind.ends !== "band"))
    throw new Ended(Exit.badInput, `${option}: ${name} takes one number: the ${kind.ends} there may be.`);
  const first = numberOf(option, from, kind, unit);
  if (to === undefined) return { ...aimAt(name, first), over };
  const last = numberOf(option, to, kind, unit);
  if (last < first)
    throw new Ended(Exit.badInput, `${option}: "${safe(ends)}" goes from more to less: give the least first.`);
  return { least: first, most: last, over };
}

/** A goal as it is given to an option: "toe-change=1/8", "ackermann=60 to 110 over 50". */
export function goalAsked(level: Level, text: string, unit: LengthUnit): Goal {
  const option = `--${level}`;
  const [name, words] = halves(option, text, "toe-change=1/8");
  if (!isGoal(name)) throw unknown(option, name, goalNames);
  return { ...aimOf(option, name, words, unit), name, level, from: "asked" };
}

/**
 * What may move as it is given to an option: "tie-rod.outer.ahead=-6 to -3", "rack.up=1" for an inch each way; with
 * "left.", "right." or "each." before it for one side, or each by itself.
 */
export function roomAsked(text: string, unit: LengthUnit): readonly [pair: string, room: Room] {
  const option = "--move";
  const [name, words] = halves(option, text, "rack.up=1");
  const own = sideWays.find((each) => name.startsWith(`${each}.`));
  const pair = own === undefined ? name : name.slice(own.length + 1);
  const quantity = movable.find((each) => each.pair === pair);
  if (quantity === undefined)
    throw unknown(
      option,
      pair,
      movable.map((each) => each.pair),
    );
  const [from = "", to, more] = words.split(/\s+to\s+/);
  if (more !== undefined)
    throw new Ended(Exit.badInput, `--move: "${safe(words)}" is no room: give one length, or one to another.`);
  const sides = own ?? null;
  if (to === undefined) {
    const within = numberOf(option, from, { ...quantity, low: 0, high: quantity.high - quantity.low }, unit);
    return [pair, { from: null, to: null, within, sides }];
  }
  const [low, high] = [numberOf(option, from, quantity, unit), numberOf(option, to, quantity, unit)];
  if (low >= high)
    throw new Ended(Exit.badInput, `--move: "${safe(words)}" leaves no room: give the lesser value first.`);
  return [pair, { from: low, to: high, within: null, sides }];
}
