import { describe, expect, it } from "vitest";
import type { Study } from "../../src/measures/study.ts";
import { madeAnew } from "../../src/output/findArms.ts";
import { found } from "../../src/solve/find/find.ts";
import { carMoved, placed } from "../../src/solve/find/place.ts";
import { questFor, type SetQuest } from "../../src/solve/find/quest.ts";
import type { Rooms } from "../../src/solve/find/room.ts";
import { answerText } from "../../src/solve/find/taken.ts";
import { indexOf, quantities } from "../../src/vehicle/quantities.ts";
import type { Room } from "../../src/vehicle/sections/find.ts";
import { expectClose } from "../close.ts";
import { presetText, studied } from "../measures/carTexts.ts";

const degree = Math.PI / 180;
const inch = 25.4;

function preset(name: string, more = ""): Study {
  return studied(`${presetText(name)}${more}`);
}

const within = (size: number, sides: Room["sides"] = "alike"): Room => ({ from: null, to: null, within: size, sides });

function quest(study: Study, rooms: Rooms, rods?: "keep" | "follow"): SetQuest {
  const made = questFor(study, rods === undefined ? { rooms } : { rooms, rods });
  if ("why" in made) throw new Error(`${made.pair}: ${made.why}`);
  return made;
}

/** The place with these moves, and the same car from its written text. */
function written(of: SetQuest, moves: readonly number[]) {
  const place = placed(of, Float64Array.from(moves));
  if (place === null) throw new Error("it does not go together");
  return { place, again: studied(answerText(of, place)) };
}

const at = (study: Study, id: string) => study.car.numbers[indexOf(id)];

describe("pivots and joints that a search moves", () => {
  it("go where the drawing has them; nothing else of the drawing moves, and the text that is written is that car", () => {
    const study = preset("widened-offset-rack");
    const of = quest(study, {
      "lower-arm.front.up": within(20),
      "upper-arm.joint.out": within(20),
      "upper-arm.rear.ahead": within(20, "each"),
    });
    const { place, again } = written(of, [5, -3, 7, -2]);
    expectClose(at(again, "left.lower-arm.front.up"), at(study, "left.lower-arm.front.up") + 5, { abs: 1e-6 });
    expectClose(at(again, "right.upper-arm.joint.out"), at(study, "right.upper-arm.joint.out") - 3, { abs: 1e-6 });
    expectClose(at(again, "left.upper-arm.rear.ahead"), at(study, "left.upper-arm.rear.ahead") + 7, { abs: 1e-6 });
    expectClose(at(again, "right.upper-arm.rear.ahead"), at(study, "right.upper-arm.rear.ahead") - 2, { abs: 1e-6 });
    const changed = quantities.filter(({ index }) => study.car.numbers[index] !== again.car.numbers[index]);
    expect(changed.map(({ id }) => id).sort()).toEqual([
      "left.lower-arm.front.up",
      "left.upper-arm.joint.out",
      "left.upper-arm.rear.ahead",
      "right.lower-arm.front.up",
      "right.upper-arm.joint.out",
      "right.upper-arm.rear.ahead",
    ]);
    // Rods cut to fit reach from the tab as drawn to the rack's eye as drawn, and toe and camber are as drawn.
    for (const [wheel, side] of [
      ["left", 1],
      ["right", -1],
    ] as const) {
      const eye = (at(study, "rack.eye-to-eye") / 2 + side * at(study, "rack.offset")) as number;
      const rod = Math.hypot(
        at(study, `${wheel}.tie-rod.outer.ahead`) - at(study, "rack.ahead"),
        at(study, `${wheel}.tie-rod.outer.out`) - eye,
        at(study, `${wheel}.tie-rod.outer.up`) - at(study, "rack.up"),
      );
      expectClose(again.rodLengths[wheel], rod, { abs: 1e-6 });
      expectClose(place.study.rodLengths[wheel], rod, { abs: 1e-6 });
      expectClose(again.drawn[wheel].toe, study.drawn[wheel].toe, { abs: 1e-12 });
    }
    // The same numbers from the text as from the search.
    expectClose(again.locks.left?.inner ?? 0, place.study.locks.left?.inner ?? 1, { abs: 1e-9 });
    expectClose(again.worst.toe.right?.acrossTyre ?? 0, place.study.worst.toe.right?.acrossTyre ?? 1, { abs: 1e-6 });
  });

  it("leave rods that are kept as long as they were", () => {
    const study = preset("widened-offset-rack");
    const of = quest(study, { "lower-arm.joint.ahead": within(20) }, "keep");
    const { place, again } = written(of, [6]);
    for (const wheel of ["left", "right"] as const) {
      expectClose(place.study.rodLengths[wheel], study.rodLengths[wheel], { abs: 1e-9 });
      expectClose(again.rodLengths[wheel], study.rodLengths[wheel], { abs: 1e-5 });
    }
  });

  it("say what has to be made anew: arms by their lengths, and the upright where its joints lie elsewhere", () => {
    const study = preset("widened-offset-rack");
    const of = quest(study, { "lower-arm.front.up": within(60), "upper-arm.joint.out": within(60) });
    const say = (mm: number) => `${(mm / inch).toFixed(3)} in`;
    const words = (moves: readonly number[]) => {
      const moved = Float64Array.from(moves);
      return madeAnew(of.variables, moved, carMoved(of, moved), say);
    };
    expect(words([0, 0])).toEqual([]);
    // From (4, 6, 7.5 + 1) to (0.2, 21.5, 7): by Pythagoras.
    const front = Math.hypot(4 - 0.2, 21.5 - 6, 8.5 - 7).toFixed(3);
    expect(words([inch, 0])).toEqual([`Lower arm, made to reach: front to joint ${front} in.`]);
    const upper = [Math.hypot(2.5 + 0.7, 20.8 - 8.5, 14 - 13.25), Math.hypot(-4.5 + 0.7, 20.8 - 8.5, 14 - 13)];
    const [a, b] = upper.map((each) => each.toFixed(3));
    expect(words([0, 0.5 * inch])).toEqual([
      `Upper arm, made to reach: front to joint ${a} in, rear to joint ${b} in.`,
      expect.stringContaining("The uprights are others then"),
    ]);
  });

  it("find a pivot again that was put wrong: the bump steer that it brought is gone", () => {
    const text = (up: string) =>
      presetText("balanced-two-seater").replace(/(upper-arm:\n\s*front:.*?up: )[\d.]+/, `$1${up}`);
    const sound = studied(presetText("balanced-two-seater"));
    const now = at(sound, "left.upper-arm.front.up") / inch;
    const wrong = studied(text(String(now + 0.75)));
    const toe = (study: Study) => Math.abs(study.worst.toe.left?.acrossTyre ?? 0);
    expect(toe(wrong)).toBeGreaterThan(1.3 * toe(sound));
    const made = questFor(wrong, {
      rooms: { "upper-arm.front.up": within(inch) },
      goals: [{ name: "toe-change", level: "want", least: null, most: 0.1, over: 1, from: "asked" }],
    });
    if ("why" in made) throw new Error(made.why);
    const [answer] = found(made).answers;
    expect(toe(answer?.exact.study as Study)).toBeLessThanOrEqual(toe(sound) + 1e-9);
  });

  it("are not moved unless they are given room", () => {
    const of = quest(preset("widened-offset-rack"), {});
    expect(of.variables.every(({ pair }) => pair.startsWith("tie-rod.outer."))).toBe(true);
  });
});

describe("stops that a search moves", () => {
  it("are a collar from nothing on, and are written as one", () => {
    const study = preset("widened-offset-rack");
    const of = quest(study, { "stops.collar": within(10, "each") });
    expect(of.variables.map(({ low }) => low)).toEqual([0, 0]);
    const { place, again } = written(of, [0, 6]);
    expect([at(again, "left.stops.collar"), at(again, "right.stops.collar")]).toEqual(
      [0, 6].map((mm) => expect.closeTo(mm, 6)),
    );
    expectClose(again.inputTravel.right, study.inputTravel.right - 6, { abs: 1e-6 });
    expectClose(again.locks.left?.inner ?? 0, place.study.locks.left?.inner ?? 1, { abs: 1e-9 });
    expect(place.study.locks.left?.inner).not.toBe(study.locks.left?.inner);
  });

  it("on an upright can be moved where there are any, never to none, and not where the car has none", () => {
    const none = questFor(preset("widened-offset-rack"), { rooms: { "stops.upright.inner": within(3 * degree) } });
    expect(none).toMatchObject({ pair: "stops.upright.inner", why: expect.stringContaining("no such stop") });
    const study = preset("widened-offset-rack", "stops:\n  upright: { inner: 28 }\n");
    const of = quest(study, { "stops.upright.inner": within(60 * degree) });
    expectClose(of.variables[0]?.low ?? 0, -27 * degree, { abs: 1e-9 });
    const { again } = written(of, [-2 * degree]);
    expectClose(again.locks.left?.inner ?? 0, 26 * degree, { abs: 1e-6 });
    expectClose(again.locks.right?.inner ?? 0, 26 * degree, { abs: 1e-6 });
  });

  it("equal the locks, if that is what is wanted", () => {
    const study = preset("widened-offset-rack");
    const made = questFor(study, {
      rooms: { "stops.collar": within(12, "each") },
      goals: [
        { name: "lock-difference", level: "want", least: null, most: 0.05 * degree, over: 1, from: "asked" },
        { name: "inner-lock", level: "nice", least: 31 * degree, most: null, over: 1, from: "asked" },
      ],
    });
    if ("why" in made) throw new Error(made.why);
    const [answer] = found(made).answers;
    expect(Math.abs(answer?.exact.study.locks.difference.inner ?? 1)).toBeLessThanOrEqual(0.06 * degree);
  });
});

describe("what nobody has measured", () => {
  it("is not moved from where it was only assumed", () => {
    const text = presetText("widened-offset-rack").replace(
      /(front: \{ ahead: 4,.*)/,
      "$1 # starting value: measure and correct",
    );
    const made = questFor(studied(text), { rooms: { "lower-arm.front.up": within(10) } });
    expect(made).toMatchObject({ why: expect.stringContaining("nobody has measured") });
  });
});
