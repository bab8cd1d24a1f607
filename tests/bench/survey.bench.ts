import { spawnSync } from "node:child_process";
import { Matrix, SVD } from "ml-matrix";
import { randomFrom } from "../../src/solve/search/random.ts";
import { settleSurvey } from "../../src/solve/survey/survey.ts";
import type { ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm, type SurveyPoint } from "../../src/vehicle/survey/points.ts";
import type { Survey, VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { normalFrom } from "../solve/normal.ts";
import { surveyOf } from "../solve/surveyOf.ts";
import { median, report } from "./pace.ts";

/**
 * Sheets of 40 points brought together, uncertainties and what is not settled included: the first of a cold process and the
 * warm ones as shares of the 500 ms that they may take, the warm ones also as a multiple of one singular value decomposition
 * of as many readings by as many unknowns, which takes turns with them in this run.
 *
 * 120 readings settle the 120 coordinates of 40 points with none to spare. With sides that are alike they leave 60 to spare,
 * as many as a sheet mostly has (the example has 61); so do 180 readings of 40 points. In both one is wrong by 3/4 in, so that
 * the search for it, and for others, is in their time.
 */
const form: SurveyForm = { linkage: "double-arm", mechanism: "rack" };
const own = pointsOf(form);
const marks = Array.from({ length: (40 - own.length) / 2 }, (_, i) =>
  (["left", "right"] as const).map(
    (wheel): SurveyPoint => ({
      name: `${wheel} mark ${i + 1}`,
      wheel,
      id: null,
      sideways: "offset",
      help: "A mark",
    }),
  ),
).flat();
const points = [...own, ...marks];
const names = points.map(({ name }) => name);
const random = randomFrom(11);
const at = new Map<string, VehiclePlace>();
for (const name of names) {
  const across = at.get(name.replace(/^right/, "left"));
  at.set(
    name,
    across === undefined
      ? [600 * (random() - 0.5), 200 + 400 * random(), 500 * random()]
      : [across[0], -across[1], across[2]],
  );
}

const alone = (kind: "height" | "out" | "ahead", of: readonly string[]): readonly ToTake[] =>
  of.map((name) => ({ kind, names: [name] }));
const across = (by: number, of: readonly string[]): readonly ToTake[] =>
  of.map((name, i) => ({ kind: "distance", names: [name, names[(names.indexOf(name) + by + i) % 40]] }));
const half = names.filter((_, i) => i % 2 === 0);

function sheet(taken: readonly ToTake[], wrong: number | null, more: Partial<Survey>): Survey {
  const error = Array.from(taken, normalFrom(3));
  // 3/4 in at a standard deviation of 1/16 in.
  const slip = (i: number) => (i === wrong ? 12 : 0);
  return surveyOf(form, (name) => at.get(name) ?? [0, 0, 0], {
    taken,
    error: (i) => (error[i] ?? 0) + slip(i),
    sigma: inch / 16,
    more: { points, ...more },
  });
}

const mirrors = new Map(
  names.flatMap((name, right) =>
    name.startsWith("right") ? [[right, names.indexOf(name.replace("right", "left"))] as const] : [],
  ),
);
const full = [...alone("height", names), ...alone("out", names), ...alone("ahead", names)];
const sheets = {
  "none-to-spare": sheet(
    [...alone("height", names), ...alone("out", names), ...alone("ahead", half), ...across(7, half)],
    null,
    {},
  ),
  "sides-alike-and-one-wrong": sheet(
    [
      ...alone("height", half),
      ...alone("out", half),
      ...alone("ahead", half),
      ...across(1, half),
      ...across(7, half),
      ...across(13, half),
    ],
    75,
    { mirrors },
  ),
  "60-readings-more-and-one-wrong": sheet([...full, ...across(7, names), ...across(13, half)], 140, {}),
};

function timed(act: () => void): number {
  const start = performance.now();
  act();
  return performance.now() - start;
}

/** What a sheet comes to: as many wrong readings as were planted, so that the search for them was done. */
function settle(survey: Survey, wrong: number): void {
  const found = settleSurvey(survey);
  if ("complaint" in found) throw new Error("the sheet came to nothing");
  if (found.blunders.length !== wrong) throw new Error(`${found.blunders.length} wrong readings, not ${wrong}`);
}

const wrongIn = (name: string) => (name.endsWith("one-wrong") ? 1 : 0);

/** The first sheet of a process of its own, ms. */
function coldTime(name: string): number {
  const { stdout } = spawnSync(process.execPath, [process.argv[1], name], { encoding: "utf8" });
  return Number(stdout);
}

function measure(name: string, survey: Survey): void {
  const most = 500;
  const matrix = Matrix.random(survey.readings.length, survey.mirrors.size > 0 ? 60 : 120, { random });
  const cold: number[] = [];
  const warm: number[] = [];
  const decompositions: number[] = [];
  for (let round = 0; round < 15; round++) {
    if (round < 5) cold.push(coldTime(name));
    warm.push(timed(() => settle(survey, wrongIn(name))));
    decompositions.push(timed(() => new SVD(matrix)));
  }
  const what = `survey-of-40-points-and-${survey.readings.length}-readings-${name}`;
  report(`${what}-cold/500-ms`, median(cold) / most, 1);
  report(`${what}-warm/500-ms`, median(warm.slice(5)) / most, 1);
  report(`${what}-warm/svd`, median(warm.slice(5)) / median(decompositions.slice(5)));
}

const [, , asked] = process.argv;
for (const [name, survey] of Object.entries(sheets)) {
  if (asked === undefined) measure(name, survey);
  else if (asked === name) process.stdout.write(String(timed(() => settle(survey, wrongIn(name)))));
}
