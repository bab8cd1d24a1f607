import { describe, expect, test } from "vitest";
import { type Bent, bentOf } from "../../src/solve/survey/bent.ts";
import { linkages } from "../../src/vehicle/linkages.ts";
import { cornersOf, diagonalsOf } from "../../src/vehicle/survey/diagonals.ts";
import { drawingOf, placeIn } from "../../src/vehicle/survey/drawing.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import type { VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { shownBy, surveyOf } from "./surveyOf.ts";

const forms: readonly SurveyForm[] = linkages.map(({ name }) => ({ linkage: name, mechanism: "rack" }));

/** What the diagonals say of a front end some of whose places have moved, mm; `error` in sigmas of a reading. */
function bent(
  form: SurveyForm,
  moved: Readonly<Record<string, VehiclePlace>>,
  error: (i: number) => number = () => 0,
): Bent {
  const drawing = drawingOf(form);
  const taken = diagonalsOf(form).map((names) => ({ kind: "distance" as const, names }));
  const at = (name: string): VehiclePlace => {
    const point = pointsOf(form).find((each) => each.name === name);
    const [x, y, z] = (point && placeIn(drawing, point)) ?? [0, 0, 0];
    const [u, v, w] = moved[name] ?? [0, 0, 0];
    return [x + u, y + v, z + w];
  };
  const survey = surveyOf(form, at, { taken, error });
  return bentOf(survey, drawing);
}

describe.each(forms)("the six diagonals of $linkage", (form) => {
  const [lower, upper] = cornersOf(form);

  test("are six, each of a corner's places the end of two, and as long as they are", () => {
    const ends = diagonalsOf(form).flat();
    expect(diagonalsOf(form).length).toBe(6);
    for (const name of new Set(ends)) expect(ends.filter((each) => each === name).length).toBe(2);
    const drawing = drawingOf(form);
    const at = (name: string) =>
      placeIn(drawing, pointsOf(form).find((each) => each.name === name) ?? pointsOf(form)[0]) ?? [0, 0, 0];
    for (const { ends: names, built } of bent(form, {}).diagonals)
      expect(built).toBeCloseTo(shownBy({ kind: "distance", names }, at), 9);
  });

  test("say nothing of a car as it was built, nor of errors such as a tape has", () => {
    expect(bent(form, {}).moved).toEqual([]);
    expect(bent(form, {}, (i) => (i % 2 === 0 ? 1 : -1)).moved).toEqual([]);
  });

  test("name the one place that moved by half an inch across the car", () => {
    const found = bent(form, { [`right ${upper}`]: [0, inch / 2, 0] });
    expect(found.moved).toEqual([[`right ${upper}`]]);
    expect(found.corner).toBe("right");
  });

  test("name both ends of an upright that was pushed in", () => {
    const push: VehiclePlace = [0, -inch / 2, 0];
    const found = bent(form, { [`left ${lower}`]: push, [`left ${upper}`]: push });
    expect(found.moved).toEqual([[`left ${lower}`, `left ${upper}`]]);
    expect(found.corner).toBe("left");
  });
});
