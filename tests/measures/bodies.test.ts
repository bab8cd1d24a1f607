import { describe, expect, it } from "vitest";
import { loadPreset, presetNames } from "../../src/files/presets.ts";
import { frontSticks, spindleLines } from "../../src/measures/bodies/front.ts";
import type { Stick } from "../../src/measures/bodies/stick.ts";
import { type Place, pointsOf } from "../../src/measures/points.ts";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { turnRadius } from "../../src/measures/turnRadius.ts";
import { readCar } from "../../src/vehicle/read.ts";

function studyOfPreset(name: string): Study {
  const loaded = loadPreset(name);
  if ("complaints" in loaded) throw new Error(name);
  const car = readCar(loaded.text);
  if ("complaints" in car) throw new Error(name);
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

function distance(a: Place, b: Place): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/** The lengths of a stick's pieces. */
function pieces({ places }: Stick): readonly number[] {
  return places.slice(1).map((place, index) => distance(places[index] ?? place, place));
}

/** Places over the whole of what the steering and the wheels can do, corners included. */
function everywhere({ inputTravel, wheelTravel }: Study): readonly (readonly [number, number, number])[] {
  const inputs = [-inputTravel.right, -inputTravel.right / 3, 0, inputTravel.left / 2, inputTravel.left];
  const travels = [-wheelTravel.droop, 0, wheelTravel.bump];
  return inputs.flatMap((input) => travels.flatMap((left) => travels.map((right) => [input, left, right] as const)));
}

describe("the bodies of a front end", () => {
  it.each(presetNames())("keep their lengths wherever %s closes: bodies are rigid", (name) => {
    const study = studyOfPreset(name);
    const at = (input: number, left: number, right: number) =>
      frontSticks(study, study.pose(input, left, right), input);
    const drawn = at(study.straightAhead, 0, 0);
    expect(drawn).not.toBeNull();
    let seen = 0;
    for (const place of everywhere(study)) {
      const sticks = at(...place);
      if (sticks === null) continue;
      seen++;
      expect(sticks.length).toBe(drawn?.length);
      for (const [index, stick] of sticks.entries()) {
        const before = drawn?.[index];
        if (before === undefined) throw new Error("no such stick");
        // A strut slides through its top mount, so that the line from joint to mount changes its length.
        if (study.car.form.linkage === "strut" && stick.part === "upright") continue;
        for (const [piece, length] of pieces(stick).entries())
          expect(length).toBeCloseTo(pieces(before)[piece] ?? Number.NaN, 6);
      }
    }
    expect(seen).toBeGreaterThan(9);
  });

  // Rods as cut turn the upright, and with the wheel's height kept the arms too.
  const asDrawn = presetNames().filter((name) => studyOfPreset(name).car.form.rods.left === "fit");

  it.each(asDrawn)("start and end where the points of %s are in its file", (name) => {
    const study = studyOfPreset(name);
    const sticks = frontSticks(study, study.pose(study.straightAhead, 0, 0), study.straightAhead) ?? [];
    const arms = sticks.filter(({ part, wheel }) => part === "arm" && wheel === "left");
    const { left } = study.drawn.linkage;
    const drawn = Object.values(left).map(({ x, y, z }) => [x, y, z] as const);
    for (const place of arms.flatMap(({ places }) => places))
      expect(Math.min(...drawn.map((each) => distance(each, place)))).toBeLessThan(1e-6);
  });

  it("draws both wheels' own lines to places on the rear axle whose mean is the turning centre", () => {
    const study = studyOfPreset("balanced-two-seater");
    const input = study.inputTravel.left;
    const pose = study.pose(input, 0, 0);
    const ends = spindleLines(study, pose).map(({ places }) => places.at(-1) ?? [0, 0, 0]);
    expect(ends.map(([x]) => x)).toEqual([-study.wheelbase, -study.wheelbase]);
    const centre = ((ends[0]?.[1] ?? 0) + (ends[1]?.[1] ?? 0)) / 2;
    const turn = centre > 0 ? "left" : "right";
    const outer = pointsOf(pose, turn === "left" ? "right" : "left", study.tireRadius)?.contact ?? [0, 0, 0];
    const radius = turnRadius(pose, 0, turn, study.wheelbase, study.tireRadius) ?? Number.NaN;
    expect(Math.hypot(outer[0] + study.wheelbase, outer[1] - centre)).toBeCloseTo(radius, 6);
  });
});
