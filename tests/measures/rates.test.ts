import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { bumpSteer } from "../../src/measures/bumpSteer.ts";
import { camber, camberGain } from "../../src/measures/camber.ts";
import { contactX, contactY, contactZ } from "../../src/measures/contact.ts";
import { contactRateOut, contactRateUp } from "../../src/measures/frontView.ts";
import { instantCentre } from "../../src/measures/instantCentre.ts";
import { toe } from "../../src/measures/toe.ts";
import { expectClose } from "../close.ts";
import { cross, dot, minus, type Vector } from "../oracles/vectors.ts";
import { frontOf, inch, offsetCar, poseOf, setting } from "./cars.ts";

/**
 * Rates come from the upright's motion as a rigid body; here they are held against central differences. A step of 0.01
 * mm leaves an error of about step² × third derivative (1e-4 × 1e-8) plus rounding (1e-15 / 0.01).
 */
const STEP = 0.01;
const front = frontOf(offsetCar);
const radius = setting.tireRadius;
const place = fc.record({
  rack: fc.double({ min: -2 * inch, max: 2 * inch, noNaN: true }),
  travel: fc.double({ min: -2.9 * inch, max: 2.9 * inch, noNaN: true }),
  side: fc.constantFrom<number>(Pose.Left, Pose.Right),
});

function slope(rack: number, travel: number, read: (poses: Float64Array) => number): number {
  const [below, above] = [poseOf(front, rack, travel - STEP), poseOf(front, rack, travel + STEP)];
  return (read(above) - read(below)) / (2 * STEP);
}

function vector(poses: Float64Array, at: number): Vector {
  return { x: poses[at], y: poses[at + 1], z: poses[at + 2] };
}

describe("rates per wheel travel", () => {
  test("bump steer and camber gain are the slopes of toe and camber", () => {
    fc.assert(
      fc.property(place, ({ rack, travel, side }) => {
        const poses = poseOf(front, rack, travel);
        const toeSlope = slope(rack, travel, (p) => toe(p, side));
        const camberSlope = slope(rack, travel, (p) => camber(p, side));
        expectClose(bumpSteer(poses, side), toeSlope, { abs: 1e-9, rel: 1e-6 });
        expectClose(camberGain(poses, side), camberSlope, { abs: 1e-9, rel: 1e-6 });
      }),
    );
  });

  test("the contact's material point moves as the upright carries it", () => {
    fc.assert(
      fc.property(place, ({ rack, travel, side }) => {
        const poses = poseOf(front, rack, travel);
        const contact = {
          x: contactX(poses, side, radius),
          y: contactY(poses, side, radius),
          z: contactZ(poses, side, radius),
        };
        const carried = (axis: "y" | "z") => slope(rack, travel, (p) => carriedAlong(poses, p, side, contact)[axis]);
        expectClose(contactRateOut(poses, side, radius), carried("y"), { abs: 1e-7 });
        expectClose(contactRateUp(poses, side, radius), carried("z"), { abs: 1e-7 });
      }),
    );
  });

  test("the upright's place at the instant centre stands still, seen from the front", () => {
    fc.assert(
      fc.property(place, ({ rack, travel, side }) => {
        const poses = poseOf(front, rack, travel);
        const centre = instantCentre(poses, side, radius);
        if (centre === null) return;
        const there = { x: contactX(poses, side, radius), y: centre.out, z: centre.up };
        const far = Math.hypot(centre.out, centre.up);
        const out = slope(rack, travel, (p) => carriedAlong(poses, p, side, there).y);
        const up = slope(rack, travel, (p) => carriedAlong(poses, p, side, there).z);
        expectClose([out, up], [0, 0], { abs: 1e-7 + 1e-9 * far });
      }),
    );
  });

  test("the wheel centre rises by one for one", () => {
    const poses = poseOf(front, 20, -40);
    const at = Pose.Left;
    const turn = vector(poses, at + Side.Turn);
    const fromLower = minus(vector(poses, at + Side.WheelCenter), vector(poses, at + Side.Lower));
    expectClose(poses[at + Side.LowerRate + 2] + cross(turn, fromLower).z, 1, { abs: 1e-12 });
    expect(poses[at + Side.WheelCenter + 2]).toBeCloseTo(10.75 * inch - 40, 9);
  });
});

/** Where a place fixed to the upright in one pose is in another: by the frame of steering axis and tie-rod eye. */
function carriedAlong(from: Float64Array, to: Float64Array, side: number, place: Vector): Vector {
  const [a, b] = [frame(from, side), frame(to, side)];
  const arm = minus(place, a.origin);
  const [k, r, q] = [dot(arm, a.k), dot(arm, a.r), dot(arm, a.q)];
  return {
    x: b.origin.x + k * b.k.x + r * b.r.x + q * b.q.x,
    y: b.origin.y + k * b.k.y + r * b.r.y + q * b.q.y,
    z: b.origin.z + k * b.k.z + r * b.r.z + q * b.q.z,
  };
}

function frame(poses: Float64Array, side: number): { origin: Vector; k: Vector; r: Vector; q: Vector } {
  const origin = vector(poses, side + Side.Lower);
  const k = vector(poses, side + Side.Axis);
  const arm = minus(vector(poses, side + Side.TieRodOuter), origin);
  const along = dot(arm, k);
  const across = minus(arm, { x: along * k.x, y: along * k.y, z: along * k.z });
  const size = Math.sqrt(dot(across, across));
  const r = { x: across.x / size, y: across.y / size, z: across.z / size };
  return { origin, k, r, q: cross(k, r) };
}
