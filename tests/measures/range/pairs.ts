import { inv, type Matrix, matrix, multiply, transpose } from "mathjs";
import { expect } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import { Pose, Side } from "../../../src/kinematics/slots.ts";
import { bodiesOf } from "../../../src/measures/range/bodies.ts";
import { pairingsAt } from "../../../src/measures/range/clearance.ts";
import { lineRoom, type Ring, segmentToRing, segmentToSegment } from "../../../src/measures/range/distance.ts";
import type { Study } from "../../../src/measures/study.ts";
import type { Wheel } from "../../../src/vehicle/car.ts";
import { cross, minus, plus, point } from "../../oracles/vectors.ts";

/**
 * What could meet, and how near it comes. The distances of bars and rings have tests of their own (distance.test.ts): here
 * they are given the bars' ends and sizes as the car's file has them, carried by rotation matrices of a general mathematics
 * library, so that a pair which is measured from another place, or by another size, is found.
 */
const sides = { left: Pose.Left, right: Pose.Right } as const;

export const slot = (poses: Float64Array, at: number): Point => point(poses[at], poses[at + 1], poses[at + 2]);

const columns = (...all: readonly Point[]): Matrix => transpose(matrix(all.map(({ x, y, z }) => [x, y, z])));

/** Carries a place as three others are carried from where a fourth, `origin`, is. */
export function carrier(before: readonly [Point, Point, Point, Point], after: readonly [Point, Point, Point, Point]) {
  const spans = ([origin, ...others]: readonly [Point, Point, Point, Point]) =>
    others.map((each) => minus(each, origin));
  const turn = multiply(columns(...spans(after)), inv(columns(...spans(before))));
  return (p: Point): Point => {
    const off = minus(p, before[0]);
    const [x, y, z] = multiply(turn, [off.x, off.y, off.z]).toArray() as number[];
    return plus(after[0], point(x, y, z));
  };
}

/** How an arm on two pivots carries a place, from where its joint is drawn and stands. */
export function armCarrier(pivots: readonly [Point, Point], drawn: Point, now: Point) {
  const [a, b] = pivots;
  const marks = (joint: Point) => [a, b, joint, plus(a, cross(minus(b, a), minus(joint, a)))] as const;
  return carrier(marks(drawn), marks(now));
}

/** A bar by its two ends and its diameter. */
export type Bar = readonly [from: Point, to: Point, diameter: number];

const buffered = ([from, to]: Bar): Float64Array => {
  const span = minus(to, from);
  return Float64Array.of(from.x, from.y, from.z, span.x, span.y, span.z);
};

export function apart(some: readonly Bar[], others: readonly Bar[]): number {
  const all = some.flatMap((a) =>
    others.map((b) => segmentToSegment(buffered(a), 0, buffered(b), 0) - a[2] / 2 - b[2] / 2),
  );
  return Math.min(...all);
}

export function fromRing(some: readonly Bar[], ring: Ring, poses: Float64Array, at: number): number {
  const [middle, axis] = [at + Side.WheelCenter, at + Side.Spin];
  return Math.min(
    ...some.map((bar) => segmentToRing(buffered(bar), 0, ring, poses, middle, axis, lineRoom()) - bar[2] / 2),
  );
}

/** Every pair's distance in a pose by the file's own numbers, by the pair's id. */
export type Oracle = (poses: Float64Array, at: number) => Readonly<Record<string, number>>;

const poses = (study: Study) =>
  [-1, -0.4, 0, 0.7, 1].flatMap((share) =>
    [-1, 0, 0.6].map((travel) => {
      const { inputTravel, wheelTravel } = study;
      const input = share * (share > 0 ? inputTravel.left : inputTravel.right);
      const up = travel * (travel > 0 ? wheelTravel.bump : wheelTravel.droop);
      return Float64Array.from(study.pose(input, up, up));
    }),
  );

/** Every pair is one of the oracle's, none is missing, and each is as far apart as that says. */
export function expectAll(study: Study, wheel: Wheel, oracle: Oracle): void {
  const pairs = pairingsAt(study, bodiesOf(study, wheel));
  const at = sides[wheel];
  for (const pose of poses(study)) {
    expect(pose[at + Side.Blame]).toBe(0);
    const wanted = oracle(pose, at);
    expect(pairs.map(({ id }) => id).sort()).toEqual(Object.keys(wanted).sort());
    for (const { id, read } of pairs) {
      const found = read(pose, at);
      // 28 golden steps bring a ring's distance below 2e-4 mm; matrices that are inverted keep some ten digits.
      expect(Math.abs(found - (wanted[id] ?? Number.NaN)), id).toBeLessThan(3e-4);
      const enough = found + 5;
      expect(Math.abs(read(pose, at, enough) - found), id).toBeLessThan(3e-4);
      const near = found - 5;
      expect(read(pose, at, near), id).toBeGreaterThanOrEqual(near);
    }
  }
}

export const rod = (pose: Float64Array, at: number, diameter: number): readonly Bar[] => [
  [slot(pose, at + Side.TieRodInner), slot(pose, at + Side.TieRodOuter), diameter],
];
