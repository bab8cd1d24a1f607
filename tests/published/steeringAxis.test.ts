import { describe, test } from "vitest";
import type { Front } from "../../src/kinematics/front.ts";
import { expectClose } from "../close.ts";
import { frontOf } from "../oracles/kernel.ts";
import { alike } from "../oracles/known.ts";
import { plus, point, radians, times } from "../oracles/vectors.ts";
import { measured } from "./measured.ts";

describe("the steering axis of a drawn car [D]", () => {
  test.each([
    {
      lower: point(10, 640, 250),
      upper: point(-25, 610, 480),
      out: 720,
      caster: 8.65254,
      kpi: 7.43141,
      scrub: 47.3913,
      trail: 48.04348,
    },
    {
      lower: point(0, 600, 200),
      upper: point(-40, 570, 440),
      out: 660,
      caster: 9.46232,
      kpi: 7.12502,
      scrub: 35,
      trail: 100 / 3,
    },
  ])("joints $lower and $upper, contact $out out", ({ lower, upper, out, caster, kpi, scrub, trail }) => {
    const front = frontOf(
      alike({
        arms: {
          lowerFront: point(150, 250, lower.z + 20),
          lowerRear: point(-150, 250, lower.z + 20),
          lowerJoint: lower,
          upperFront: point(120, 280, upper.z - 10),
          upperRear: point(-160, 280, upper.z - 20),
          upperJoint: upper,
        },
        inner: point(-110, 270, 330),
        outer: point(-120, out - 90, 320),
        wheelCenter: point(0, out, 330),
        rack: 60,
        travel: 60,
      }),
    );
    for (const side of ["left", "right"] as const) {
      const read = measured(front, side, 0, 0, 330);
      expectClose(
        { caster: read.caster, kpi: read.kpi, scrub: read.scrub, trail: read.trail },
        { caster, kpi, scrub, trail },
        { abs: 1e-5 },
      );
    }
  });
});

/**
 * Camber against steer about a fixed axis, exact [D], for caster t, inclination s and static camber g0, steer positive when the wheel is the inner
 * one: B = tan s cos d - tan t sin d, C = sin g0 + tan s cos g0, camber = asin(C / sqrt(1 + B^2)) - atan B. Elementary spherical geometry: the spin
 * axis keeps its angle to the steering axis.
 *
 * Through the real solver: a wheel centre on the steering axis is not lifted by steering, so that at travel 0 the axis stands still.
 */
describe("camber against steer", () => {
  const steers = [-30, -20, -10, 10, 20, 30];
  test.each([
    { caster: 6, kpi: 0, camber: 0, expected: [-3.00825, -2.05877, -1.0456, 1.0456, 2.05877, 3.00825] },
    { caster: 6, kpi: 10, camber: 0, expected: [-1.65283, -1.44685, -0.89094, 1.20124, 2.67802, 4.38561] },
    { caster: 10, kpi: 12, camber: -1, expected: [-4.38028, -3.6943, -2.55826, 0.93896, 3.20215, 5.71805] },
  ])("caster $caster, inclination $kpi, static camber $camber", ({ caster, kpi, camber, expected }) => {
    const lower = point(12, 640, 230);
    const axis = point(-Math.tan(radians(caster)), -Math.tan(radians(kpi)), 1);
    const upper = plus(lower, times(axis, 220));
    const front = frontOf(
      alike({
        arms: {
          lowerFront: point(150, 250, 250),
          lowerRear: point(-150, 250, 250),
          lowerJoint: lower,
          upperFront: point(120, 280, upper.z - 20),
          upperRear: point(-160, 280, upper.z - 30),
          upperJoint: upper,
        },
        inner: point(-110, 270, 330),
        outer: point(-110, 620, 320),
        wheelCenter: plus(lower, times(axis, 100)),
        camber: radians(camber),
        rack: 80,
        travel: 60,
      }),
    );
    for (const [side, hand] of [
      ["left", 1],
      ["right", -1],
    ] as const) {
      const found = steers.map((steer) => cambersAtSteer(front, side, hand, steer));
      expectClose(found, expected, { abs: 1e-5 }, side);
    }
  });

  /** Camber, deg, where the wheel has turned by `steer`, deg; the rack that does it by halving, tabs behind: rack to the right turns left. */
  function cambersAtSteer(front: Front, side: "left" | "right", hand: number, steer: number): number {
    const at = (rack: number) => measured(front, side, -hand * rack, 0, 330);
    let [low, high] = [-75, 75];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (-at(middle).toe < steer) low = middle;
      else high = middle;
    }
    const found = at(low);
    expectClose(-found.toe, steer, { abs: 1e-9 }, "steer");
    return found.camber;
  }
});
