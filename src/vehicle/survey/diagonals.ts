import { linkageOf } from "../linkages.ts";
import { axisEnds } from "../starting/steering-axis.ts";
import type { SurveyForm } from "./points.ts";

/** Three places of each corner, by their paths below it: both ends of the steering axis, and one on the frame. */
export function cornersOf({ linkage }: SurveyForm): readonly [lower: string, upper: string, frame: string] {
  const [lower, upper] = axisEnds[linkage];
  const { bodies } = linkageOf(linkage);
  const moves = bodies.map((body) => body.moves).find((each) => each !== "with the upright");
  const frame = moves === undefined ? null : "about" in moves ? moves.about[0] : moves.across;
  // King pins that are welded to the frame have no other place on it: the tab stands in for one, wheels straight.
  return [lower, upper, frame ?? "tie-rod.outer"];
}

/**
 * The six diagonals of a front end, as pairs of points' names: each of a corner's three places to the other two of the other
 * corner. Each place is the end of two of them, so that the one that moved is where both changed.
 */
export function diagonalsOf(form: SurveyForm): readonly (readonly [string, string])[] {
  const [lower, upper, frame] = cornersOf(form);
  const crossed: readonly (readonly [string, string])[] = [
    [lower, upper],
    [lower, frame],
    [upper, frame],
  ];
  return crossed.flatMap(([a, b]) => [
    [`left ${a}`, `right ${b}`],
    [`right ${a}`, `left ${b}`],
  ]);
}
