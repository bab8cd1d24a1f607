import { Matrix, SVD } from "ml-matrix";
import { randomFrom } from "../../src/solve/search/random.ts";
import { settleSurvey } from "../../src/solve/survey/survey.ts";
import { pointsOf, type SurveyForm, type SurveyPoint } from "../../src/vehicle/survey/points.ts";
import { normalFrom } from "../solve/normal.ts";
import { surveyOf } from "../solve/surveyOf.ts";
import { median, report } from "./pace.ts";

/**
 * A sheet of 40 points and 120 readings brought together, uncertainties and what is not settled included, none to spare:
 * the first of a cold process and the warm ones as shares of the 500 ms that they may take, the warm ones also as a multiple
 * of one singular value decomposition of as many readings by as many unknowns, which takes turns with them in this run.
 */
const form: SurveyForm = { linkage: "double-arm", mechanism: "rack" };
const own = pointsOf(form);
const marks = Array.from(
  { length: 40 - own.length },
  (_, i): SurveyPoint => ({ name: `mark ${i + 1}`, wheel: null, id: null, sideways: "offset", help: "A mark" }),
);
const points = [...own, ...marks];
const random = randomFrom(11);
const at = new Map(
  points.map(({ name, wheel }) => {
    const side = wheel === "right" ? -1 : 1;
    return [name, [600 * (random() - 0.5), side * (200 + 400 * random()), 500 * random()] as const];
  }),
);
const names = points.map(({ name }) => name);
const taken = [
  ...names.map((name) => ({ kind: "height" as const, names: [name] })),
  ...names.map((name) => ({ kind: "out" as const, names: [name] })),
  ...names.slice(0, 20).map((name) => ({ kind: "ahead" as const, names: [name] })),
  ...names.slice(20).map((name, i) => ({ kind: "distance" as const, names: [name, names[i] ?? ""] })),
];
const normal = normalFrom(3);
const error = Array.from(taken, normal);
const survey = surveyOf(form, (name) => at.get(name) ?? [0, 0, 0], {
  taken,
  error: (i) => error[i] ?? 0,
  more: { points },
});
if (survey.points.length !== 40 || survey.readings.length !== 120) throw new Error("not the sheet that was meant");

function timed(act: () => void): number {
  const start = performance.now();
  act();
  return performance.now() - start;
}

function settle(): void {
  if ("complaint" in settleSurvey(survey)) throw new Error("the sheet came to nothing");
}

const matrix = Matrix.random(120, 120, { random });
const first = timed(settle);
const surveys: number[] = [];
const decompositions: number[] = [];
for (let round = 0; round < 15; round++) {
  surveys.push(timed(settle));
  decompositions.push(timed(() => new SVD(matrix)));
}
const most = 500;
report("survey-of-40-points-and-120-readings-cold/500-ms", first / most, 1);
report("survey-of-40-points-and-120-readings-warm/500-ms", median(surveys.slice(5)) / most, 1);
report(
  "survey-of-40-points-and-120-readings-warm/svd-of-120-by-120",
  median(surveys.slice(5)) / median(decompositions.slice(5)),
);
