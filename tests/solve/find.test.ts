import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { findJob, found } from "../../src/solve/find/find.ts";
import { asItIs, costOf, type Placed, placed, type Quest, worsened } from "../../src/solve/find/place.ts";
import {
  gridOf,
  type Rooms,
  roomsOf,
  usualRooms,
  usualStep,
  type Variable,
  variablesOf,
} from "../../src/solve/find/room.ts";
import { answerText } from "../../src/solve/find/taken.ts";
import { goalsFor } from "../../src/solve/goals/goals.ts";
import { judgeable, missedMusts } from "../../src/solve/goals/score.ts";
import type { Room } from "../../src/vehicle/sections/find.ts";
import { inch } from "../../src/vehicle/units/length.ts";
import { carOf, studied } from "../measures/carTexts.ts";
import { exampleText } from "../measures/exampleText.ts";
import { preset, presets } from "../vehicle/cars.ts";

function movable(study: Study, rooms: Rooms, step = usualStep(study.car)): readonly Variable[] {
  const variables = variablesOf(study.car, rooms, step);
  if ("why" in variables) throw new Error(`${variables.pair}: ${variables.why}`);
  return variables;
}

function questOf(text: string, rooms?: Rooms): Quest {
  const study = studied(text);
  const own = rooms ?? (Object.keys(roomsOf(study.car)).length > 0 ? roomsOf(study.car) : usualRooms(study.car));
  const goals = goalsFor(study).filter((goal) => judgeable(study, goal));
  return { study, goals, variables: movable(study, own), rods: "follow" };
}

function within(mm: number, sides: Room["sides"] = null): Room {
  return { from: null, to: null, within: mm, sides };
}

const inRoom = ({ variables }: Quest, { moves }: Placed) =>
  variables.every(({ low, high }, i) => moves[i] >= low - 1e-9 && moves[i] <= high + 1e-9);

/** By how many sixteenths each variable is moved, whole ones to 1e-9. */
function sixteenths(place: Placed | undefined): readonly number[] {
  return [...(place?.moves ?? [])].map((move) => Number(((16 * move) / inch).toFixed(9)));
}

/**
 * A car without any bump steer: both arms level, alike and straight across, so that the upright rises without turning, and
 * the tie rod as long and as level as they are, so that it swings with them. Derived: equal and parallel links.
 */
const still = (out: number, up: number) => `title: No bump steer
units: in
wheelbase: 80
tire: { radius: 12 }
wheel-travel: { bump: 3, droop: 3 }
front:
  linkage: double-arm
  both:
    lower-arm: { front: { ahead: 5, out: 8, up: 8 }, rear: { ahead: -5, out: 8, up: 8 }, joint: { ahead: 0, out: 22, up: 8 } }
    upper-arm: { front: { ahead: 5, out: 8, up: 15 }, rear: { ahead: -5, out: 8, up: 15 }, joint: { ahead: 0, out: 22, up: 15 } }
    tie-rod: { outer: { ahead: -5, out: ${out}, up: ${up} } }
    wheel: { center: { ahead: 0, out: 25, up: 12 } }
steering:
  mechanism: rack
  rack: { ahead: -5, up: 9, eye-to-eye: 15, travel: 2 }
find: { want: { toe-change: 0 } }
`;

describe("a planted optimum", () => {
  const planted = studied(still(21.5, 9));

  test("the car has no bump steer", () => {
    expect(Math.abs(planted.worst.toe.left?.acrossTyre ?? 1)).toBeLessThan(1e-6);
  });

  test("is found again after the tab was moved, to the step", () => {
    const quest = questOf(still(21.5 + 3 / 8, 9 - 9 / 16), {
      "tie-rod.outer.out": within(inch),
      "tie-rod.outer.up": within(inch),
    });
    const [best] = found(quest).answers;
    expect(sixteenths(best?.snapped)).toEqual([-6, 9]);
    expect(best?.snapped.study.worst.toe.left?.acrossTyre ?? 1).toBeCloseTo(0, 6);
    // A miss costs 10 for each 1/16 in of toe, a move at most 0.1: it can hold the exact place back by no more than this toe.
    expect(Math.abs(best?.exact.study.worst.toe.left?.acrossTyre ?? 1)).toBeLessThan((0.1 / 10) * (inch / 16));
  });

  test("is found with the sides apart, and the rack's height in it", () => {
    const quest = questOf(still(21.25, 9.25), {
      "tie-rod.outer.out": within(inch / 2, "each"),
      "rack.up": within(inch / 2),
    });
    const [best] = found(quest).answers;
    expect(sixteenths(best?.snapped)).toEqual([4, 4, 4]);
  });
});

describe("a car that is surveyed to hundredths", () => {
  test("is sent to the tape's own marks, not to whole steps from where it happens to be", () => {
    const off = 0.37 / 16;
    const quest = questOf(still(21.5 + 3 / 8 + off, 9 - 9 / 16 - off), {
      "tie-rod.outer.out": within(inch),
      "tie-rod.outer.up": within(inch),
    });
    const [best] = found(quest).answers;
    const { car } = best?.snapped.study ?? quest.study;
    const places = quest.variables.map(({ quantities }) => (car.numbers[quantities[0]?.index ?? 0] ?? 0) / inch);
    // The planted place is on the marks: 21 1/2 out and 9 up.
    expect(places[0]).toBeCloseTo(21.5, 9);
    expect(places[1]).toBeCloseTo(9, 9);
  });

  test("keeps steps from where it is where its sides are not equally far from the marks", () => {
    const text = still(21.5, 9).replace("  both:", "  left: { tie-rod: { outer: { up: 9.02 } } }\n  both:");
    const [both] = movable(studied(text), { "tie-rod.outer.up": within(inch) });
    expect(both?.origin).toBe(0);
    const [each] = movable(studied(text), { "tie-rod.outer.up": within(inch, "each") });
    expect((9.02 * inch + (each?.origin ?? 0)) / (inch / 16)).toBeCloseTo(Math.round(9.02 * 16), 9);
  });
});

describe("the way the wheels turn", () => {
  test("is never turned about by an answer, however wide the room", () => {
    const text = preset("tab-to-place");
    const quest = questOf(text, { "tie-rod.outer.ahead": within(20 * inch) });
    expect(quest.study.steersBackwards).toBe(false);
    const { answers } = found(quest);
    expect(answers.length).toBeGreaterThan(0);
    for (const { exact, snapped } of answers)
      for (const { study } of [exact, snapped]) expect(study.steersBackwards).toBe(false);
    // There is such a place in that room: the tab as far ahead of the line as it is behind.
    const other = placed(quest, Float64Array.of(10 * inch));
    expect(other?.study.steersBackwards).toBe(true);
  });
});

describe("against every place of the grid, tried one by one", () => {
  test.each(["widened-offset-rack", "rack-ahead"])("%s: none of them costs less", (name) => {
    const quest = questOf(preset(name), {
      "tie-rod.outer.ahead": within(inch / 2),
      "tie-rod.outer.out": within(inch / 2),
    });
    const step = quest.variables[0].step;
    const cost = costOf(quest, asItIs(quest).score, "whole");
    const { first, last } = gridOf(quest.variables);
    let least = Number.POSITIVE_INFINITY;
    for (let i = first[0]; i <= last[0]; i++)
      for (let j = first[1]; j <= last[1]; j++)
        least = Math.min(least, cost(Float64Array.of(i * step, j * step), least));
    const costs = found(quest).answers.map(({ snapped }) => cost(snapped.moves, Number.POSITIVE_INFINITY));
    expect(Math.min(...costs)).toBeCloseTo(least, 9);
  });
});

describe("answers of random quests", () => {
  const names = [...presets.keys()].filter((name) => name !== "check-before-welding");

  test("stay in their room on whole steps, and make no must worse", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...names),
        fc.constantFrom("rod-to-arm", "inner-lock"),
        fc.integer({ min: 10, max: 45 }),
        fc.integer({ min: 3, max: 40 }),
        fc.boolean(),
        (name, goal, degrees, mm, each) => {
          const text = preset(name).replace(/^find:[\s\S]*$/m, "");
          const quest = questOf(`${text}\nfind: { must: { ${goal}: ${degrees} } }\n`, {
            "tie-rod.outer.ahead": within(mm, each ? "each" : null),
            "tie-rod.outer.out": within(mm),
          });
          // All of a search, but for the reruns and the checks at its end, which change no place.
          const job = findJob(quest);
          job.step(1200);
          const { answers, before } = job.best();
          expect(answers.length).toBeGreaterThan(0);
          for (const { exact, snapped } of answers) {
            expect(inRoom(quest, exact) && inRoom(quest, snapped)).toBe(true);
            expect(worsened(before.score, snapped.score)).toBe(0);
            for (const [i, { step }] of quest.variables.entries()) {
              const steps = snapped.moves[i] / step;
              expect(Math.abs(steps - Math.round(steps))).toBeLessThan(1e-9);
            }
          }
        },
      ),
      { numRuns: 6, endOnFailure: true },
    );
  }, 120_000);

  test("are the same twice", () => {
    const moves = () =>
      found(questOf(exampleText)).answers.map(({ exact, snapped }) => [[...exact.moves], [...snapped.moves]]);
    expect(moves()).toEqual(moves());
  }, 60_000);
});

describe("musts that fight", () => {
  // Each can be had alone: the tab far out gives the rod its angle, far in the wheel its lock.
  const fighting = (goals: string) =>
    questOf(`${exampleText}find: { must: { ${goals} } }\n`, {
      "tie-rod.outer.ahead": within(inch),
      "tie-rod.outer.out": within(inch),
    });

  test("each alone can be met", () => {
    for (const goals of ["rod-to-arm: 42", "rod-to-arm: 10, inner-lock: 34"]) {
      const [best] = found(fighting(goals)).answers;
      expect(missedMusts(best.snapped.score), goals).toEqual([]);
    }
  });

  test("together they can't, and each is named with what it keeps from being met", () => {
    const { answers, fights, done } = found(fighting("rod-to-arm: 42, inner-lock: 34"));
    expect(missedMusts(answers[0].snapped.score).length).toBeGreaterThan(0);
    expect(done).toBe(true);
    expect(fights?.some(({ without, all }) => without.name === "inner-lock" && all)).toBe(true);
    expect(fights?.some(({ without, all }) => without.name === "rod-to-arm" && all)).toBe(true);
  });
});

describe("a job", () => {
  test("can be stopped at any piece and keeps a best that makes no must worse", () => {
    const quest = questOf(exampleText);
    const job = findJob(quest);
    let last = Number.POSITIVE_INFINITY;
    for (let i = 0; i < 12; i++) {
      job.step(37);
      const { answers, before, done } = job.best();
      expect(done).toBe(false);
      for (const { exact, snapped } of answers) {
        expect(worsened(before.score, snapped.score)).toBe(0);
        expect(inRoom(quest, exact)).toBe(true);
      }
      const total = answers[0]?.exact.score.total ?? Number.POSITIVE_INFINITY;
      // Coarse looks and close ones may differ by a hair of a miss.
      expect(total).toBeLessThan(last + 2);
      last = total;
    }
    expect(job.progress()).toBeGreaterThan(0);
    expect(job.progress()).toBeLessThan(1);
  });

  test("answers are as well off as the full check says, and written so that the comments stay", () => {
    const text = preset("tab-to-place");
    const quest = questOf(text);
    const { answers } = found(quest);
    for (const { snapped, check } of answers) {
      expect(check?.items.length ?? 0).toBeGreaterThan(0);
      const written = answerText(quest, snapped);
      const again = studied(written);
      expect(again.locks.left?.inner).toBeCloseTo(snapped.study.locks.left?.inner ?? 0, 9);
      const comments = (of: string) => of.split("\n").flatMap((line) => line.match(/#.*$/)?.[0] ?? []);
      expect(comments(written)).toEqual(comments(text));
    }
  });

  test("rods that are kept keep their length", () => {
    const study = studied(exampleText);
    const quest: Quest = { ...questOf(exampleText), rods: "keep" };
    const place = placed(quest, Float64Array.of(5, -3, 2));
    expect(place?.study.rodLengths.left).toBeCloseTo(study.rodLengths.left, 9);
    const car = carOf(answerText(quest, place ?? asItIs(quest)));
    expect(car.form.rods).toEqual({ left: "cut", right: "cut" });
  });
});

describe("rooms that are none", () => {
  const { car } = studied(exampleText);
  test.each([
    ["relay.pitman.arm", within(1), "this car has none"],
    ["rack.up", within(0.2), "the room is narrower than one step"],
  ])("%s is refused in words", (pair, room, why) => {
    const from = pair === "rack.up" ? { from: 219.5, to: 220, within: null, sides: null } : room;
    expect(variablesOf(car, { [pair]: from }, inch / 16)).toEqual({ pair, why });
  });
});
