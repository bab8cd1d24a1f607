import { carFigures } from "../../measures/carFigures.ts";
import type { Study } from "../../measures/study.ts";
import { goalsFor } from "../goals/goals.ts";
import { dear } from "../goals/readings.ts";
import { scoreOf } from "../goals/score.ts";

/**
 * Reads the total score of a car's goals, lower better, and then every figure of the whole car. The goals are those of the car as
 * it stands; those that need a whole check of their own are left out.
 */
export function tabNumbers(before: Study): (study: Study) => readonly (number | null)[] {
  const goals = goalsFor(before).filter(({ name }) => !dear.has(name));
  return (study) => [scoreOf(goals, study).total, ...carFigures.map((figure) => figure.read(study))];
}
