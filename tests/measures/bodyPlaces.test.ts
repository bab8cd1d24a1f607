import { describe, expect, it } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { frontSticks, spindleLines } from "../../src/measures/bodies/front.ts";
import { wheelSticks } from "../../src/measures/bodies/wheel.ts";
import { type Place, pointsOf } from "../../src/measures/points.ts";
import { cross, dot, length, minus, plus, radians, times, unit } from "../oracles/vectors.ts";
import { presetText, studied } from "./carTexts.ts";
import { inch, placesAt, placesOf, rounded, sticksAt, vector } from "./sticks.ts";

describe("a corner's bodies", () => {
  const study = studied(presetText("widened-offset-rack"));

  it.each([
    ["left", 1],
    ["right", -1],
  ] as const)("on the %s are its arms by their pivots, its upright and its tie rod", (wheel, hand) => {
    const sticks = sticksAt(study, 20, -30);
    const { lowerJoint, upperJoint, tieRodInner, tieRodOuter, wheelCenter } = placesAt(study, 20, -30, wheel);
    const pivot = (ahead: number, out: number, up: number): Place => [ahead * inch, hand * out * inch, up * inch];
    expect(placesOf(sticks, "arm", wheel)).toEqual(
      rounded([
        [pivot(4, 6, 7.5), lowerJoint, pivot(-4.5, 6, 7.5)],
        [pivot(2.5, 8.5, 13.25), upperJoint, pivot(-4.5, 8.5, 13)],
      ]),
    );
    expect(placesOf(sticks, "tie-rod", wheel)).toEqual(rounded([[tieRodInner, tieRodOuter]]));
    const uprights = sticks.filter((stick) => stick.part === "upright" && stick.wheel === wheel);
    expect(uprights.map(({ places }) => places.length)).toEqual([2, 2, 2]);
    const [axis, ...spurs] = uprights.map(({ places }) => places.map(vector));
    expect(axis).toEqual([vector(lowerJoint), vector(upperJoint)]);
    // From the steering axis, square to it, to the wheel's centre and to the tie rod.
    expect(spurs.map(([, end]) => end)).toEqual([vector(wheelCenter), vector(tieRodOuter)]);
    const along = unit(minus(axis[1], axis[0]));
    for (const [foot, end] of spurs) {
      expect(dot(minus(end, foot), along)).toBeCloseTo(0, 9);
      expect(length(cross(minus(foot, axis[0]), along))).toBeCloseTo(0, 9);
    }
  });

  it.each([
    ["widened-offset-rack", 4, 2],
    ["torsion-beam-steering-plate", 4, 2],
    ["strut-hatchback-corners", 2, 2],
    ["twin-beam-relay", 2, 4],
    ["fixed-kingpin-yard-kart", 0, 2],
  ])("of %s are %d arms", (name, arms) => {
    const sticks = sticksAt(studied(presetText(name)), 0, 0);
    expect(sticks.filter(({ part }) => part === "arm")).toHaveLength(arms);
    expect(sticks.filter(({ part }) => part === "upright")).toHaveLength(6);
    expect(sticks.filter(({ part }) => part === "tie-rod")).toHaveLength(2);
  });
});

describe("a wheel", () => {
  const study = studied(presetText("widened-offset-rack"));
  const { tireRadius } = study;
  // The file's tyre is 7 in wide.
  const width = 7 * inch;

  it.each(["left", "right"] as const)(
    "on the %s has two rounds about its spin axis, as far apart as it is wide",
    (wheel) => {
      const pose = study.pose(40, 50, 50);
      const all =
        frontSticks(study, pose, 40)?.filter((stick) => stick.wheel === wheel && stick.part === "wheel") ?? [];
      expect(all.map(({ places }) => places.length)).toEqual([25, 25, 2, 2, 2, 2]);
      const [inner, outer, ...treads] = all.map(({ places }) => places.map(vector));
      const centre = vector(placesAt(study, 40, 50, wheel).wheelCenter);
      const spin = times(minus(outer[0], inner[0]), 1 / width);
      expect(length(spin)).toBeCloseTo(1, 12);
      // The spin axis goes to the driver's left on both sides.
      expect(spin.y).toBeGreaterThan(0.5);
      for (const [edge, sign] of [
        [inner, -1],
        [outer, 1],
      ] as const) {
        const middle = plus(centre, times(spin, (sign * width) / 2));
        for (const [i, place] of edge.entries()) {
          const arm = minus(place, middle);
          expect(dot(arm, spin)).toBeCloseTo(0, 9);
          expect(length(arm)).toBeCloseTo(tireRadius, 9);
          // Pieces of 15 degrees, all the same way about the axis.
          const next = minus(edge[(i + 1) % 24], middle);
          if (i < 24) expect(dot(cross(arm, next), spin) * -1).toBeCloseTo(tireRadius ** 2 * Math.sin(radians(15)), 6);
        }
      }
      expect(treads).toEqual([0, 6, 12, 18].map((piece) => [inner[piece], outer[piece]]));
      // Its first place is straight ahead, a quarter on it is on top, and after three it is on the ground.
      expect(inner[0].z).toBeCloseTo(plus(centre, times(spin, -width / 2)).z, 9);
      expect(inner[0].x).toBeGreaterThan(centre.x);
      const [ground] = treads.slice(3);
      const contact = vector(placesAt(study, 40, 50, wheel).contact);
      expect(length(minus(times(plus(ground[0], ground[1]), 0.5), contact))).toBeCloseTo(0, 9);
    },
  );

  it("of no known width is one round", () => {
    const bare = studied(presetText("widened-offset-rack").replace("radius: 10.75, width: 7", "radius: 10.75"));
    const all = sticksAt(bare, 0, 0).filter(({ part, wheel }) => part === "wheel" && wheel === "left");
    expect(all.map(({ places }) => places.length)).toEqual([25]);
    const centre = vector(placesAt(bare, 0, 0, "left").wheelCenter);
    for (const place of all[0].places) expect(length(minus(vector(place), centre))).toBeCloseTo(bare.tireRadius, 9);
  });
});

describe("where a wheel cannot stand", () => {
  const study = studied(presetText("widened-offset-rack"));

  // 65 mm to the right the left tie rod does not reach at ride height (see outOfReach.test.ts).
  it("nothing is drawn of the front, and of its own wheel no line to the rear axle", () => {
    const pose = study.pose(-65, 0, 0);
    expect([pointsOf(pose, "left", 1) === null, pointsOf(pose, "right", 1) === null]).toEqual([true, false]);
    expect(frontSticks(study, pose, -65)).toBeNull();
    expect(wheelSticks(pose, "left", study.tireRadius, 100)).toEqual([]);
    expect(spindleLines(study, pose).map(({ wheel }) => wheel)).toEqual(["right"]);
    expect(spindleLines(study, study.pose(0, 900, 900))).toEqual([]);
  });

  it("nor is it where the other one cannot", () => {
    const mirrored = studied(presetText("widened-offset-rack").replace("offset: -2.5", "offset: 2.5"));
    const pose = mirrored.pose(65, 0, 0);
    expect([pointsOf(pose, "left", 1) === null, pointsOf(pose, "right", 1) === null]).toEqual([false, true]);
    expect(frontSticks(mirrored, pose, 65)).toBeNull();
  });
});

it("a wheel whose axis lies straight across has no line to the rear axle, which runs beside it", () => {
  const study = studied(presetText("balanced-two-seater"));
  const pose = study.pose(20, 0, 0);
  expect(spindleLines(study, pose).map(({ wheel, part }) => [wheel, part])).toEqual([
    ["left", "fixed"],
    ["right", "fixed"],
  ]);
  for (const { places, wheel } of spindleLines(study, pose)) {
    const [x, y] = placesAt(study, 20, 0, wheel ?? "left").wheelCenter;
    expect(places[0]).toEqual([x, y, 0]);
    expect(places).toHaveLength(2);
  }
  pose[Pose.Left + Side.Spin] = 0;
  expect(spindleLines(study, pose).map(({ wheel }) => wheel)).toEqual(["right"]);
});
