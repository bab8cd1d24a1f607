import { describe, expect, test } from "vitest";
import { carFigures } from "../../src/measures/carFigures.ts";
import { figureOf, poseFigures, wheelFigures } from "../../src/measures/figures.ts";
import type { Locks } from "../../src/measures/locks.ts";
import type { Study } from "../../src/measures/study.ts";
import type { Worst } from "../../src/measures/worst.ts";
import { presetText, studied } from "./carTexts.ts";

const read = (id: string, study: Study) => {
  const figure = carFigures.find((each) => each.id === id);
  if (figure === undefined) throw new Error(`no figure is called ${id}`);
  return figure.read(study);
};

describe("a figure of the whole car", () => {
  test("is what the study has under that name, left and right apart", () => {
    // Rods as cut, so that every number has another value.
    const study = studied(
      presetText("widened-offset-rack").replace("  both:", "  left: { tie-rod: { length: 15.8 } }\n  both:"),
    );
    const { locks, worst, rodLengths } = study;
    for (const [side, end] of [
      ["left", "Left"],
      ["right", "Right"],
    ] as const) {
      const lock = locks[side];
      expect(read(`${side}LockInner`, study)).toBe(lock?.inner);
      expect(read(`${side}LockOuter`, study)).toBe(lock?.outer);
      expect(read(`${side}LockInnerShortOfIdeal`, study)).toBe((lock?.idealInner ?? 0) - (lock?.inner ?? 0));
      expect(read(`${side}LockPercentOfIdealInner`, study)).toBe(lock?.percentOfIdealInner);
      expect(read(`${side}LockAckermann`, study)).toBe(lock?.ackermann);
      expect(read(`${side}LockTurnRadius`, study)).toBe(lock?.turnRadius);
      expect(read(`rodLength${end}`, study)).toBe(rodLengths[side]);
      expect(read(`worstToe${end}`, study)).toBe(worst.toe[side]?.toeChange);
      expect(read(`worstToeAcrossTyre${end}`, study)).toBe(worst.toe[side]?.acrossTyre);
      expect(read(`leastRodAngle${end}`, study)).toBe(worst.rodAngle[side]?.angle);
      expect(figureOf(`${side}LockInner`)?.label).toBe(`${end} lock, inner wheel`);
      expect(figureOf(`rodLength${end}`)?.label).toBe(`${end} tie rod, eye to eye`);
    }
    expect(read("lockDifferenceInner", study)).toBe(locks.difference.inner);
    expect(read("lockDifferenceOuter", study)).toBe(locks.difference.outer);
    expect(read("lockDifferenceTurnRadius", study)).toBe(locks.difference.turnRadius);
    expect(read("worstBounceSteer", study)).toBe(worst.bounce?.bounceSteer);
    expect(read("track", study)).toBe(study.track);
    expect(read("kingPinSpacing", study)).toBe(study.kingPinSpacing);
    const all = carFigures.filter(({ id }) => id !== "zeroColumn").map(({ id }) => read(id, study));
    expect(all.every((value) => typeof value === "number" && Number.isFinite(value))).toBe(true);
    expect(new Set(all).size).toBe(all.length);
  });

  test("of the zero is the rack's in lengths and the column's as an angle", () => {
    const rack = studied(
      presetText("balanced-two-seater").replace('travel: "2 1/8"', 'travel: "2 1/8", straight-ahead: 1/16'),
    );
    expect([read("zero", rack), read("zeroColumn", rack)]).toEqual([rack.zero, null]);
    expect(rack.zero).toBeCloseTo(25.4 / 16, 9);
    const plate = studied(
      presetText("torsion-beam-steering-plate").replace("travel: 35", "travel: 35\n    straight-ahead: 3"),
    );
    expect([read("zero", plate), read("zeroColumn", plate)]).toEqual([null, plate.zero]);
    expect(plate.zero).toBeCloseTo((3 * Math.PI) / 180, 9);
  });

  test("is none of what the study has none of", () => {
    const study = studied(presetText("balanced-two-seater"));
    const locks: Locks = { left: null, right: null, difference: { inner: null, outer: null, turnRadius: null } };
    const worst: Worst = {
      ...study.worst,
      toe: { left: null, right: null },
      rodAngle: { left: null, right: null },
      bounce: null,
    };
    const none: Study = { ...study, locks, worst };
    const told = carFigures.filter(({ id }) => read(id, none) !== null).map(({ id }) => id);
    expect(told).toEqual(["zero", "rodLengthLeft", "rodLengthRight", "track", "overallWidth", "kingPinSpacing"]);
  });
});

test("figures of suspension are told of a front end that has one, and not of one that has none", () => {
  const sprung = "bumpSteer toeChange trackChange instantCentreOut instantCentreUp bounceSteer rollCentreUp".split(" ");
  const [kart, car] = [studied(presetText("fixed-kingpin-yard-kart")), studied(presetText("balanced-two-seater"))];
  const told = (study: Study) => {
    const pose = study.pose(0.1, 0, 0);
    return [...wheelFigures, ...poseFigures]
      .filter(({ read: from }) => from(pose, 0, study) !== null)
      .map(({ id }) => id);
  };
  const [fixed, free] = [told(kart), told(car)];
  for (const id of sprung.filter((each) => figureOf(each) !== undefined)) {
    expect(fixed, id).not.toContain(id);
  }
  expect(free).toEqual(expect.arrayContaining(["bumpSteer", "toeChange", "trackChange", "bounceSteer"]));
  expect(fixed).toContain("camber");
});
