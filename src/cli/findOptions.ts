import type { Goal } from "../solve/goals/goals.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { readGoal, readRoom } from "../vehicle/find/words.ts";
import type { Room } from "../vehicle/sections/find.ts";
import type { Level } from "../vehicle/sections/goals.ts";
import { safe } from "../vehicle/shown.ts";
import { Ended, Exit } from "./exit.ts";

/** The two halves of "name=words". */
function halves(option: string, text: string, like: string): readonly [name: string, words: string] {
  const at = text.indexOf("=");
  if (at < 1)
    throw new Ended(Exit.badInput, `${option} "${safe(text)}" is not understood: give it like ${option} ${like}.`);
  return [text.slice(0, at).trim(), text.slice(at + 1).trim()];
}

function ended(option: string, complaint: string): Ended {
  return new Ended(Exit.badInput, `${option}: ${complaint}${complaint.endsWith("?") ? "" : "."}`);
}

/** A goal as it is given to an option: "toe-change=1/8", "ackermann=60 to 110 over 50". */
export function goalAsked(level: Level, text: string, unit: LengthUnit): Goal {
  const option = `--${level}`;
  const said = readGoal(level, ...halves(option, text, "toe-change=1/8"), unit);
  if ("complaint" in said) throw ended(`${option} ${safe(text)}`, said.complaint);
  return { ...said.aim, name: said.name, level, from: "asked" };
}

/**
 * What may move as it is given to an option: "tie-rod.outer.ahead=-6 to -3", "rack.up=1" for an inch each way; with
 * "left.", "right." or "each." before it for one side, or each by itself.
 */
export function roomAsked(text: string, unit: LengthUnit): readonly [pair: string, room: Room] {
  const option = "--move";
  const said = readRoom(...halves(option, text, "rack.up=1"), unit);
  if ("complaint" in said) throw ended(option, said.complaint);
  return [said.pair, said.room];
}
