import { describe, expect, it } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { studyOf } from "../../src/measures/study.ts";
import { triedOut } from "../../src/solve/adjusters/rebuilt.ts";
import { matchOf } from "../../src/solve/match/match.ts";
import { predictionsOf } from "../../src/solve/match/predictions.ts";
import { readCarReadings } from "../../src/vehicle/car-readings/read.ts";
import { quantityOf } from "../../src/vehicle/quantities.ts";
import { axisEnds } from "../../src/vehicle/starting/steering-axis.ts";
import { presetText, studied } from "../measures/carTexts.ts";
import { degree, inch, readingsOf, usualSteps } from "./builtCar.ts";

/** The plan with its left tab somewhere else, rods as long as the plan's. */
function withTab(plan: Study, by: number): Study {
  const id = "left.tie-rod.outer.ahead";
  const values = { [id]: plan.car.numbers[quantityOf(id).index] + by };
  const study = studyOf(triedOut(plan.car, { values, rods: { ...plan.rodLengths } }));
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

describe.each([
  "strut-hatchback-corners",
  "torsion-beam-steering-plate",
  "twin-beam-relay",
  "fixed-kingpin-yard-kart",
  "centre-take-off",
  "rack-ahead",
])("readings of %s", (name) => {
  const plan = studied(presetText(name));
  const by = (-3 / 16) * inch;
  const [lower, upper] = axisEnds[plan.car.form.linkage];
  const reach = Math.min(plan.acting.left.at, plan.acting.right.at);
  const places = {
    racks: [0.25, 0.5, 0.75].map((share) => share * reach),
    travels: [-2, -1, 1, 2].map((each) => each * inch).filter(() => plan.suspended),
    tapes: (["left", "right"] as const).flatMap((side) =>
      [lower, upper].map((end) => [`${side}.tie-rod.outer`, `${side}.${end}`] as const),
    ),
  };
  const readings = readingsOf(withTab(plan, by), plan, places, usualSteps);

  it("tell where the steering stands straight in its own unit, with its own doubt", () => {
    const [straight] = predictionsOf([{ kind: "straight", value: 0.1, tolerance: 0.1, line: 1 }], plan);
    expect(straight?.kind).toBe(plan.inputKind === "rack" ? "length" : "angle");
    const read = readCarReadings(
      `units: mm\nstraight-ahead: { reads: ${plan.inputKind === "rack" ? "3 mm" : 30} left }\n`,
      plan.car,
    );
    if ("complaints" in read) throw new Error(read.complaints.map(({ message }) => message).join());
    const [reading] = read.readings;
    // A mark of the tape, or a degree of the column: never one taken for the other.
    expect(reading?.tolerance).toBeCloseTo(plan.inputKind === "column" ? degree : 1, 12);
  });

  it("tell of a tab welded 3/16 in too far back, and of nothing else", () => {
    const match = matchOf(plan, {
      title: null,
      readings,
      builtTo: { length: inch / 16, angle: degree / 2, of: new Map() },
    });
    if ("unreached" in match) throw new Error("the car on file goes wherever the built one was read");
    const tab = match.parts.find(({ unknown }) =>
      unknown.quantities.some(({ id }) => id === "left.tie-rod.outer.ahead"),
    );
    const off = match.parts.flatMap((part) => (part.off === null ? [] : part.unknown.quantities.map(({ id }) => id)));
    expect(off).toEqual(["left.tie-rod.outer.ahead"]);
    expect(match.readings.filter(({ wrong }) => wrong !== null)).toEqual([]);
    expect(Math.abs((tab?.moved ?? 0) - by)).toBeLessThan(2 * (tab?.deviation ?? 0) + (tab?.hidden ?? 0));
  });
});
