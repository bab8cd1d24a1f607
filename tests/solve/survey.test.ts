import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { computed } from "../../src/solve/survey/computed.ts";
import { type Surveyed, settleSurvey } from "../../src/solve/survey/survey.ts";
import type { ToTake } from "../../src/vehicle/survey/plan.ts";
import { pointsOf, type SurveyForm } from "../../src/vehicle/survey/points.ts";
import { ways } from "../../src/vehicle/survey/readings.ts";
import type { Survey, VehiclePlace } from "../../src/vehicle/survey/survey.ts";
import { seed, within } from "../oracles/cars.ts";
import { carsOf, combinations } from "../oracles/combinations.ts";
import { placesOfDrawn, shownBy, surveyOf } from "./surveyOf.ts";

function settled(survey: Survey): Surveyed {
  const found = settleSurvey(survey);
  if ("complaint" in found) throw new Error(found.complaint);
  return found;
}

/** The farthest that any coordinate is from where it truly is, mm. */
function worstOff({ points, survey }: Surveyed, at: ReadonlyMap<string, VehiclePlace>): number {
  const off = points.flatMap(({ point, place }) => {
    const truly = at.get(survey.points[point].name) ?? [Number.NaN, Number.NaN, Number.NaN];
    return place.map((each, axis) => Math.abs(each - truly[axis]));
  });
  return Math.max(...off);
}

/**
 * A search ends once a step alters all misfits by no more than a millionth of a sigma (1/16 in): no coordinate that the sheet
 * knows to some sigmas is then off by more than a few millionths of that, mm.
 */
const asGoodAsExact = 1e-5;

describe("what a reading is, beside the same worked out apart from the program", () => {
  const three = fc.array(fc.tuple(within(-900, 900), within(-900, 900), within(0, 800)), {
    minLength: 3,
    maxLength: 3,
  });

  test.each(ways.map(({ kind }) => kind))("%s and its derivatives", (kind) => {
    fc.assert(
      fc.property(three, fc.boolean(), (points, isAlone) => {
        const names = ["a", "b", "c"].slice(
          0,
          kind === "line" ? 3 : ["height", "out", "ahead"].includes(kind) && isAlone ? 1 : 2,
        );
        const reading = { kind, points: names.map((_, i) => i) };
        const value = (places: Float64Array) =>
          shownBy({ kind, names }, (name) => {
            const i = 3 * names.indexOf(name);
            return [places[i], places[i + 1], places[i + 2]];
          });
        const places = Float64Array.from(points.flat());
        const partials = new Float64Array(9);
        // Points on top of each other, seen from above too, or on the line, have no derivatives; near that they bend sharply.
        const apart = (i: number, j: number) => Math.hypot(points[i][0] - points[j][0], points[i][1] - points[j][1]);
        fc.pre(Math.min(apart(0, 1), apart(1, 2), apart(0, 2)) > 20);
        fc.pre(kind !== "line" || value(places) > 1);
        expect(Math.abs(computed(reading, 1, places, partials) - value(places))).toBeLessThan(1e-9);
        for (let i = 0; i < 3 * names.length; i++) {
          const moved = (by: number) => value(places.map((each, j) => (i === j ? each + by : each)));
          // A central difference over h is off by h²/6 times a third derivative (at most a few over the least distance squared)
          // and by rounding of some 1e-13 over h.
          expect(Math.abs(partials[i] - (moved(1e-3) - moved(-1e-3)) / 2e-3)).toBeLessThan(1e-5);
        }
      }),
      { seed, numRuns: 60 },
    );
  });
});

/** Readings that leave most places to the tape: heights, outs, what is ahead of the hubs, and every distance of one side and across. */
function fewPlaces(form: SurveyForm): readonly ToTake[] {
  const names = pointsOf(form).map(({ name }) => name);
  const corner = (side: string) => names.filter((name) => name.startsWith(side));
  const pairs = (of: readonly string[]) =>
    of.flatMap((one, i) => of.slice(i + 1).map((other) => ({ kind: "distance" as const, names: [one, other] })));
  const steering = names.filter((name) => !/king-pin|tie-rod|wheel/.test(name));
  const single = names.filter((name) => !/^(left|right) /.test(name));
  return [
    ...names.map((name) => ({ kind: "height" as const, names: [name] })),
    ...names.map((name) => ({ kind: "out" as const, names: [name] })),
    // Without a reading that says what is ahead, the car's mirror image would fit all of them as well.
    ...["left", "right"].map((side) => ({
      kind: "ahead" as const,
      names: [`${side} tie-rod.outer`, `${side} wheel.center`],
    })),
    // The points of king pins on the frame stand nearly in one upright plane: that says little of what is ahead of it.
    ...(form.linkage === "fixed-kingpin" ? steering.map((name) => ({ kind: "ahead" as const, names: [name] })) : []),
    ...pairs([...corner("left "), ...single]),
    ...pairs([...corner("right "), ...single]),
    ...pairs(names).filter(({ names: [a, b] }) => a.startsWith("left ") && b.startsWith("right ")),
  ];
}

describe("readings without error", () => {
  test.each(combinations)(
    "give back every point of $linkage with $mechanism, as the blank list reads it",
    ({ linkage, mechanism }) => {
      fc.assert(
        fc.property(carsOf(linkage, mechanism), (drawn: Drawn) => {
          const at = placesOfDrawn(drawn);
          const found = settled(surveyOf({ linkage, mechanism }, (name) => at.get(name) ?? [0, 0, 0]));
          expect(found.points.length).toBe(at.size);
          expect(found.blunders).toEqual([]);
          expect(worstOff(found, at)).toBeLessThan(asGoodAsExact);
        }),
        { seed, numRuns: 3 },
      );
    },
  );

  test.each(combinations)(
    "give back $linkage with $mechanism where most places come of distances alone",
    ({ linkage, mechanism }) => {
      fc.assert(
        fc.property(carsOf(linkage, mechanism), (drawn: Drawn) => {
          const at = placesOfDrawn(drawn);
          const form = { linkage, mechanism };
          const found = settled(surveyOf(form, (name) => at.get(name) ?? [0, 0, 0], { taken: fewPlaces(form) }));
          expect(found.free).toEqual([]);
          expect(worstOff(found, at)).toBeLessThan(asGoodAsExact);
        }),
        { seed, numRuns: 3 },
      );
    },
  );
});
