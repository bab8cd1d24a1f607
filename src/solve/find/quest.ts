import type { Study } from "../../measures/study.ts";
import { type Goal, goalsFor, lacking } from "../goals/goals.ts";
import { judgeable } from "../goals/score.ts";
import type { Quest } from "./place.ts";
import { type NoRoom, type Rooms, rodsOf, roomsOf, usualRooms, usualStep, variablesOf } from "./room.ts";

/** What is asked for beside what the file says. */
export interface Asked {
  readonly goals?: readonly Goal[];
  readonly rooms?: Rooms;
  readonly rods?: Quest["rods"];
  /** mm. */
  readonly step?: number;
}

/** What was asked for that the file says too little to judge. */
export interface Unjudged {
  readonly goal: Goal;
  readonly lacks: string;
}

/** A quest, with what it is set to and what cannot be judged. */
export interface SetQuest extends Quest {
  readonly step: number;
  readonly unjudged: readonly Unjudged[];
}

/**
 * What a search on a car is about: what its file's `find` and whoever asks say of goals, room, rods and step, and what a
 * shop would take where neither says anything. What is wrong with a room, where one is none.
 */
export function questFor(study: Study, asked: Asked = {}): SetQuest | NoRoom {
  const { car } = study;
  const step = asked.step ?? car.sections.find?.step ?? usualStep(car);
  const own = { ...roomsOf(car), ...asked.rooms };
  const variables = variablesOf(car, Object.keys(own).length === 0 ? usualRooms(car) : own, step);
  if ("why" in variables) return variables;
  const goals = goalsFor(study, asked.goals);
  return {
    study,
    goals: goals.filter((goal) => judgeable(study, goal)),
    variables,
    rods: asked.rods ?? rodsOf(car),
    step,
    unjudged: goals
      .filter((goal) => !judgeable(study, goal))
      .map((goal) => ({ goal, lacks: lacking(car, goal.name) ?? "wheel travel" })),
  };
}
