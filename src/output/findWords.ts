import type { CheckReport } from "../solve/check/report.ts";
import type { Placed } from "../solve/find/place.ts";
import type { Variable } from "../solve/find/room.ts";
import type { Goal } from "../solve/goals/goals.ts";
import type { Reading } from "../solve/goals/readings.ts";
import type { Met } from "../solve/goals/score.ts";
import type { LengthUnit } from "../vehicle/car.ts";
import { goalKinds } from "../vehicle/sections/goals.ts";
import { inch } from "../vehicle/units/length.ts";
import { waysOf } from "./ways.ts";
import { degrees, fixed, type Length } from "./words.ts";

/** A circle on the ground is told to what can be measured there: from here up, mm. */
const FAR = 3000;

/** What a check found broken, targets aside: they are what the search is about. */
export function brokenWords(check: CheckReport | null): readonly string[] {
  return (
    check?.items.filter(({ state, part }) => state === "broken" && part !== "targets").map(({ label }) => label) ?? []
  );
}

/** A number of a goal for a reader, unit included. */
export function goalNumber({ name }: Goal, value: number, unit: LengthUnit, length: Length): string {
  const kind = name === "range" ? "length" : goalKinds[name].kind;
  if (kind === "angle") return degrees(value);
  if (kind === "ratio") return name === "ackermann" ? `${fixed(value, 0)} %` : fixed(value, 2);
  if (value > FAR) return unit === "in" ? `${fixed(value / inch / 12, 1)} ft` : `${fixed(value / 1000, 2)} m`;
  return value < 0 ? `-${length(-value)}` : length(value);
}

/** A goal's name for a reader: "worst toe change", "Ackermann from 50 % of the lock on". */
export function goalName({ name, over }: Goal): string {
  if (name === "range") return "Goes together over its range";
  const part = over < 1 ? ` from ${fixed(100 * over, 0)} % of the lock on` : "";
  return `${goalKinds[name].label}${part}`;
}

/** What a goal asks for: "at least 30.0°", "at most 1/8 in", "40 % to 120 %"; nothing for what is either so or not. */
export function goalEnds(goal: Goal, unit: LengthUnit, length: Length): string {
  const { least, most, name } = goal;
  const say = (value: number) => goalNumber(goal, value, unit, length);
  if (name === "range") return "";
  if (least !== null && most !== null) return least === most ? say(least) : `${say(least)} to ${say(most)}`;
  return least === null ? `at most ${say(most ?? 0)}` : `at least ${say(least)}`;
}

/** The same as short as a table needs it: "min 30.0°", "60-110 %". */
function goalEndsShort(goal: Goal, unit: LengthUnit, length: Length): string {
  const { least, most, name } = goal;
  const say = (value: number) => goalNumber(goal, value, unit, length);
  if (name === "range") return "";
  if (least !== null && most !== null) return bandWords(goal, { low: least, high: most }, unit, length);
  return least === null ? `max ${say(most ?? 0)}` : `min ${say(least)}`;
}

const shorts: Readonly<Partial<Record<Goal["name"], string>>> = {
  range: "goes together",
  ackermann: "Ackermann",
  "off-ideal": "off ideal",
  "toe-change": "toe change",
  "toe-change-at-lock": "toe at lock",
  "bounce-steer": "bounce steer",
  "lock-difference": "locks differ",
  "outer-difference": "outers differ",
  "circle-difference": "circles differ",
  "inner-lock": "inner lock",
  "turning-circle": "circle",
  "straight-toe": "toe off set",
  "rod-to-arm": "rod to arm",
  "rod-end": "rod ends left",
  engagement: "thread in",
  adjustment: "adjustment",
  "shaft-joint": "shaft joint",
  "shock-stroke": "stroke left",
};

/** A goal's name as a table has room for it. */
export function shortName(goal: Goal): string {
  return `${shorts[goal.name] ?? goal.name}${goal.over < 1 ? ` from ${Math.round(100 * goal.over)} %` : ""}`;
}

/** A goal as a table has room for it: "must rod to arm min 30.0°". */
export function goalShort(goal: Goal, unit: LengthUnit, length: Length): string {
  return `${goal.level} ${shortName(goal)} ${goalEndsShort(goal, unit, length)}`.trimEnd();
}

/** What a car gives of a goal, as a table has room for it; "!" where it is missed. */
export function metShort({ goal, reading, miss }: Met, unit: LengthUnit, length: Length): string {
  return miss <= 0 ? readingWords(goal, reading, unit, length) : `${missedWords({ goal, reading }, unit, length)} !`;
}

/** What a car gives of a goal that it misses; by less than is shown, the same number as its end would look met. */
export function missedWords(
  { goal, reading }: Pick<Met, "goal" | "reading">,
  unit: LengthUnit,
  length: Length,
): string {
  const said = readingWords(goal, reading, unit, length);
  const end = goalEndsShort(goal, unit, length);
  return `${end === `max ${said}` ? "over " : end === `min ${said}` ? "under " : ""}${said}`;
}

/** Both ends of a band: "60-110 %", or one number where they are the same to a reader. */
function bandWords(goal: Goal, { low, high }: Reading, unit: LengthUnit, length: Length): string {
  const say = (value: number) => goalNumber(goal, value, unit, length);
  if (say(low) === say(high)) return say(low);
  return low < 0 || high < 0 ? `${say(low)} to ${say(high)}` : `${say(low).replace(/ %$/, "")}-${say(high)}`;
}

/** A goal in one phrase. */
export function goalWords(goal: Goal, unit: LengthUnit, length: Length): string {
  const ends = goalEnds(goal, unit, length);
  return ends === "" ? goalName(goal) : `${goalName(goal)} ${ends}`;
}

/** What a car gives of a goal: the end of its reading that decides, or both ends of a band. */
export function readingWords(goal: Goal, reading: Reading | null, unit: LengthUnit, length: Length): string {
  if (reading === null) return "not known";
  if (goal.name === "range") return reading.high === 0 ? "yes" : `short by ${length(reading.high)}`;
  const say = (value: number) => goalNumber(goal, value, unit, length);
  const { least, most } = goal;
  if (least === null) return say(reading.high);
  if (most === null) return say(reading.low);
  return bandWords(goal, reading, unit, length);
}

/** Musts that are met by so little that the build may lose them. */
export function metByLittle(tight: readonly Met[], unit: LengthUnit, length: Length): readonly string[] {
  return tight.map(
    ({ goal, reading }) => `${goalWords(goal, unit, length)}: ${readingWords(goal, reading, unit, length)}`,
  );
}

/** "1/4 in farther back"; null where it is not moved. */
export function moveWords({ pair, kind }: Variable, move: number, length: Length): string | null {
  const size = kind === "angle" ? degrees(Math.abs(move)) : length(Math.abs(move));
  if (Math.abs(move) < 1e-9) return null;
  const [more, less] = waysOf(pair) ?? ["more", "less"];
  return `${size} ${move > 0 ? more : less}`;
}

/** Said of a part that an answer leaves alone. */
export const STAYS = "stays where it is";

/** What moves together, such as "Lower arm, joint, both sides": the label without its coordinate, and the side. */
export function partWords({ label, sides }: Pick<Variable, "label" | "sides">): string {
  const part = label.replace(/, (ahead|out|up|offset)$/, "");
  return sides === null ? part : `${part}, ${sides === "both" ? "both sides" : sides}`;
}

/**
 * All moves of an answer, part by part: "Tie-rod tab, both sides: 1/4 in farther back, 3/16 in farther out". What stays is
 * said to stay.
 */
export function moveLines(variables: readonly Variable[], moves: Float64Array, length: Length): readonly string[] {
  const parts = [...new Set(variables.map(partWords))];
  return parts.map((part) => {
    const own = variables.flatMap((variable, i) =>
      partWords(variable) === part ? [[variable, moves[i]] as const] : [],
    );
    const words = own.map(([variable, move]) => moveWords(variable, move, length)).filter((each) => each !== null);
    return `${part}: ${words.length === 0 ? STAYS : words.join(", ")}`;
  });
}

/** Where a variable may go, as the file says it: "-6 in to -3 in, now -4 1/2 in". */
export function roomWords({ quantities, kind, low, high }: Variable, numbers: Float64Array, length: Length): string {
  const say = (value: number) => sayValue(value, kind, length);
  const now = quantities.map(({ index }) => numbers[index]);
  const [first = 0] = now;
  const alike = now.every((value) => Math.abs(value - first) < 1e-9);
  if (!alike) return `${say(low)} to ${high > 0 ? "+" : ""}${say(high)} from where each is`;
  return `${say(first + low)} to ${say(first + high)}, now ${say(first)}`;
}

/** All moves of an answer on one line: "Tie-rod tab 1/8 in farther back, 1/16 in lower; Rack stays where it is". */
export function movesBrief(variables: readonly Variable[], moves: Float64Array, length: Length): string {
  return moveLines(variables, moves, length)
    .map((line) => line.replace(", both sides: ", " ").replace(": ", " "))
    .join("; ");
}

/** "ahead -4 3/4 in, out 19 15/16 in": where a part, in the words of `partWords`, is in a car, as the file says it. */
export function placeWords(
  variables: readonly Variable[],
  { study: { car } }: Placed,
  part: string,
  length: Length,
): string {
  return variables
    .filter((variable) => partWords(variable) === part)
    .map(({ pair, quantities, kind }) => {
      const values = [...new Set(quantities.map(({ index }) => sayValue(car.numbers[index] ?? 0, kind, length)))];
      return `${pair.split(".").at(-1)} ${values.join(" / ")}`;
    })
    .join(", ");
}

function sayValue(value: number, kind: "length" | "angle", length: Length): string {
  return kind === "angle" ? degrees(value) : value < 0 ? `-${length(-value)}` : length(value);
}

/** Where each part is then that an answer moves: "Tie-rod tab, both sides: ahead -4 1/8 in, out 22 7/16 in". */
export function placeLines(
  variables: readonly Variable[],
  moves: Float64Array,
  placed: Placed,
  length: Length,
): readonly string[] {
  return moveLines(variables, moves, length).flatMap((line, i) => {
    const part = [...new Set(variables.map(partWords))][i] ?? "";
    return line.endsWith(STAYS) ? [] : [`${part}: ${placeWords(variables, placed, part, length)}`];
  });
}
