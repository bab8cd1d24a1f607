import type { Study } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import { aimsOf } from "../../vehicle/sections/find.ts";
import { type Aim, type GoalName, goalKinds, goalNames, type Level } from "../../vehicle/sections/goals.ts";
import { type LimitName, limitKinds, limitOf } from "../../vehicle/sections/limits.ts";
import { type TargetName, targetOf } from "../../vehicle/sections/targets.ts";
import type { SectionName } from "../../vehicle/sections.ts";
import { readingOf } from "./readings.ts";

/** Something that a search aims at. */
export interface Goal extends Aim {
  readonly name: GoalName | "range";
  readonly level: Level;
  /** Who set it: the file's `find`, its `targets` or `limits`, the command, or what a shop would expect. */
  readonly from: "file" | "asked" | "usual";
}

const sectionOf: Readonly<Partial<Record<Goal["name"], SectionName>>> = {
  "rod-end": "rod-ends",
  engagement: "threads",
  adjustment: "threads",
  clearance: "tubes",
  "shock-stroke": "shock",
  "shaft-joint": "steering-shaft",
};

/** The section that a goal of the car is read from and that the file lacks; null where it lacks none. */
export function lacking({ sections }: Pick<Car, "sections">, name: Goal["name"]): string | null {
  const needs = sectionOf[name];
  return needs !== undefined && sections[needs] === null ? needs : null;
}

/** All that a front end must do whatever else is asked of it: go together over its whole range. */
const together: Goal = { name: "range", level: "must", least: null, most: 0, over: 1, from: "usual" };

const isLimit = (name: string): name is LimitName => Object.hasOwn(limitKinds, name);

/** A goal from a limit of `check`: not broken at its must, not even close at its want. */
function limitGoals(study: Study, name: LimitName, which: readonly Level[]): readonly Goal[] {
  const { close, broken, from: source } = limitOf(study.car.sections.limits, name);
  const from = source === "file" ? "file" : "usual";
  const under = limitKinds[name].bad === "under";
  return which.map((level): Goal => {
    const end = level === "must" ? broken : close;
    return { name, level, least: under ? end : null, most: under ? null : end, over: 1, from };
  });
}

/** A goal from a target: its first level is wanted, and where the file itself sets the last one that is a must. */
function targetGoals({ car }: Study, name: GoalName, under: TargetName | null, most: TargetName): readonly Goal[] {
  const { targets } = car.sections;
  const [low, high] = [under === null ? null : targetOf(targets, under), targetOf(targets, most)];
  const from = low?.from === "file" || high.from === "file" ? "file" : "usual";
  const want: Goal = { name, level: "want", least: low?.warn ?? null, most: high.warn, over: 1, from };
  const own = (target: TargetName | null) => (target === null ? null : (targets?.[target]?.bad ?? null));
  const [least, worst] = [own(under), own(most)];
  if (least === null && worst === null) return [want];
  return [{ name, level: "must", least, most: worst, over: 1, from: "file" }, want];
}

/** Whether the file says enough of a car for a limit to be judged. */
function isTold(study: Study, name: LimitName): boolean {
  return lacking(study.car, name) === null && readingOf(name, 1, study) !== null;
}

/** What a shop would expect without being asked: no more of something than that. */
function atMost(name: GoalName, level: Level, most: number): Goal {
  return { name, level, least: null, most, over: 1, from: "usual" };
}

/** Rods as cut pull the toe off its setting as things move, which nobody wants. */
function toeKept({ car: { form } }: Study): readonly Goal[] {
  const kept = form.rods.left === "cut" || form.rods.right === "cut";
  return kept ? [atMost("straight-toe", "want", goalKinds["straight-toe"].scale)] : [];
}

/** What a shop would expect of a car whose builder asks for nothing: limits and targets, and no wider circle than now. */
function usual(study: Study): readonly Goal[] {
  const limits = (Object.keys(limitKinds) as LimitName[]).filter((name) => isTold(study, name));
  const circle = readingOf("turning-circle", 1, study);
  return [
    ...limits.flatMap((name) => limitGoals(study, name, name === "rod-to-arm" ? ["must", "want"] : ["must"])),
    ...(study.suspended
      ? [
          ...targetGoals(study, "toe-change", null, "toe-change"),
          ...targetGoals(study, "bounce-steer", null, "bounce-steer"),
        ]
      : []),
    ...targetGoals(study, "ackermann", "ackermann-least", "ackermann-most"),
    ...targetGoals(study, "lock-difference", null, "lock-difference"),
    ...toeKept(study),
    ...(circle === null ? [] : [atMost("turning-circle", "want", circle.high)]),
  ];
}

const levelRank: Readonly<Record<Level, number>> = { must: 0, want: 1, nice: 2 };

/** Whether a goal that is asked for stands in the place of another: the same at its level, or a harder one at a higher. */
function isInPlaceOf(asked: Goal, goal: Goal): boolean {
  if (asked.name !== goal.name) return false;
  if (asked.level === goal.level) return true;
  const holds =
    asked.over === goal.over &&
    (goal.least === null || (asked.least !== null && asked.least >= goal.least)) &&
    (goal.most === null || (asked.most !== null && asked.most <= goal.most));
  return levelRank[asked.level] < levelRank[goal.level] && holds;
}

/**
 * The goals of a car: those that its file sets, with those asked for in the place of the same at the same level; where
 * there is neither, what a shop would expect. Whatever is asked, the front end must go together, and keep out of its
 * dead points: a limit that nobody names is still a must, a rod-to-arm angle that is not even doubtful still wanted, and so
 * is the toe as it is set, where rods keep their length.
 */
export function goalsFor(study: Study, asked: readonly Goal[] = []): readonly Goal[] {
  const own = aimsOf(study.car.sections.find)
    .map((aim): Goal => ({ ...aim, from: "file" }))
    .filter((goal) => !asked.some((each) => isInPlaceOf(each, goal)));
  const set = [...own, ...asked];
  if (set.length === 0) return [together, ...usual(study)];
  // Who names a limit as a must has its must; who names it at all has said what is wanted of it.
  const isSet = (name: GoalName, level: Level) =>
    set.some((goal) => goal.name === name && (level === "want" || goal.level === level));
  const limits = goalNames.filter(isLimit).filter((name) => isTold(study, name));
  const kept = limits.flatMap((name) =>
    limitGoals(study, name, name === "rod-to-arm" ? ["must", "want"] : ["must"]).filter(
      ({ level }) => !isSet(name, level),
    ),
  );
  const toe = set.some(({ name }) => name === "straight-toe") ? [] : toeKept(study);
  return [together, ...kept, ...set, ...toe];
}

/** What counts as one miss of a goal, mm, rad or bare. */
export function scaleOf({ name }: Goal): number {
  return name === "range" ? 1 : goalKinds[name].scale;
}
