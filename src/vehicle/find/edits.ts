import type { Car } from "../car.ts";
import { changed } from "../edits/change.ts";
import { flowMap } from "../edits/flow.ts";
import { written } from "../edits/written.ts";
import type { QuantityKind } from "../quantity.ts";
import type { SideWay } from "../sections/find.ts";
import { type GoalName, goalKinds, type Level } from "../sections/goals.ts";
import { withLines } from "../starting/layout.ts";
import type { SaidGoal, SaidRoom, Typed } from "./words.ts";

// Edits of a file's part `find`: each gives the whole text anew, all else as it was written.

type Text = Pick<Car, "text" | "form">;

/** What is to be written: the builder's own text for it where he typed one. */
interface Written {
  readonly value: number;
  readonly as?: string | undefined;
}

function numberText({ form: { units } }: Text, kind: QuantityKind, { value, as }: Written): string {
  // A shop writes inches as fractions where they are some.
  return written({ kind, value, units, as, now: units === "in" ? "1/2" : null });
}

function lineAt(car: Text, path: readonly string[], text: string): string {
  return withLines(car.text, [{ path, text, marked: false }]);
}

const end = (typed: Typed | null, value: number | null): Written | null =>
  value === null ? null : { value, as: typed?.as };

/** A goal to be written: with the builder's own words for its ends, where there are any. */
export type WrittenGoal = Pick<SaidGoal, "level" | "name" | "aim"> & Partial<Pick<SaidGoal, "least" | "most">>;

function aimText(car: Text, { name, aim, least = null, most = null }: WrittenGoal): string {
  const { kind, ends } = goalKinds[name];
  const [low, high] = [end(least, aim.least), end(most, aim.most)];
  const say = (each: Written) => numberText(car, kind, each);
  const only = low !== null && high !== null ? (aim.least === aim.most ? low : null) : (low ?? high);
  if (only !== null && aim.over === 1 && (ends !== "band" || (low !== null && high !== null))) return say(only);
  const parts: (readonly [string, string])[] = [];
  if (low !== null) parts.push(["least", say(low)]);
  if (high !== null) parts.push(["most", say(high)]);
  if (aim.over < 1) parts.push(["over", numberText(car, "ratio", { value: 100 * aim.over })]);
  return flowMap(parts);
}

/** The car's text with a goal set, in the place of the same at the same level. */
export function withGoal(car: Text, goal: WrittenGoal): string {
  return lineAt(car, ["find", goal.level, goal.name], aimText(car, goal));
}

/** The car's text without a goal of its own. */
export function withoutGoal(car: Pick<Car, "text">, level: Level, name: GoalName): string {
  return changed(car.text, [{ path: ["find", level, name], text: null }]);
}

/** A room to be written: with the builder's own words for its ends, where there are any. */
export type WrittenRoom = Pick<SaidRoom, "pair" | "room"> & Partial<Pick<SaidRoom, "from" | "to" | "within">>;

/** The car's text with a room for what that pair of quantities, lengths or angles, is. */
export function withRoom(car: Text, kind: QuantityKind, room: WrittenRoom): string {
  const { from, to, within, sides } = room.room;
  const parts: (readonly [string, string])[] = [
    ["from", end(room.from ?? null, from)] as const,
    ["to", end(room.to ?? null, to)] as const,
    ["within", end(room.within ?? null, within)] as const,
  ].flatMap(([key, each]) => (each === null ? [] : [[key, numberText(car, kind, each)] as const]));
  if (sides !== null && sides !== "alike") parts.push(["sides", sides satisfies SideWay]);
  return lineAt(car, ["find", "move", room.pair], flowMap(parts));
}

/** The car's text without the room that it gives a pair of quantities. */
export function withoutRoom(car: Pick<Car, "text">, pair: string): string {
  return changed(car.text, [{ path: ["find", "move", pair], text: null }]);
}

/** The car's text with its tie rods cut to fit wherever a search moves things, or kept as long as they are. */
export function withRods(car: Pick<Car, "text">, rods: "follow" | "keep"): string {
  return withLines(car.text, [{ path: ["find", "rods"], text: rods, marked: false }]);
}

/** The car's text with another step of a search, mm. */
export function withStep(car: Text, step: Typed): string {
  return lineAt(car, ["find", "step"], numberText(car, "length", step));
}
