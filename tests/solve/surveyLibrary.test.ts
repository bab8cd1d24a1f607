import { readFileSync } from "node:fs";
import fc from "fast-check";
import { levenbergMarquardt } from "ml-levenberg-marquardt";
import { expect, it } from "vitest";
import { loadSheet } from "../../src/files/sheets.ts";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { settleSurvey } from "../../src/solve/survey/survey.ts";
import type { ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import { readSurvey } from "../../src/vehicle/survey/sheet.ts";
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

/** A length as it stands on a sheet, "-13/16" or "14 3/8" or 23, inches. */
function inches(text: string): number {
  const [, sign, whole, top, bottom] = /^"?(-?)(?:(\d+)(?![\d/]))? ?(?:(\d+)\/(\d+))?"?$/.exec(text.trim()) ?? [];
  const size = Number(whole ?? 0) + Number(top ?? 0) / Number(bottom ?? 1);
  return sign === "-" ? -size : size;
}

/** The readings of the example sheet, read off its text here and not by the program, inches. */
function donorReadings(): readonly (ToTake & { readonly read: number })[] {
  const groups = { heights: "height", out: "out", ahead: "ahead", distances: "distance" } as const;
  const text = readFileSync(new URL("../../presets/sheets/donor-front.yaml", import.meta.url), "utf8");
  return Object.entries(groups).flatMap(([group, kind]) => {
    const [, block = ""] = new RegExp(`^${group}:\\n((?:  .*\\n)+)`, "m").exec(text) ?? [];
    return [...block.matchAll(/^ {2}(.*?): (.+)$/gm)].map(([, key = "", read = ""]) => ({
      kind,
      names: key.split(" to "),
      read: inches(read),
    }));
  });
}

it("makes of every reading of the example sheet what that library makes of it, the wrong one too", () => {
  const all = donorReadings();
  const wrong = all.findIndex(({ names }) => names.join() === "left lower-arm.joint,left lower-arm.rear");
  const kept = all.filter((_, i) => i !== wrong);
  const points = [...new Set(all.flatMap((each) => each.names))];
  expect([all.length, points.length]).toEqual([121, 20]);
  const sigma = 1 / 16;
  const read = (name: string, kind: ToTake["kind"]) =>
    all.find((each) => each.kind === kind && each.names.join() === name)?.read ?? 0;
  const placed =
    (p: readonly number[]) =>
    (name: string): VehiclePlace => {
      const i = 3 * points.indexOf(name);
      return [p[i] ?? 0, p[i + 1] ?? 0, p[i + 2] ?? 0];
    };
  const theirs = levenbergMarquardt(
    { x: kept.map((_, i) => i), y: kept.map((each) => each.read / sigma) },
    (p: number[]) => (i: number) => shownBy(kept[i] ?? { kind: "height", names: [] }, placed(p)) / sigma,
    {
      // Every point of the sheet has its three places read outright.
      initialValues: points.flatMap((name) => [
        read(name, "ahead"),
        (name.startsWith("right") ? -1 : 1) * read(name, "out"),
        read(name, "height"),
      ]),
      damping: 1e-3,
      maxIterations: 200,
      gradientDifference: 1e-5,
      errorTolerance: 1e-14,
      centralDifference: true,
    },
  );
  const at = placed(theirs.parameterValues);

  const loaded = loadSheet("sheets", "donor-front");
  const survey = readSurvey("text" in loaded ? loaded.text : "");
  if ("complaints" in survey) throw new Error("the example is no sheet");
  const ours = settleSurvey(survey);
  if ("complaint" in ours) throw new Error(ours.complaint);
  expect(ours.blunders.map(({ reading }) => reading)).toEqual([wrong]);
  expect(ours.readings.length).toBe(all.length);
  all.forEach((each, i) => {
    const found = ours.readings[i];
    expect(found?.reading.value, each.names.join(" to ")).toBeCloseTo(each.read * 25.4, 9);
    // As above: both end within a hundred-thousandth of a sigma of the bottom, which moves a distance by twice that at most.
    const off = Math.abs((found?.computed ?? Number.NaN) - shownBy(each, at) * 25.4);
    expect(off, each.names.join(" to ")).toBeLessThan(2e-5 * sigma * 25.4);
  });
});
