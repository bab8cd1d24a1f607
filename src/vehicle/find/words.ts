import { nearest } from "../nearest.ts";
import type { QuantityKind } from "../quantity.ts";
import { movable, type Room, type SideWay, sideWays } from "../sections/find.ts";
import {
  type Aim,
  aimAt,
  type GoalKind,
  type GoalName,
  goalKinds,
  goalNames,
  type Level,
  levels,
} from "../sections/goals.ts";
import { safe } from "../shown.ts";
import { readNumber } from "../units/number.ts";
import type { LengthUnit } from "../words.ts";
import { type Range, worth } from "../worth.ts";

// What a search aims at and what it may move, as a builder says it on the command line and types it on the screen.

/** What is wrong with words, without a full stop. */
export interface Complaint {
  readonly complaint: string;
}

/** An end of an aim or of a room, mm, rad or bare, and the builder's own text for it. */
export interface Typed {
  readonly value: number;
  readonly as: string;
}

/** A goal as it was said; of the two ends one may be missing. */
export interface SaidGoal {
  readonly level: Level;
  readonly name: GoalName;
  readonly aim: Aim;
  readonly least: Typed | null;
  readonly most: Typed | null;
}

/** A room as it was said. */
export interface SaidRoom {
  readonly pair: string;
  readonly room: Room;
  readonly from: Typed | null;
  readonly to: Typed | null;
  readonly within: Typed | null;
}

function unknown(name: string, known: readonly string[]): Complaint {
  const meant = nearest(name, known);
  const advice = meant === null ? `There are ${known.join(", ")}` : `Did you mean "${meant}"?`;
  return { complaint: `there is nothing called "${safe(name)}". ${advice}` };
}

function isGoal(name: string): name is GoalName {
  return Object.hasOwn(goalKinds, name);
}

/** A number within its sensible range; a percent sign behind a bare one says nothing more. */
function typed(text: string, kind: Range, unit: LengthUnit): Typed | Complaint {
  const as = kind.kind === "ratio" ? text.trim().replace(/\s*%$/, "") : text.trim();
  const value = worth(as, kind, unit);
  return typeof value === "number" ? { value, as } : value;
}

/** "at least 60" as its end and the rest; of bare words no end. */
function endNamed(words: string): readonly [end: "least" | "most" | null, rest: string] {
  const [, end, rest = ""] = /^(?:at\s+)?(least|most|min|max)\s+(.*)$/i.exec(words) ?? [];
  if (end === undefined) return [null, words];
  return [/least|min/i.test(end) ? "least" : "most", rest];
}

/**
 * The first of two values with the unit of the last where it has none of its own: "-6 to -3 mm" is in mm at both ends, as
 * anybody says it.
 */
function inUnitOf(last: string, first: string): string {
  const unit = /[\d.]\s*([a-z"'°%]+)\s*$/i.exec(last)?.[1];
  return unit === undefined || !/[\d.]\s*$/.test(first) ? first : `${first.trimEnd()} ${unit}`;
}

type Ends = Pick<SaidGoal, "aim" | "least" | "most">;

/** The ends of an aim, each with its text; the aim of a bare number is what the goal's kind makes of it. */
function endsOf(name: GoalName, words: string, over: number, unit: LengthUnit): Ends | Complaint {
  const kind: GoalKind = goalKinds[name];
  const [named, bare] = endNamed(words);
  if (named !== null && kind.ends !== "band" && named !== kind.ends)
    return { complaint: `${name} takes the ${kind.ends} there may be, and not the ${named}` };
  const [from = "", to, more] = bare.split(/\s+to\s+/);
  if (more !== undefined || (to !== undefined && (kind.ends !== "band" || named !== null)))
    return { complaint: `${name} takes one number: the ${named ?? kind.ends} there may be` };
  const first = typed(to === undefined ? from : inUnitOf(to, from), kind, unit);
  if ("complaint" in first) return first;
  if (to === undefined) {
    const aim = named === null ? aimAt(name, first.value) : { least: null, most: null, [named]: first.value };
    return {
      aim: { ...aim, over },
      least: aim.least === null ? null : first,
      most: aim.most === null ? null : first,
    };
  }
  const last = typed(to, kind, unit);
  if ("complaint" in last) return last;
  if (last.value < first.value) return { complaint: `"${safe(bare)}" goes from more to less: give the least first` };
  return { aim: { least: first.value, most: last.value, over }, least: first, most: last };
}

/** What is asked of a goal: "1/8", "60 to 110 over 50", "at least 60". Bare numbers are in the unit given, or degrees. */
export function readGoal(level: Level, name: string, words: string, unit: LengthUnit): SaidGoal | Complaint {
  if (!isGoal(name)) return unknown(name, goalNames);
  const kind: GoalKind = goalKinds[name];
  const [ends = "", share] = words.split(/\s+over\s+/);
  if (share !== undefined && !kind.overLock)
    return { complaint: `${name} is asked for as it is: leave "over ${safe(share)}" out` };
  const read = share === undefined ? { number: 100 } : readNumber(share.replace(/\s*%.*$/, ""));
  if ("complaint" in read || !(read.number >= 10 && read.number <= 100))
    return { complaint: `over "${safe(share ?? "")}" must be a percent of the lock from 10 to 100` };
  const said = endsOf(name, ends.trim(), read.number / 100, unit);
  return "complaint" in said ? said : { level, name, ...said };
}

/**
 * The room of a quantity, by its pair: "-6 to -3", or "1" for so much each way. With "left.", "right.", "each." or
 * "alike." before the pair its sides go so.
 */
export function readRoom(name: string, words: string, unit: LengthUnit): SaidRoom | Complaint {
  const own = sideWays.find((each) => name.startsWith(`${each}.`));
  const pair = own === undefined ? name : name.slice(own.length + 1);
  const quantity = movable.find((each) => each.pair === pair);
  if (quantity === undefined)
    return unknown(
      pair,
      movable.map((each) => each.pair),
    );
  return roomOf(pair, { ...quantity, sides: own ?? null }, words, unit);
}

interface Movable extends Range {
  readonly kind: QuantityKind;
  readonly sides: SideWay | null;
}

function roomOf(pair: string, kind: Movable, words: string, unit: LengthUnit): SaidRoom | Complaint {
  const { sides, low, high } = kind;
  const [from = "", to, more] = words.split(/\s+to\s+/);
  if (more !== undefined) return { complaint: `"${safe(words)}" is no room: give one length, or one to another` };
  if (to === undefined) {
    const within = typed(from.replace(/^\s*\+-\s*/, ""), { ...kind, low: 0, high: high - low }, unit);
    if ("complaint" in within) return within;
    if (within.value === 0)
      return { complaint: `"${safe(words)}" leaves no room: leave out what is to stay where it is` };
    return { pair, room: { from: null, to: null, within: within.value, sides }, from: null, to: null, within };
  }
  const [least, most] = [typed(inUnitOf(to, from), kind, unit), typed(to, kind, unit)];
  if ("complaint" in least) return least;
  if ("complaint" in most) return most;
  if (least.value >= most.value) return { complaint: `"${safe(words)}" leaves no room: give the lesser value first` };
  return {
    pair,
    room: { from: least.value, to: most.value, within: null, sides },
    from: least,
    to: most,
    within: null,
  };
}

function isLevel(word: string): word is Level {
  return levels.some((each) => each === word);
}

/**
 * A whole goal or room in one line, as the command line takes it but for its dashes: "must rod-to-arm 30", "want
 * ackermann=60 to 110", "move rack.up 1". Null where the line begins with none of those words.
 */
export function readLine(line: string, unit: LengthUnit): SaidGoal | SaidRoom | Complaint | null {
  const [, word = "", name = "", words = ""] =
    /^\s*(?:--)?([a-z]+)\s+([^\s=]+)(?:\s*=\s*|\s+)?(.*?)\s*$/i.exec(line) ?? [];
  const first = word.toLowerCase();
  if (first === "move") return readRoom(name, words, unit);
  return isLevel(first) ? readGoal(first, name, words, unit) : null;
}
