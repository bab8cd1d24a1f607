import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { posed, seed } from "../oracles/cars.ts";
import { type DoubleArmCar, drawnPlaces, fittedRod, type SideName, sides } from "../oracles/corner.ts";
import { frontOf, pointIn, solved, startOf } from "../oracles/kernel.ts";
import { cornerOf, follow, placesOf } from "../oracles/newton.ts";
import { cross, distance, dot, length, minus, plus, times, unit, type Vector } from "../oracles/vectors.ts";

/**
 * What a side that does not close says: the link, and its length less the nearest or farthest distance it could have. The distances are found again
 * by brute force, by going round the circle that the joint is free on.
 */
interface Circle {
  readonly centre: Vector;
  readonly radial: Vector;
  readonly across: Vector;
}

function circleAbout(through: Vector, axis: Vector, place: Vector): Circle {
  const centre = plus(through, times(axis, dot(minus(place, through), axis)));
  const radial = minus(place, centre);
  return { centre, radial, across: cross(axis, radial) };
}

/** The nearest and the farthest distance from a place to a circle: the whole way round, then closer and closer. */
function reachOf({ centre, radial, across }: Circle, place: Vector): { near: number; far: number } {
  const at = (angle: number) =>
    distance(place, plus(centre, plus(times(radial, Math.cos(angle)), times(across, Math.sin(angle)))));
  const best = (better: (a: number, b: number) => boolean): number => {
    let angle = 0;
    for (let step = Math.PI / 90; step > 1e-9; step /= 8) {
      const from = angle;
      for (let i = -90; i <= 90; i++) if (better(at(from + i * step), at(angle))) angle = from + i * step;
    }
    return at(angle);
  };
  return { near: best((a, b) => a < b), far: best((a, b) => a > b) };
}

/** A length less the nearest distance when it is too short, less the farthest when it is too long, 0 when it reaches. */
function gapOf(held: number, { near, far }: { near: number; far: number }): number {
  return held < near ? held - near : Math.max(held - far, 0);
}

interface Failed {
  readonly link: number;
  readonly gap: number;
  readonly uprightGap: number;
  readonly rodGap: number;
  readonly heightShort: number;
}

/** Everything that does not fit in a side of a pose that does not close, by brute force from its lower joint and axis. */
function failedOf(drawn: DoubleArmCar, poses: Float64Array, side: SideName, travel: number): Failed {
  const at = startOf(side);
  const start = drawnPlaces(drawn, side);
  const { upperFront, upperRear, lowerFront, lowerRear } = drawn.linkage[side];
  const lower = pointIn(poses, at + Side.Lower);
  expectClose(
    [distance(lower, lowerFront), distance(lower, lowerRear)],
    [distance(start.lower, lowerFront), distance(start.lower, lowerRear)],
    { abs: 1e-9 },
    "the lower arm",
  );
  const upperArm = circleAbout(upperFront, unit(minus(upperFront, upperRear)), start.upper);
  const axis = pointIn(poses, at + Side.Axis);
  const pin = unit(minus(start.upper, start.lower));
  const tab = minus(start.tieRodOuter, start.lower);
  const along = dot(tab, pin);
  const arm = length(minus(tab, times(pin, along)));
  const aside = unit(cross(axis, Math.abs(axis.x) < 0.9 ? { x: 1, y: 0, z: 0 } : { x: 0, y: 1, z: 0 }));
  const swept = circleAbout(lower, axis, plus(lower, plus(times(axis, along), times(aside, arm))));
  return {
    link: poses[at + Side.Blame],
    gap: poses[at + Side.Gap],
    uprightGap: gapOf(distance(start.upper, start.lower), reachOf(upperArm, lower)),
    rodGap: gapOf(
      drawn[side].tieRodLength ?? fittedRod(drawn, side),
      reachOf(swept, pointIn(poses, at + Side.TieRodInner)),
    ),
    heightShort: start.wheelCenter.z + travel - poses[at + Side.WheelCenter + 2],
  };
}

const runs = (numRuns: number) => ({ seed, numRuns });

describe("a side that does not close", () => {
  test("blames a link that cannot be met, and its gap is what brute force finds", () => {
    const blamed = new Map<number, number>();
    fc.assert(
      fc.property(posed(6), fc.constantFrom(...sides), ({ drawn, input, left }, side) => {
        const poses = solved(frontOf(drawn), input, left);
        const failed = failedOf(drawn, poses, side, left);
        const { link, gap, uprightGap, rodGap, heightShort } = failed;
        blamed.set(link, (blamed.get(link) ?? 0) + 1);
        const tolerance = { abs: 1e-6 };
        if (link === Link.Upright) expectClose(gap, uprightGap, tolerance, "the upright's gap");
        else expectClose(uprightGap, 0, tolerance, "the upright, which is not to blame");
        if (link === Link.TieRod) expectClose(gap, rodGap, tolerance, "the tie rod's gap");
        if (link === Link.Travel) expectClose(gap, heightShort, tolerance, "the height that is short");
        if (link === Link.None || link === Link.Travel) expectClose(rodGap, 0, tolerance, "the tie rod, which fits");
        if (link === Link.None) expectClose([gap, heightShort], [0, 0], tolerance, "a side that closes");
        else expect(Math.abs(gap), "a gap that nobody could see").toBeGreaterThan(0);
      }),
      runs(1500),
    );
    // Each kind of failure came up.
    for (const link of [Link.None, Link.Upright, Link.TieRod, Link.Travel]) {
      expect(blamed.get(link) ?? 0, `link ${link}`).toBeGreaterThan(10);
    }
  });

  test("that the wheel cannot get as high is right to the last hundredth: short of it the pose closes, beyond it not", () => {
    let met = 0;
    fc.assert(
      fc.property(posed(0.9), fc.constantFrom(...sides), fc.constantFrom(-1, 1), ({ drawn, input }, side, way) => {
        const front = frontOf(drawn);
        const at = startOf(side);
        const travel = way * 1500;
        const poses = solved(front, input, travel);
        if (poses[at + Side.Blame] !== Link.Travel) return;
        met++;
        const end = travel - poses[at + Side.Gap];
        expect(solved(front, input, end - way * 0.01)[at + Side.Blame]).toBe(Link.None);
        expect(solved(front, input, end + way * 0.01)[at + Side.Blame]).not.toBe(Link.None);
      }),
      runs(400),
    );
    expect(met).toBeGreaterThan(50);
  });

  /** How far from its dead point a link stands, 0 at it: the sine between the tie rod and the tab's path, the king pin and the upper arm's. */
  function sines(drawn: DoubleArmCar, side: SideName, places: ReturnType<typeof placesOf>) {
    const { upperFront, upperRear } = drawn.linkage[side];
    const pin = unit(minus(places.upper, places.lower));
    const rodPath = unit(cross(pin, minus(places.tieRodOuter, places.lower)));
    const upperPath = unit(cross(minus(upperFront, upperRear), minus(places.upper, upperRear)));
    return {
      [Link.TieRod]: Math.abs(dot(unit(minus(places.tieRodOuter, places.tieRodInner)), rodPath)),
      [Link.Upright]: Math.abs(dot(pin, upperPath)),
    };
  }

  test("blames the link whose dead point the generic Newton stalls at, and a small gap just past it", () => {
    const met = new Map<number, number>();
    fc.assert(
      fc.property(
        posed(0.9),
        fc.constantFrom(...sides),
        fc.constantFrom(-1, 1),
        fc.boolean(),
        ({ drawn, input }, side, way, byRack) => {
          const corner = cornerOf(drawn, side);
          const from = { input: byRack ? 0 : input, travel: 0, rod: corner.rod };
          const start = follow(corner, corner.drawn, from);
          fc.pre(start.reached);
          const end = follow(
            corner,
            start.state,
            byRack ? { ...from, input: way * 600 } : { ...from, travel: way * 1500 },
          );
          fc.pre(!end.reached);
          const { at } = end.state;
          const front = frontOf(drawn);
          const past = 0.1 * way;
          const poses = byRack ? solved(front, at.input + past, 0) : solved(front, input, at.travel + past);
          const link = poses[startOf(side) + Side.Blame];
          const gap = Math.abs(poses[startOf(side) + Side.Gap]);
          const path = `${side}, ${byRack ? "rack" : "travel"} ends at ${byRack ? at.input : at.travel}, blame ${link}`;
          expect(link, path).not.toBe(Link.None);
          // The travel that was asked for too much is what lacks; what a link lacks is small in any case.
          if (link === Link.Travel && !byRack) expectClose(gap, 0.1, { abs: 1e-3 }, path);
          if (link !== Link.Travel) expect(gap, path).toBeLessThan(1);
          const sine = sines(drawn, side, placesOf(corner, end.state));
          // Of the two links, the one to blame is the nearer to its dead point.
          if (link === Link.TieRod) expect(sine[Link.TieRod], path).toBeLessThan(sine[Link.Upright]);
          if (link === Link.Upright) expect(sine[Link.Upright], path).toBeLessThan(sine[Link.TieRod]);
          met.set(link, (met.get(link) ?? 0) + 1);
        },
      ),
      { ...runs(60), endOnFailure: true },
    );
    expect([...met.keys()].sort(), "kinds of failure met").toEqual([Link.Upright, Link.TieRod, Link.Travel]);
  }, 120_000);
});
