import { describe, test } from "vitest";
import { bumpSteer } from "../../src/measures/bumpSteer.ts";
import { camberGain } from "../../src/measures/camber.ts";
import { instantCentre } from "../../src/measures/instantCentre.ts";
import { bodiesOf } from "../../src/measures/range/bodies.ts";
import { rollCentre } from "../../src/measures/rollCentre.ts";
import { shockAt } from "../../src/measures/shock.ts";
import { expectClose } from "../close.ts";
import { at, head, studied } from "../measures/carTexts.ts";
import { frontOf, placesAt, solved, startOf } from "../oracles/kernel.ts";
import { alike, spatialCar } from "../oracles/known.ts";
import { degrees, point } from "../oracles/vectors.ts";
import { measured } from "./measured.ts";

/**
 * A spatial double arm of invented geometry. No source publishes such a table with all its dimensions: the numbers are [D], derived by three
 * independent solutions that agree to 3e-13, one of them a general rigid-body engine. Tolerance as they were printed: 1e-4 deg, 1e-3 mm.
 */
const radius = 330;
const angle = { abs: 1e-4 };
const place = { abs: 1e-3 };
const front = frontOf(spatialCar);
const leftAt = (rack: number, travel: number) => measured(front, "left", rack, travel, radius);

describe("the spatial double arm, rack central [D]", () => {
  const table: [
    dz: number,
    toeIn: number,
    camber: number,
    caster: number,
    kpi: number,
    contactOut: number,
    scrub: number,
    trail: number,
  ][] = [
    [-100, -0.28635, 3.93738, 7.78054, 3.51811, -36.5651, 47.1646, 43.7652],
    [-50, -0.13151, 2.04859, 8.21126, 5.39409, -15.5404, 47.2437, 45.9564],
    [0, 0, 0, 8.65254, 7.43141, 0, 47.3913, 48.0435],
    [50, 0.12567, -2.26906, 9.1091, 9.68855, 10.645, 47.6321, 49.9972],
    [100, 0.25974, -4.83828, 9.58865, 12.24309, 16.7961, 48.0063, 51.7659],
  ];
  test.each(table)("at travel %d", (dz, toeIn, camber, caster, kpi, contactOut, scrub, trail) => {
    const read = leftAt(0, dz);
    expectClose([read.toe, read.camber, read.caster, read.kpi], [toeIn, camber, caster, kpi], angle);
    expectClose([read.contactOut - leftAt(0, 0).contactOut, read.scrub, read.trail], [contactOut, scrub, trail], place);
  });

  test("the joints at 100 mm of bump", () => {
    const { lower, upper, tieRodOuter } = placesAt(front, 0, 100).left;
    expectClose(lower, point(10, 635.9348, 343.6738), place);
    expectClose(upper, point(-28.209, 586.8554, 569.8514), place);
    expectClose(tieRodOuter, point(-121.0138, 610.8386, 410.0482), place);
  });

  test("slopes at ride height, and as differences of neighbouring poses", () => {
    const poses = solved(front, 0, 0);
    const slopes = [bumpSteer(poses, startOf("left")), camberGain(poses, startOf("left"))].map(degrees);
    expectClose(slopes[0], 0.00252215, { abs: 5e-9 });
    expectClose(slopes[1], -0.0429492, { abs: 5e-8 });
    const h = 0.01;
    const [down, up] = [leftAt(0, -h), leftAt(0, h)];
    expectClose([(up.toe - down.toe) / (2 * h), (up.camber - down.camber) / (2 * h)], slopes, { abs: 1e-8 });
  });

  test("the roll centre from the motion of the upright at the contact", () => {
    expectClose(rollCentre(solved(front, 0, 0), 0, radius), { y: 0, z: 187.385 }, place);
  });
});

describe("the shock on the lower arm of the spatial double arm [D]", () => {
  const study = studied(`${head.replace("300", String(radius))}wheel-travel: { bump: 100, droop: 100 }
front:
  linkage: double-arm
  both:
    lower-arm: { front: ${at(150, 250, 280)}, rear: ${at(-150, 250, 280)}, joint: ${at(10, 640, 250)} }
    upper-arm: { front: ${at(100, 290, 450)}, rear: ${at(-180, 290, 440)}, joint: ${at(-25, 610, 480)} }
    tie-rod: { outer: ${at(-120, 620, 320)} }
    wheel: { center: ${at(0, 720, 330)} }
steering:
  mechanism: rack
  rack: { ahead: -110, up: 330, eye-to-eye: 540, travel: 60 }
`);
  const mounts = {
    top: { ahead: 40, out: 330, up: 700 },
    foot: { ahead: 20, out: 500, up: 262 },
    on: "lower-arm",
  } as const;

  test.each(["left", "right"] as const)("is as long as told at every travel, and closes as fast: %s", (wheel) => {
    const shock = shockAt(bodiesOf(study, wheel), mounts);
    for (const [dz, long] of [
      [-100, 523.4037],
      [-50, 497.1817],
      [0, 470.2595],
      [50, 442.5002],
      [100, 413.7605],
    ]) {
      expectClose(shock(study.pose(0, dz, dz), startOf(wheel)).length, long, place, `travel ${dz}`);
    }
    expectClose(shock(study.pose(0, 0, 0), startOf(wheel)).ratio, 0.546354, { abs: 5e-7 });
  });
});

describe("the spatial double arm, steered at ride height [D]", () => {
  const table: [q: number, steer: number, camber: number, caster: number, kpi: number, scrub: number, trail: number][] =
    [
      [-60, 30.89947, 5.27295, 8.73169, 7.81116, 46.6537, 65.9432],
      [-20, 9.67454, 1.47441, 8.67451, 7.53633, 47.1108, 55.1693],
      [20, -9.63514, -1.2616, 8.63392, 7.34271, 47.6767, 39.8514],
      [60, -29.95587, -3.13107, 8.6069, 7.21448, 48.1733, 19.894],
    ];
  describe.each([
    { side: "left", hand: 1 },
    { side: "right", hand: -1 },
  ] as const)("$side wheel, the right one at the opposite rack", ({ side, hand }) => {
    test.each(table)("at rack %d", (q, steer, camber, caster, kpi, scrub, trail) => {
      const read = measured(front, side, hand * q, 0, radius);
      expectClose([-read.toe, read.camber, read.caster, read.kpi], [steer, camber, caster, kpi], angle);
      expectClose([read.scrub, read.trail], [scrub, trail], place);
    });
  });
});

describe("exact properties [D]", () => {
  test("parallel equal arms, and a tie rod parallel and equal to them: toe and camber stay 0", () => {
    const parallel = frontOf(
      alike({
        arms: {
          lowerFront: point(150, 250, 280),
          lowerRear: point(-150, 250, 280),
          lowerJoint: point(10, 640, 250),
          upperFront: point(120, 220, 460),
          upperRear: point(-180, 220, 460),
          upperJoint: point(-20, 610, 430),
        },
        inner: point(-110, 235, 360),
        outer: point(-110, 625, 330),
        wheelCenter: point(0, 720, 330),
        rack: 60,
        travel: 100,
      }),
    );
    for (let travel = -240; travel <= 240; travel += 15) {
      const { toe, camber } = measured(parallel, "left", 0, travel, radius);
      expectClose([toe, camber], [0, 0], { abs: 1e-12 }, `travel ${travel}`);
    }
  });

  describe("a tie rod that aims at the instant centre", () => {
    const aimed = (up: number) =>
      solved(
        frontOf(
          alike({
            arms: {
              lowerFront: point(150, 250, 280),
              lowerRear: point(-150, 250, 280),
              lowerJoint: point(0, 640, 250),
              upperFront: point(100, 290, 445),
              upperRear: point(-180, 290, 445),
              upperJoint: point(-30, 610, 480),
            },
            inner: point(-110, 270, up),
            outer: point(-120, 620, 320),
            wheelCenter: point(0, 720, 330),
            rack: 60,
            travel: 100,
          }),
        ),
        0,
        0,
      );

    test("the instant centre", () => {
      expectClose(instantCentre(aimed(327.476831), startOf("left"), radius), { out: -612.19355, up: 346.32258 }, place);
    });

    // The two slopes were printed for an inner end 10 mm above and below 327.4767, the aimed one rounded.
    test.each([
      [327.476831, 0, 1e-9],
      [337.4767, 0.0136648, 5e-8],
      [317.4767, -0.0136413, 5e-8],
    ])("inner end at %d: toe slope %d deg/mm", (up, expected, abs) => {
      expectClose(degrees(bumpSteer(aimed(up), startOf("left"))), expected, { abs });
    });
  });

  test("doubling every length doubles every length and leaves every angle", () => {
    const twice = JSON.parse(JSON.stringify(spatialCar), (_, value) => (typeof value === "number" ? value * 2 : value));
    const doubled = frontOf(twice);
    for (const [q, dz] of [
      [0, 100],
      [-60, -100],
      [37, 13],
    ]) {
      const small = leftAt(q, dz);
      const large = measured(doubled, "left", 2 * q, 2 * dz, 2 * radius);
      const halved = { ...large, scrub: large.scrub / 2, trail: large.trail / 2, contactOut: large.contactOut / 2 };
      expectClose(halved, small, { abs: 1e-10 });
    }
  });
});
