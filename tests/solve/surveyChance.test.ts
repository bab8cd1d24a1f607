import jstat from "jstat";
import { inverse, Matrix } from "ml-matrix";
import { describe, expect, test } from "vitest";
import { randomFrom } from "../../src/solve/search/random.ts";
import { type Surveyed, settleSurvey } from "../../src/solve/survey/survey.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { drawingOf, placeIn } from "../../src/vehicle/survey/drawing.ts";
import { planOf } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import type { VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { surveyOf } from "./surveyOf.ts";

// What the sheet says of its own readings and points, held against seeded trials. Every allowed interval is where the
// quantity would fall but for one time in so many if the claim holds, from jstat's distributions.

/** Normal deviates by Box and Muller's transform (Annals of Mathematical Statistics 29, 1958 [M]). */
function normals(seed: number): () => number {
  const random = randomFrom(seed);
  return () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
}

/** A front end unlike on its two sides, somewhat larger than the starting drawing, and its places by name. */
function frontEnd(form: SurveyForm): ReadonlyMap<string, VehiclePlace> {
  const random = randomFrom(77);
  const drawing = drawingOf(form);
  const places = pointsOf(form).map((point) => {
    const [x, y, z] = placeIn(drawing, point) ?? [0, 0, 0];
    const off = () => 15 * (2 * random() - 1);
    return [point.name, [1.1 * x + off(), 1.1 * y + off(), 1.1 * z + off()] as VehiclePlace] as const;
  });
  return new Map([...places, ["left floor mark", [0, 400, 0]], ["right floor mark", [0, -390, 0]]]);
}

function surveyed(
  form: SurveyForm,
  error: (reading: number) => number,
): { found: Surveyed; at: ReadonlyMap<string, VehiclePlace> } {
  const at = frontEnd(form);
  const found = settleSurvey(surveyOf(form, (name) => at.get(name) ?? [0, 0, 0], { error }));
  if ("complaint" in found) throw new Error(found.complaint);
  return { found, at };
}

const small: SurveyForm = { linkage: "fixed-kingpin", mechanism: "rack" };

/** One time in ten thousand on either side together. */
const tail = 1e-4 / 2;

describe("readings with the errors that the sheet says", () => {
  const trials = 100;
  const runs = Array.from({ length: trials }, (_, n) => surveyed(small, normals(1000 + n)));

  test("leave misfits whose squares add up to a chi-square of as many degrees as there are readings to spare", () => {
    // A reading wrongly set aside (one sheet in a hundred) takes some 4² off a sum of thousands.
    const sum = runs.reduce((all, { found }) => all + (found.scatter ?? 0) ** 2 * found.confidence.freedom, 0);
    const freedom = runs.reduce((all, { found }) => all + found.confidence.freedom, 0);
    expect(jstat.chisquare.cdf(sum, freedom)).toBeGreaterThan(tail);
    expect(jstat.chisquare.cdf(sum, freedom)).toBeLessThan(1 - tail);
  });

  test("put the points as far off as the covariance says, all coordinates and how they go together", () => {
    let sum = 0;
    let freedom = 0;
    for (const { found, at } of runs) {
      const { covariance, deviations } = found.confidence;
      const many = deviations.length;
      const off = new Float64Array(many);
      for (const { point, place } of found.points) {
        const truly = at.get(found.survey.points[point].name) ?? [0, 0, 0];
        place.forEach((each, axis) => {
          off[found.unknowns.at[3 * point + axis]] = each - truly[axis];
        });
      }
      const weight = inverse(Matrix.from1DArray(many, many, Array.from(covariance)));
      const row = Matrix.rowVector(Array.from(off));
      sum += row.mmul(weight).mmul(row.transpose()).get(0, 0);
      freedom += many;
    }
    expect(jstat.chisquare.cdf(sum, freedom)).toBeGreaterThan(tail);
    expect(jstat.chisquare.cdf(sum, freedom)).toBeLessThan(1 - tail);
  });

  test("leave a coordinate within 1.96 of its standard deviations 19 times of 20", () => {
    // One coordinate a trial, another one each time: those of one trial go together.
    const inside = runs.filter(({ found, at }, n) => {
      const { point, place, deviations } = found.points[n % found.points.length];
      const axis = n % 3;
      const truly = at.get(found.survey.points[point].name) ?? [0, 0, 0];
      const deviation = deviations[axis];
      if (deviation === "undetermined") throw new Error("a point of a whole sheet is not settled");
      return Math.abs(place[axis] - truly[axis]) < 1.96 * deviation;
    }).length;
    expect(jstat.binomial.cdf(inside, trials, 0.95)).toBeGreaterThan(tail);
    expect(1 - jstat.binomial.cdf(inside - 1, trials, 0.95)).toBeGreaterThan(tail);
  });

  test("are called wrong on fewer than 5 sheets of 100", () => {
    expect(runs.filter(({ found }) => found.blunders.length > 0).length).toBeLessThan(5);
  });
});

describe("a reading that is wrong by 3/4 in, on a sheet as the blank list has it", () => {
  const forms: readonly SurveyForm[] = linkages.map(({ name }) => ({ linkage: name, mechanism: "rack" }));

  test("is found on at least 95 sheets of 100", () => {
    const sheets = 100;
    const random = randomFrom(4);
    const missed: string[] = [];
    for (let n = 0; n < sheets; n++) {
      const form = forms[n % forms.length];
      const plan = planOf(form);
      const wrong = Math.floor(random() * plan.length);
      const by = ((random() < 0.5 ? -1 : 1) * 0.75 * inch) / (inch / 16);
      const noise = normals(5000 + n);
      const { blunders } = surveyed(form, (reading) => noise() + (reading === wrong ? by : 0)).found;
      // Found is what is named itself; to be offered as one of two that cannot be told apart is not enough here.
      if (!blunders.some(({ reading }) => reading === wrong))
        missed.push(`${form.linkage}: ${plan[wrong].kind} ${plan[wrong].names.join(" to ")}`);
    }
    expect(missed.length, missed.join("; ")).toBeLessThanOrEqual(5);
  });
});
