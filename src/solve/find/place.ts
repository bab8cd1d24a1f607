import type { Detail } from "../../measures/leastRodAngle.ts";
import { type Study, studyOf } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import type { Goal } from "../goals/goals.ts";
import { type Met, NO_CAR, type Score, scoreOf } from "../goals/score.ts";
import type { Cost } from "../search/problem.ts";
import type { Variable } from "./room.ts";

/** What a search is about: the car as it is, what it aims at, and what it may move. */
export interface Quest {
  readonly study: Study;
  readonly goals: readonly Goal[];
  readonly variables: readonly Variable[];
  /** Whether the tie rods are cut to fit wherever things are moved, or keep the length they have now. */
  readonly rods: "follow" | "keep";
}

/** The car with its parts moved, and how well it does. */
export interface Placed {
  /** By how much each variable is moved, mm or rad. */
  readonly moves: Float64Array;
  readonly study: Study;
  readonly score: Score;
}

/** A must that is met now, or less missed, may not get worse: this for each miss more, above any gain elsewhere. */
const WORSE = 1e6;

/** Moves cost a little, all together at most this: of places that do alike, the nearer is the better. */
const PRICE = 0.1;

const lengths = [indexOf("left.tie-rod.length"), indexOf("right.tie-rod.length")] as const;

/** The car with its parts moved so; its text stays behind. */
export function carMoved({ study, variables, rods }: Quest, moves: Float64Array): Car {
  const { car } = study;
  const numbers = Float64Array.from(car.numbers);
  for (let i = 0; i < variables.length; i++) {
    for (const { index } of variables[i].quantities) numbers[index] += moves[i];
  }
  const keep = rods === "keep";
  numbers[lengths[0]] = keep ? study.rodLengths.left : 0;
  numbers[lengths[1]] = keep ? study.rodLengths.right : 0;
  const state = keep ? "cut" : "fit";
  return { ...car, numbers, form: { ...car.form, rods: { left: state, right: state } } };
}

/** The car with its parts moved so, whole; null where it does not go together. */
export function placed(quest: Quest, moves: Float64Array): Placed | null {
  const study = studyOf(carMoved(quest, moves));
  return "refused" in study ? null : { moves, study, score: scoreOf(quest.goals, study) };
}

/** The car as it is, nothing moved and the rods as they are. */
export function asItIs({ study, goals, variables }: Quest): Placed {
  return { moves: new Float64Array(variables.length), study, score: scoreOf(goals, study) };
}

/** By how many misses each must is missed. */
function mustMisses(met: readonly Met[]): ReadonlyMap<Goal, number> {
  return new Map(met.filter(({ goal }) => goal.level === "must").map(({ goal, miss }) => [goal, miss]));
}

/** By how many misses the musts are missed that are missed more than before; 0 where none is. */
export function worsened(before: Score, after: Score): number {
  const was = mustMisses(before.met);
  return [...mustMisses(after.met)].reduce((sum, [goal, miss]) => sum + Math.max(0, miss - (was.get(goal) ?? 0)), 0);
}

/** Whether a place turns the wheels the other way than the car as it stands, where that steers as it should: no answer may. */
export function turnsAgainst({ study: now }: Pick<Quest, "study">, { inputLeftTurns }: Study): boolean {
  if (now.steersBackwards === true || now.inputLeftTurns === null) return false;
  return inputLeftTurns !== now.inputLeftTurns;
}

/**
 * What a place costs: its score, what it makes worse of the musts, and a little for moving at all. `detail`: how closely its
 * range is looked at.
 */
export function costOf(quest: Quest, before: Score, detail: Detail): Cost {
  const { variables, goals } = quest;
  const reach = variables.map(({ low, high }) => Math.max(Math.abs(low), Math.abs(high)));
  return (moves, enough) => {
    const study = studyOf(carMoved(quest, moves), detail);
    if ("refused" in study || turnsAgainst(quest, study)) return NO_CAR;
    const far = moves.reduce((sum, move, i) => sum + (reach[i] === 0 ? 0 : Math.abs(move) / reach[i]), 0);
    const price = (PRICE * far) / variables.length;
    const score = scoreOf(goals, study, enough - price, detail);
    return score.total + WORSE * worsened(before, score) + price;
  };
}
