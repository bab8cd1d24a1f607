import { floorMarks, planOf, type ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import { readingName } from "../../src/vehicle/survey/readings.ts";
import type { Survey, VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { inch } from "../../src/vehicle/units/length.ts";

/** What a tape, a level and a plumb line show of points that stand somewhere, worked out apart from the program. */
export function shownBy({ kind, names }: ToTake, at: (name: string) => VehiclePlace): number {
  const [first, second] = names;
  const [x, y, z] = at(first);
  const [u, v, w] = second === undefined ? [0, 0, 0] : at(second);
  switch (kind) {
    case "height":
      return z - w;
    case "ahead":
      return x - u;
    case "out":
      return first.startsWith("right") ? v - y : y - v;
    case "distance":
      return Math.sqrt((x - u) ** 2 + (y - v) ** 2 + (z - w) ** 2);
    case "plumb":
      return Math.sqrt((x - u) ** 2 + (y - v) ** 2);
    case "angle":
      return Math.asin((w - z) / Math.sqrt((x - u) ** 2 + (y - v) ** 2 + (z - w) ** 2));
    case "line": {
      const [p, q] = at(names[2]);
      const [a, b] = [p - u, q - v];
      const share = ((x - u) * a + (y - v) * b) / (a * a + b * b);
      return Math.sqrt((x - u - share * a) ** 2 + (y - v - share * b) ** 2);
    }
  }
}

/** A sheet of readings of points whose places are known, each off by so many of its sigmas as `error` says. */
export function surveyOf(
  form: SurveyForm,
  at: (name: string) => VehiclePlace,
  {
    taken = planOf(form),
    error = () => 0,
    sigma = inch / 16,
    more = {},
  }: {
    taken?: readonly ToTake[];
    error?: (reading: number) => number;
    sigma?: number;
    more?: Partial<Survey>;
  } = {},
): Survey {
  const points = more.points ?? [...pointsOf(form), ...floorMarks];
  const readings = taken.map((each, i) => ({
    kind: each.kind,
    points: each.names.map((name) => {
      const found = points.findIndex((point) => point.name === name);
      if (found < 0) throw new Error(`no point ${name}`);
      return found;
    }),
    value: shownBy(each, at) + sigma * error(i),
    sigma,
    name: readingName(each.kind, each.names),
    line: i + 1,
  }));
  return {
    title: "Known car",
    units: "in",
    form,
    tolerance: sigma,
    points,
    readings,
    mirrors: new Map(),
    rough: new Map(),
    given: new Map(),
    words: new Map(),
    ...more,
  };
}
