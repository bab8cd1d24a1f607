import fc from "fast-check";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { expect, it } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { settleSurvey } from "../../src/solve/survey/survey.ts";
import type { ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import type { VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { seed } from "../oracles/cars.ts";
import { carsOf } from "../oracles/combinations.ts";
import { normalFrom } from "./normal.ts";
import { placesOfDrawn, shownBy, surveyOf } from "./surveyOf.ts";

const form: SurveyForm = { linkage: "double-arm", mechanism: "rack" };
const names = pointsOf(form)
  .map(({ name }) => name)
  .filter((name) => name.startsWith("left "));

/** Each place by itself and every distance between two: more than twice as many readings as unknowns. */
const taken: readonly ToTake[] = [
  ...(["height", "out", "ahead"] as const).flatMap((kind) => names.map((name) => ({ kind, names: [name] }))),
  ...names.flatMap((one, i) => names.slice(i + 1).map((other) => ({ kind: "distance" as const, names: [one, other] }))),
];

it("puts the points where a general-purpose library of least squares puts them", () => {
  fc.assert(
    fc.property(carsOf(form.linkage, form.mechanism), fc.nat(1000), (drawn: Drawn, n) => {
      const at = placesOfDrawn(drawn);
      const truly = (name: string): VehiclePlace => at.get(name) ?? [0, 0, 0];
      const error = Array.from(taken, normalFrom(n));
      const survey = surveyOf(form, truly, { taken, error: (i) => error[i] ?? 0 });
      const found = settleSurvey(survey);
      if ("complaint" in found) throw new Error(found.complaint);
      // What is set aside is another sheet: one in some hundreds.
      fc.pre(found.blunders.length === 0);

      const placed =
        (p: number[]) =>
        (name: string): VehiclePlace => {
          const i = 3 * names.indexOf(name);
          return [p[i] ?? 0, p[i + 1] ?? 0, p[i + 2] ?? 0];
        };
      const sigma = survey.readings[0]?.sigma ?? 1;
      const theirs = levenbergMarquardt(
        { x: taken.map((_, i) => i), y: survey.readings.map(({ value }) => value / sigma) },
        (p: number[]) => (i: number) => shownBy(taken[i] ?? { kind: "height", names: [] }, placed(p)) / sigma,
        {
          initialValues: names.flatMap(truly),
          damping: 1e-3,
          maxIterations: 200,
          gradientDifference: 1e-4,
          errorTolerance: 1e-14,
          centralDifference: true,
        },
      );
      const ours = new Map(found.points.map(({ point, place }) => [survey.points[point]?.name, place]));
      for (const name of names) {
        const [x, y, z] = placed(theirs.parameterValues)(name);
        const [u = 0, v = 0, w = 0] = ours.get(name) ?? [];
        // Ours ends once a step alters the misfits by a millionth of a sigma, and no place is known worse than a sigma here.
        expect(Math.hypot(x - u, y - v, z - w)).toBeLessThan(1e-5 * sigma);
      }
      // Their sum of squares is no better than by rounding, so that both are at the same bottom.
      const cost = found.readings.reduce(
        (sum, { reading, computed }) => sum + ((computed - reading.value) / sigma) ** 2,
        0,
      );
      expect(cost).toBeLessThan(theirs.parameterError * (1 + 1e-9));
    }),
    { seed, numRuns: 8 },
  );
});
