import type { Matched } from "../solve/match/matched.ts";
import { offMiddle } from "./words.ts";

/** Why what is off cannot be told: too few readings, or more than one cause that fits as well. */
export type Undecided = "few" | "which";

/** Why the car that a match came to is not to be gone on with; null where it is, or where nothing is off. */
export function undecidedOf(matched: Matched): Undecided | null {
  const { parts, readings, few } = matched;
  const doubted = [...parts.flatMap(({ off }) => off ?? []), ...readings.flatMap(({ wrong }) => wrong ?? [])];
  if (few && (doubted.length > 0 || isOffMiddle(matched))) return "few";
  return doubted.some(({ or }) => or.length > 0) ? "which" : null;
}

/** Whether the rack or column is off its middle with the wheels straight by more than its doubt, and than can be measured. */
export function isOffMiddle({ onFile, zero }: Pick<Matched, "onFile" | "zero">): boolean {
  if (zero === null) return false;
  return Math.abs(zero.value - (onFile.zero ?? 0)) > Math.max(2 * zero.deviation, offMiddle[onFile.inputKind]);
}

const numbers = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

/** "two readings", "39 readings". */
export function countWords(readings: number): string {
  return `${numbers[readings] ?? readings} reading${readings === 1 ? "" : "s"}`;
}

/** Why such a car cannot be put on the bench, short enough for one line; null where it can. What there is to do its page says. */
export function whyUndecided(matched: Matched): string | null {
  const undecided = undecidedOf(matched);
  if (undecided === null) return null;
  const words = `${countWords(matched.readings.length)} cannot tell ${undecided === "few" ? "what" : "which"} is off`;
  return `Not yet: ${words}.`;
}

type Kind = Matched["readings"][number]["prediction"]["reading"]["kind"];

/** What tells most where it was not read yet, in the form's words. */
const worthReading: readonly (readonly [Kind, string])[] = [
  ["rod", "both tie rods, eye to eye"],
  ["straight", "where the rack stands with the wheels straight"],
  ["toe", "toe"],
  ["camber", "camber"],
  ["caster", "caster"],
  ["bump", "the bump gauge"],
  ["between", "lengths from the tab to both joints"],
];

/** So many more kinds of reading are named: a list of all would be the form again. */
const NAMED = 3;

/** What was not read yet and would tell more: turns the other way and to the locks first. */
export function notRead({ onFile, readings }: Pick<Matched, "onFile" | "readings">): readonly string[] {
  const read = readings.map(({ prediction }) => prediction.reading);
  const turns = read.flatMap((each) => (each.kind === "turn" ? [each] : []));
  const other = turns.every(({ turn }) => turn === "left") ? "right" : "left";
  const plates =
    turns.length === 0
      ? ["turn plates, both ways"]
      : [
          ...(turns.some(({ turn }) => turn === other) ? [] : [`turn plates to the ${other} too`]),
          ...(turns.some(({ stood }) => stood === "lock") ? [] : ["both locks"]),
        ];
  const kinds = worthReading.flatMap(([kind, words]) => (read.some((each) => each.kind === kind) ? [] : [words]));
  return [...plates, ...kinds.slice(0, NAMED)].map((words) => words.replace("the rack", `the ${onFile.inputKind}`));
}
