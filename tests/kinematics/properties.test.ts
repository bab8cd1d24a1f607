import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { compile } from "../../src/kinematics/compile.ts";
import type { Drawn } from "../../src/kinematics/drawn.ts";
import { blameOf } from "../../src/kinematics/face.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { solve, solveSide } from "../../src/kinematics/solve.ts";
import { expectClose } from "../close.ts";
import { cars, mirrored, posed, scaled, seed } from "../oracles/cars.ts";
import {
  type DoubleArmCar,
  drawnPlaces,
  fittedRod,
  innerEye,
  type Places,
  type SideName,
  sides,
} from "../oracles/corner.ts";
import { frontOf, placesIn, solved, startOf } from "../oracles/kernel.ts";
import { readingOf } from "../oracles/reading.ts";
import { cross, distance, dot, minus } from "../oracles/vectors.ts";

const runs = (numRuns: number) => ({ seed, numRuns });

/** Everything about a corner that no pose may change: lengths in mm, the spin axis in the upright, and the side the wheel is on. */
function rigid(
  drawn: DoubleArmCar,
  side: SideName,
  { lower, upper, tieRodOuter, tieRodInner, wheelCenter, spin }: Places,
) {
  const arms = drawn.linkage[side];
  const axis = minus(upper, lower);
  const tab = minus(tieRodOuter, lower);
  return {
    lowerFront: distance(lower, arms.lowerFront),
    lowerRear: distance(lower, arms.lowerRear),
    upperFront: distance(upper, arms.upperFront),
    upperRear: distance(upper, arms.upperRear),
    kingPin: distance(lower, upper),
    tieRod: distance(tieRodOuter, tieRodInner),
    tabToLower: distance(tieRodOuter, lower),
    tabToUpper: distance(tieRodOuter, upper),
    wheelToLower: distance(wheelCenter, lower),
    wheelToUpper: distance(wheelCenter, upper),
    wheelToTab: distance(wheelCenter, tieRodOuter),
    spinAlongKingPin: dot(spin, axis),
    spinAlongTab: dot(spin, tab),
    spinLength: 1000 * Math.sqrt(dot(spin, spin)),
    wheelSide: Math.sign(dot(cross(axis, tab), minus(wheelCenter, lower))),
    spinSide: Math.sign(dot(cross(axis, tab), spin)),
  };
}

describe("every pose of every car", () => {
  test("keeps each link's length and the upright's shape to 1e-9 mm, the eye on the rack and the wheel at its height", () => {
    let closed = 0;
    fc.assert(
      fc.property(posed(1.4), ({ drawn, input, left, right }) => {
        const poses = solved(frontOf(drawn), input, left, right);
        for (const side of sides) {
          const places = placesIn(poses, side);
          if (!places) continue;
          closed++;
          const start = drawnPlaces(drawn, side);
          const tieRod = drawn[side].tieRodLength ?? fittedRod(drawn, side);
          expectClose(rigid(drawn, side, places), { ...rigid(drawn, side, start), tieRod }, { abs: 1e-9 }, side);
          expectClose(places.tieRodInner, innerEye(drawn, side, input), { abs: 1e-9 }, side);
          const travel = side === "left" ? left : right;
          // The solver brings the height to 1e-11 of the half width, or stops at the last bit of the arm's angle.
          expectClose(places.wheelCenter.z - start.wheelCenter.z, travel, { abs: 2e-11 * start.wheelCenter.y }, side);
        }
      }),
      runs(3000),
    );
    expect(closed).toBeGreaterThan(4000);
  });

  test("is as drawn at the drawn place, when the rods are cut to fit", () => {
    fc.assert(
      fc.property(cars, (drawn) => {
        const poses = solved(frontOf(drawn), drawn.mechanism.straightAhead, 0);
        for (const side of sides) {
          if (drawn[side].tieRodLength !== null) continue;
          // The height is met to 1e-11 of the half width; no place moves more than a hundred times as far as the wheel.
          expectClose(placesIn(poses, side), drawnPlaces(drawn, side), { abs: 1e-9 * drawn[side].wheelCenter.y }, side);
        }
      }),
      runs(300),
    );
  });

  test("of a mirrored car is the mirrored pose, to the last bit", () => {
    fc.assert(
      fc.property(posed(2), ({ drawn, input, left, right }) => {
        const poses = solved(frontOf(drawn), input, left, right);
        const other = solved(frontOf(mirrored(drawn)), -input, right, left);
        const turned = Float64Array.from(other);
        turned.copyWithin(Pose.Left, Pose.Right, Pose.Stride);
        turned.set(other.subarray(Pose.Left, Pose.Right), Pose.Right);
        for (const side of sides) turned[startOf(side) + Side.Input] *= -1;
        expectSameBits(turned, poses);
      }),
      runs(1000),
    );
  });

  test("depends on nothing but the car and what was asked: not on what was solved before, nor on the buffer", () => {
    fc.assert(
      fc.property(posed(1.5), posed(1.5), (one, two) => {
        const [front, other] = [frontOf(one.drawn), frontOf(two.drawn)];
        const alone = solved(front, one.input, one.left, one.right);
        const poses = newPoses(3).fill(7);
        solve(front, two.input, two.right, two.left, poses, Pose.Stride);
        solve(other, two.input, two.left, two.right, poses, 0);
        solve(front, one.input, one.left, one.right, poses, Pose.Stride);
        solve(other, one.input, one.left, one.right, poses, 2 * Pose.Stride);
        expectSameBits(poses.slice(Pose.Stride, 2 * Pose.Stride), alone);
        // Each side is its own: the other wheel's travel does not touch it.
        const apart = solved(front, one.input, one.left, two.right);
        expectSameBits(apart.slice(Pose.Left, Pose.Right), alone.slice(Pose.Left, Pose.Right));
      }),
      runs(500),
    );
  });

  test("is, one side alone, what it is with the other, to the last bit, and the other's room is left as it was", () => {
    fc.assert(
      fc.property(posed(2), ({ drawn, input, left, right }) => {
        const front = frontOf(drawn);
        const both = solved(front, input, left, right);
        const poses = newPoses(2).fill(7);
        solveSide(front, Pose.Left, input, left, poses, 0);
        solveSide(front, Pose.Right, input, right, poses, Pose.Stride);
        expectSameBits(poses.slice(Pose.Left, Pose.Right), both.slice(Pose.Left, Pose.Right));
        expectSameBits(poses.slice(Pose.Stride + Pose.Right), both.slice(Pose.Right));
        const untouched = [...poses.slice(Pose.Right, Pose.Stride + Pose.Right)];
        expect(untouched.every((value) => value === 7)).toBe(true);
      }),
      runs(500),
    );
  });

  test("keeps its angles when every length is scaled, and scales its lengths", () => {
    fc.assert(
      fc.property(posed(1), fc.double({ min: 0.05, max: 20, noNaN: true }), (it, factor) => {
        const front = frontOf(it.drawn);
        const large = frontOf(scaled(it.drawn, factor));
        const small = solved(front, it.input, it.left, it.right);
        const big = solved(large, factor * it.input, factor * it.left, factor * it.right);
        for (const side of sides) {
          const [a, b] = [placesIn(small, side), placesIn(big, side)];
          expect(b === null).toBe(a === null);
          if (!a || !b) continue;
          const { contact: _, scrubRadius, trail, ...angles } = readingOf(a, 300);
          const found = readingOf(b, 300 * factor);
          // Each height is met to 1e-11 of the half width; near a dead point an angle goes through some hundred rad a half width.
          const { toe, camber, caster, kpi } = found;
          expectClose({ toe, camber, caster, kpi }, angles, { abs: 1e-8 }, side);
          expectClose([found.scrubRadius / factor, found.trail / factor], [scrubRadius, trail], { abs: 1e-5 }, side);
        }
      }),
      runs(500),
    );
  });
});

describe("nothing finite that is asked makes the buffer hold anything but finite numbers", () => {
  const anything = fc.double({ noDefaultInfinity: true, noNaN: true });
  const large = fc.double({ min: -5000, max: 5000, noNaN: true });
  const wild = fc.oneof(anything, large, fc.constantFrom(0, -0, 1e-320, 1e308, -1e308));

  test("for a plausible car asked for anything", () => {
    fc.assert(
      fc.property(cars, wild, wild, wild, (drawn, input, left, right) => {
        expectFinite(solved(frontOf(drawn), input, left, right));
      }),
      runs(1000),
    );
  });

  test("for a drawing with no sense in it, unless it is refused", () => {
    const coordinate = fc.oneof(
      { weight: 3, arbitrary: fc.integer({ min: -4, max: 4 }).map((n) => n * 100) },
      { weight: 1, arbitrary: large },
      { weight: 1, arbitrary: fc.constantFrom(0, 1e-9, 1e6, -1e6) },
    );
    const place = fc.record({ x: coordinate, y: coordinate, z: coordinate });
    const arms = fc.record({
      lowerFront: place,
      lowerRear: place,
      lowerJoint: place,
      upperFront: place,
      upperRear: place,
      upperJoint: place,
    });
    const angle = fc.double({ min: -4, max: 4, noNaN: true });
    const corner = fc.record({
      tieRodOuter: place,
      tieRodLength: fc.oneof(fc.constant(null), coordinate),
      wheelCenter: place,
      camber: angle,
      toe: angle,
    });
    const nonsense: fc.Arbitrary<Drawn> = fc.record({
      linkage: fc.record({ kind: fc.constant("double-arm" as const), left: arms, right: arms }),
      mechanism: fc.record({
        kind: fc.constant("rack" as const),
        ahead: coordinate,
        up: coordinate,
        eyeToEye: coordinate,
        offset: coordinate,
        tilt: angle,
        straightAhead: coordinate,
      }),
      left: corner,
      right: corner,
      range: fc.record({ inputLow: coordinate, inputHigh: coordinate, travelLow: coordinate, travelHigh: coordinate }),
    });
    let accepted = 0;
    fc.assert(
      fc.property(nonsense, coordinate, coordinate, coordinate, (drawn, input, left, right) => {
        const front = compile(drawn);
        if ("refused" in front) return;
        accepted++;
        expectFinite(solved(front, input, left, right));
      }),
      runs(2000),
    );
    expect(accepted).toBeGreaterThan(200);
  });

  test("for a rack that brings its eye onto the steering axis itself", () => {
    const flat = flatCar();
    // King pin upright at 650 out, inner eye at 330 out: 320 of rack brings it there.
    for (const rack of [320, 319.999999999, 320.000000001]) {
      const poses = solved(frontOf(flat), rack, 0);
      expectFinite(poses);
      // The tab turns about the eye itself, 120 away, and the rod is cut to hypot(120, 320).
      expectClose(
        blameOf(poses, Pose.Left),
        { closes: false, link: "tie-rod", gap: Math.hypot(120, 320) - 120 },
        { abs: 1e-6 },
      );
    }
  });

  test("for what is no number at all", () => {
    for (const none of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expectFinite(solved(frontOf(flatCar()), none, none));
      expectFinite(solved(frontOf(flatCar()), 0, none));
    }
  });
});

/** King pin upright, everything level, the rack straight through the steering axes. */
function flatCar(): DoubleArmCar {
  const arms = {
    lowerFront: { x: 100, y: 250, z: 200 },
    lowerRear: { x: -100, y: 250, z: 200 },
    lowerJoint: { x: 0, y: 650, z: 200 },
    upperFront: { x: 100, y: 250, z: 400 },
    upperRear: { x: -100, y: 250, z: 400 },
    upperJoint: { x: 0, y: 650, z: 400 },
  };
  const corner = {
    tieRodOuter: { x: -120, y: 650, z: 300 },
    tieRodLength: null,
    wheelCenter: { x: 0, y: 720, z: 300 },
    camber: 0,
    toe: 0,
  };
  return {
    linkage: { kind: "double-arm", left: arms, right: arms },
    mechanism: { kind: "rack", ahead: 0, up: 300, eyeToEye: 660, offset: 0, tilt: 0, straightAhead: 0 },
    left: corner,
    right: corner,
    range: { inputLow: -60, inputHigh: 60, travelLow: -60, travelHigh: 60 },
  };
}

function expectFinite(poses: Float64Array): void {
  const bad = [...poses].flatMap((value, slot) => (Number.isFinite(value) ? [] : [`${slot}: ${value}`]));
  expect(bad).toEqual([]);
}

/** Zeros of either sign are the same number; everything else must be the same to the last bit. */
function expectSameBits(found: Float64Array, expected: Float64Array): void {
  const unlike = [...expected].flatMap((value, slot) =>
    found[slot] === value ? [] : [`${slot}: ${found[slot]} for ${value}`],
  );
  expect(unlike).toEqual([]);
}
