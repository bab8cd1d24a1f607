import type { Study } from "../../measures/study.ts";
import { aimsOf } from "../../vehicle/sections/find.ts";
import { type Goal, lacking } from "./goals.ts";
import { type Met, scoreOf } from "./score.ts";

/**
 * The goals of a car file's own `find` that the car misses as it is drawn, judged as a search judges them; none where no must
 * and no want is missed: what would only be nice stops nobody from building.
 */
export function missedGoals(study: Study): readonly Met[] {
  const goals = aimsOf(study.car.sections.find).map((aim): Goal => ({ ...aim, from: "file" }));
  const missed = scoreOf(goals, study).met.filter(({ miss }) => miss > 0);
  return missed.some(({ goal }) => goal.level !== "nice") ? missed : [];
}

/** The goals of a car file's own `find` that the file says too little for, each with the section that it lacks. */
export function unjudgedGoals({ car }: Study): readonly { readonly name: Goal["name"]; readonly needs: string }[] {
  return aimsOf(car.sections.find).flatMap(({ name }) => {
    const needs = lacking(car, name);
    return needs === null ? [] : [{ name, needs }];
  });
}
