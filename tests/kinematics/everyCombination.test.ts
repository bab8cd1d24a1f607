import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Drawn, Point } from "../../src/kinematics/drawn.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { solveSide } from "../../src/kinematics/solve.ts";
import { expectClose } from "../close.ts";
import { seed } from "../oracles/cars.ts";
import { carsOf, combinations } from "../oracles/combinations.ts";
import { drawnSpin, type SideName, sides } from "../oracles/corner.ts";
import { frontOf, pointIn, solved, startOf } from "../oracles/kernel.ts";
import { eyeAt } from "../oracles/newton.ts";
import { cross, distance, dot, length, minus, plus, times, unit, type Vector } from "../oracles/vectors.ts";
import { keptOf, offBy } from "../soak/kept.ts";
import { mirroredFront } from "../soak/mirror.ts";

/**
 * A handful of random cars of every linkage and mechanism, by what a pose must keep and how it must move. Quick: the generic Newton and the random
 * cars by the thousand are in the slow tests beside this one.
 */

/** Shares of the range of input and of either wheel's travel. */
const asked = [
  [0, 0, 0],
  [0.9, -0.6, 0.5],
  [-0.9, 0.7, 0.7],
  [0.4, 0.9, -0.9],
] as const;

const spread = (share: number, low: number, high: number) => (share < 0 ? -share * low : share * high);

interface Asked {
  readonly input: number;
  readonly left: number;
  readonly right: number;
}

const places = ({ range }: Drawn): readonly Asked[] =>
  asked.map(([input, left, right]) => ({
    input: spread(input, range.inputLow, range.inputHigh),
    left: spread(left, range.travelLow, range.travelHigh),
    right: spread(right, range.travelLow, range.travelHigh),
  }));

/** The drawn ends of the steering axis. */
function endsOf({ linkage }: Drawn, side: SideName): readonly [Point, Point] {
  const points = linkage[side];
  return [points.lowerJoint, "top" in points ? points.top : points.upperJoint];
}

/** What the upright keeps beside its distances, of its spin and of the side that its parts lie on. */
function shapeOf(lower: Point, tab: Point, wheel: Point, spin: Vector) {
  const [toTab, toWheel] = [unit(minus(tab, lower)), unit(minus(wheel, lower))];
  return {
    spinToTab: dot(spin, toTab),
    spinToWheel: dot(spin, toWheel),
    hand: dot(spin, cross(toTab, toWheel)),
    long: length(spin),
  };
}

/** A place fixed to the upright, found again by the frame of its lower joint, tab and wheel. */
function carried(from: readonly [Point, Point, Point], to: readonly [Point, Point, Point], place: Point): Point {
  const frame = ([lower, tab, wheel]: readonly [Point, Point, Point]) => {
    const x = unit(minus(wheel, lower));
    const z = unit(cross(x, minus(tab, lower)));
    return [x, cross(z, x), z] as const;
  };
  const arm = minus(place, from[0]);
  const [was, is] = [frame(from), frame(to)];
  return is.reduce((sum, axis, i) => plus(sum, times(axis, dot(arm, was[i]))), to[0]);
}

const read = (poses: Float64Array, at: number) => ({
  lower: pointIn(poses, at + Side.Lower),
  upper: pointIn(poses, at + Side.Upper),
  axis: pointIn(poses, at + Side.Axis),
  tab: pointIn(poses, at + Side.TieRodOuter),
  eye: pointIn(poses, at + Side.TieRodInner),
  wheel: pointIn(poses, at + Side.WheelCenter),
  spin: pointIn(poses, at + Side.Spin),
});

function expectKept(drawn: Drawn, poses: Float64Array, side: SideName, { input, left, right }: Asked): void {
  const at = startOf(side);
  const travel = side === "left" ? left : right;
  const path = `${side}, input ${input}, travel ${travel}`;
  const corner = drawn[side];
  const [lower, upper] = endsOf(drawn, side);
  const found = read(poses, at);
  const drawnEye = eyeAt(drawn, side, drawn.mechanism.straightAhead);
  const eye = eyeAt(drawn, side, input);
  if (drawnEye === null || eye === null) throw new Error(`${path}: the mechanism does not reach`);

  for (const kept of keptOf(drawn, side))
    expectClose(offBy(poses, at, kept), 0, { abs: 1e-9 }, `${path}: ${kept.name}`);
  const rod = corner.tieRodLength ?? distance(corner.tieRodOuter, drawnEye);
  expectClose(distance(found.tab, found.eye), rod, { abs: 1e-9 }, `${path}: the tie rod`);
  // The relay's own Newton stops at steps under 1e-9 mm.
  expectClose(found.eye, eye, { abs: 1e-8 }, `${path}: the eye`);
  expectClose(found.axis, unit(minus(found.upper, found.lower)), { abs: 1e-12 }, `${path}: the axis`);
  expectClose(
    shapeOf(found.lower, found.tab, found.wheel, found.spin),
    shapeOf(lower, corner.tieRodOuter, corner.wheelCenter, drawnSpin(corner)),
    { abs: 1e-11 },
    `${path}: the upright`,
  );
  if (drawn.linkage.kind === "strut") {
    const { top, bottom } = drawn.linkage[side];
    const was = [lower, corner.tieRodOuter, corner.wheelCenter] as const;
    const is = [found.lower, found.tab, found.wheel] as const;
    const [foot, head] = [carried(was, is, bottom), carried(was, is, top)];
    const past = cross(unit(minus(head, foot)), minus(top, foot));
    expectClose(length(past), 0, { abs: 1e-9 }, `${path}: the strut slides through its top mount`);
    expect(dot(minus(head, foot), minus(top, foot)), `${path}: the strut's way up`).toBeGreaterThan(0);
  } else {
    const pin = unit(minus(upper, lower));
    expectClose(dot(found.spin, found.axis), dot(drawnSpin(corner), pin), { abs: 1e-11 }, `${path}: spin to king pin`);
  }
  if (drawn.linkage.kind !== "fixed-kingpin")
    // Height is met to 1e-11 of the half width.
    expectClose(found.wheel.z - corner.wheelCenter.z, travel, { abs: 2e-11 * corner.wheelCenter.y }, `${path}: height`);
  const along = unit(minus(found.tab, found.eye));
  const lever = dot(cross(found.axis, minus(found.tab, found.lower)), along);
  expectClose(poses[at + Side.Lever], lever, { abs: 1e-9 }, `${path}: the lever`);
  const drawnAlong = unit(minus(corner.tieRodOuter, drawnEye));
  const drawnLever = dot(cross(unit(minus(upper, lower)), minus(corner.tieRodOuter, lower)), drawnAlong);
  expect(Math.sign(lever), `${path}: the side of the dead point`).toBe(Math.sign(drawnLever));
  expect([poses[at + Side.Input], poses[at + Side.Travel]]).toEqual([input, travel]);
}

/**
 * Rates are held to differences of the fourth order, over a step at which what they leave out, h⁴/30 of the fifth derivative, was under 1e-7 for the
 * worst of these cars, near a dead point: half the step left out a sixteenth. Heights, met to 1e-11 of the half width, add up to 5e-7.
 */
const step = 1 / 16;

function expectRates(drawn: Drawn, { input, left, right }: Asked): void {
  const front = frontOf(drawn);
  const [two, one, here, less, least] = [2, 1, 0, -1, -2].map((steps) => {
    const by = step * steps;
    return solved(front, input, left + by, right + by);
  });
  for (const side of sides) {
    const at = startOf(side);
    const rateOf = (of: (poses: Float64Array) => Vector): Vector =>
      times(minus(times(minus(of(one), of(less)), 8), minus(of(two), of(least))), 1 / (12 * step));
    if ([two, least].some((poses) => poses[at + Side.Blame] !== Link.None)) continue;
    const { lower, tab, wheel, spin } = read(here, at);
    const rate = pointIn(here, at + Side.LowerRate);
    const turn = pointIn(here, at + Side.Turn);
    const moves = (place: Point) => plus(rate, cross(turn, minus(place, lower)));
    const tolerance = { abs: 1e-6 };
    const path = `${side}, input ${input}, travel ${left}, ${right}: the rate of the`;
    expectClose(
      rate,
      rateOf((poses) => read(poses, at).lower),
      tolerance,
      `${path} lower joint`,
    );
    expectClose(
      moves(tab),
      rateOf((poses) => read(poses, at).tab),
      tolerance,
      `${path} tab`,
    );
    expectClose(
      moves(wheel),
      rateOf((poses) => read(poses, at).wheel),
      tolerance,
      `${path} wheel`,
    );
    expectClose(
      times(cross(turn, spin), 100),
      times(
        rateOf((poses) => read(poses, at).spin),
        100,
      ),
      tolerance,
      `${path} spin`,
    );
  }
}

describe.each(combinations)("$linkage steered by $mechanism", ({ linkage, mechanism }) => {
  const some = (numRuns: number) => ({ seed, numRuns, endOnFailure: true });
  const suspended = linkage !== "fixed-kingpin";

  test("keeps its lengths, its shape and its side of the dead point, the eye where the mechanism has it", () => {
    let closed = 0;
    fc.assert(
      fc.property(carsOf(linkage, mechanism), (drawn) => {
        const front = frontOf(drawn);
        for (const it of places(drawn)) {
          const poses = solved(front, it.input, it.left, it.right);
          for (const side of sides) {
            const alone = newPoses(1).fill(7);
            solveSide(front, startOf(side), it.input, it[side], alone, 0);
            const here = poses.subarray(startOf(side), startOf(side) + Side.Stride);
            expect([...alone.subarray(startOf(side), startOf(side) + Side.Stride)]).toEqual([...here]);
            if (poses[startOf(side) + Side.Blame] !== Link.None) continue;
            closed++;
            expectKept(drawn, poses, side, it);
          }
          expectMirrored(drawn, poses, it);
        }
      }),
      some(3),
    );
    expect(closed).toBeGreaterThan(12);
  });

  test.runIf(suspended)("moves as differences say", () => {
    fc.assert(
      fc.property(carsOf(linkage, mechanism), (drawn) => {
        for (const it of places(drawn).slice(1, 3))
          expectRates(drawn, { input: 0.6 * it.input, left: 0.6 * it.left, right: 0.6 * it.right });
      }),
      some(2),
    );
  });
});

/** A mirrored car's pose is the mirrored pose, to the last bit. */
function expectMirrored(drawn: Drawn, poses: Float64Array, { input, left, right }: Asked): void {
  const other = solved(frontOf(mirroredFront(drawn)), -input, right, left);
  for (const [side, across] of [
    ["left", "right"],
    ["right", "left"],
  ] as const) {
    const found = other.slice(startOf(across), startOf(across) + Side.Stride);
    found[Side.Input] *= -1;
    const unlike = [...found].flatMap((value, slot) => (value === poses[startOf(side) + slot] ? [] : [slot]));
    expect(unlike, `${side}, input ${input}`).toEqual([]);
  }
}
