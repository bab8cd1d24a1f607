import type { Study } from "../../measures/study.ts";
import type { GoalName } from "../../vehicle/sections/goals.ts";
import { goalKinds } from "../../vehicle/sections/goals.ts";
import { type LimitName, limitKinds, limitOf } from "../../vehicle/sections/limits.ts";
import { type TargetName, targetKinds, targetNames, targetOf } from "../../vehicle/sections/targets.ts";
import { lacking } from "../goals/goals.ts";
import { dear, readingOf } from "../goals/readings.ts";

/** A limit or a target that every build is held against. */
export interface Judge {
  readonly id: "range" | LimitName | TargetName;
  readonly label: string;
  readonly kind: "length" | "angle" | "percent" | "diameters";
  readonly bad: "under" | "over";
  /** What is good to this end, and what is broken (of a target: bad) past that; mm, rad, percent or diameters. */
  readonly aim: number;
  readonly limit: number;
  readonly from: "file" | "common practice" | "the parts";
  /** True for what takes so long to read that only every so many builds are held against it. */
  readonly dear: boolean;
  /** The figures whose spread is its spread; none where it is its own. */
  readonly figures: readonly string[];
  /** Its value, without a sign where that does not matter; null where it cannot be told. */
  readonly read: (study: Study) => number | null;
}

const figuresOf: Readonly<Partial<Record<Judge["id"], readonly string[]>>> = {
  "rod-to-arm": ["leastRodAngleLeft", "leastRodAngleRight"],
  "lock-difference": ["lockDifferenceInner"],
  "ackermann-least": ["leftLockAckermann", "rightLockAckermann"],
  "ackermann-most": ["leftLockAckermann", "rightLockAckermann"],
  "toe-change": ["worstToeAcrossTyreLeft", "worstToeAcrossTyreRight"],
  "bounce-steer": ["worstBounceSteer"],
};

const goalOf = (id: LimitName | TargetName): GoalName =>
  id === "ackermann-least" || id === "ackermann-most" ? "ackermann" : id;

function readerOf(id: LimitName | TargetName, bad: "under" | "over"): Judge["read"] {
  const goal = goalOf(id);
  return (study) => {
    const read = readingOf(goal, 1, study, "coarse");
    return read === null ? null : bad === "under" ? read.low : read.high;
  };
}

function limitJudge({ car }: Study, id: LimitName): Judge {
  const { close, broken, from } = limitOf(car.sections.limits, id);
  const { bad, kind } = limitKinds[id];
  return {
    id,
    label: goalKinds[id].label,
    kind: kind === "ratio" ? "diameters" : kind,
    bad,
    aim: close,
    limit: broken,
    from,
    dear: dear.has(id),
    figures: figuresOf[id] ?? [],
    read: readerOf(id, bad),
  };
}

const ends: Readonly<Partial<Record<TargetName, string>>> = {
  "ackermann-least": "Ackermann at the lesser lock",
  "ackermann-most": "Ackermann at the greater lock",
};

function targetJudge({ car }: Study, id: TargetName): Judge {
  const { warn, bad, wrong, from } = targetOf(car.sections.targets, id);
  const { kind } = targetKinds[id];
  return {
    id,
    label: ends[id] ?? goalKinds[goalOf(id)].label,
    kind: kind === "ratio" ? "percent" : kind,
    bad: wrong,
    aim: warn,
    limit: bad,
    from,
    dear: false,
    figures: figuresOf[id] ?? [],
    read: readerOf(id, wrong),
  };
}

/** That the front end goes together over its whole range: how far its worst place is out of reach, mm. */
const range: Judge = {
  id: "range",
  label: "Out of reach, over its whole range",
  kind: "length",
  bad: "over",
  aim: 0,
  limit: 0,
  from: "the parts",
  dear: false,
  figures: [],
  read: (study) => readingOf("range", 1, study)?.high ?? null,
};

/**
 * The limits of the check and the targets that a car can be judged by. The steering shaft is none of them: it has no
 * tolerances.
 */
export function judgesOf(study: Study): readonly Judge[] {
  const limits = (Object.keys(limitKinds) as LimitName[])
    .filter((id) => id !== "shaft-joint" && lacking(study.car, id) === null)
    .map((id) => limitJudge(study, id));
  const all = [...limits, ...targetNames.map((id) => targetJudge(study, id))];
  return [range, ...all.filter(({ read }) => read(study) !== null)];
}

/** Whether a value is not past an end. */
export function meets({ bad }: Pick<Judge, "bad">, value: number | null, end: number): boolean {
  if (value === null) return false;
  return bad === "under" ? value >= end : value <= end;
}
