import type { Linkage, Point } from "../../src/kinematics/drawn.ts";
import { components, fromSkew, off, skewCoordinates } from "./skew.ts";
import { cross, distance, dot, minus, plus, point, unit } from "./vectors.ts";

/**
 * The loop equations of one corner's linkage, mm, over three places of its upright: L, the lower joint; K, a second place
 * on the steering axis as drawn (the upper joint, or the place of a strut that is in its top mount as drawn); T, the tie
 * rod's outer end. Each is at most quadratic in each coordinate.
 */
export interface LinkageLoops {
  /** L and K as drawn. */
  readonly start: readonly [Point, Point];
  /** Five equations; six where the king pin is fixed. */
  readonly residuals: (lower: Point, second: Point, tab: Point) => number[];
  /** Nought at the linkage's own dead points. */
  readonly triples: (lower: Point, second: Point, tab: Point) => number[];
  /** Where the steering axis starts above, for K as it is. */
  readonly upper: (second: Point) => Point;
  readonly hasTravel: boolean;
}

type Held = readonly [at: Point, far: number];

/** An arm on an axis holds its joint at a distance from two places of the axis. */
function arm(joint: Point, ...axis: readonly [Point, Point]): readonly [Held, Held] {
  return [
    [axis[0], distance(axis[0], joint)],
    [axis[1], distance(axis[1], joint)],
  ];
}

const offFrom = (place: Point, held: readonly Held[]): number[] => held.map(([at, far]) => off(place, at, far));

interface Arms {
  readonly lower: readonly [Point, Point, Point];
  readonly upper: readonly [Point, Point, Point];
}

/** Each arm as the two places of its axis and its joint. */
function twoArms({ lower, upper }: Arms): LinkageLoops {
  const lowerHeld = arm(lower[2], lower[0], lower[1]);
  const upperHeld = arm(upper[2], upper[0], upper[1]);
  const kingPin = distance(lower[2], upper[2]);
  return {
    start: [lower[2], upper[2]],
    residuals: (l, k) => [...offFrom(l, lowerHeld), ...offFrom(k, upperHeld), off(l, k, kingPin)],
    triples: (l, k) => [dot(minus(k, l), cross(minus(upper[0], upper[1]), minus(k, upper[1])))],
    upper: (k) => k,
    hasTravel: true,
  };
}

/** The strut's line, fixed in the upright, goes through its top mount: the cross product of two of its legs is nought. */
function strut(
  { lowerFront, lowerRear, lowerJoint, top, bottom }: Extract<Linkage, { kind: "strut" }>["left"],
  drawnTab: Point,
): LinkageLoops {
  const held = arm(lowerJoint, lowerFront, lowerRear);
  const span = distance(lowerJoint, top);
  const leg = distance(top, bottom);
  const bottomIn = skewCoordinates(lowerJoint, top, drawnTab, bottom);
  const line = unit(minus(top, bottom));
  const aside = unit(cross(line, Math.abs(line.x) < 0.8 ? point(1, 0, 0) : point(0, 1, 0)));
  const across = cross(line, aside);
  const along = Math.sign(dot(minus(top, lowerJoint), line));
  return {
    start: [lowerJoint, top],
    residuals: (l, k, t) => {
      const b = fromSkew(l, k, t, bottomIn);
      const astray = cross(minus(k, b), minus(top, b));
      return [...offFrom(l, held), off(l, k, span), dot(astray, aside) / leg, dot(astray, across) / leg];
    },
    triples: (l, k, t) => [along * dot(minus(k, fromSkew(l, k, t, bottomIn)), minus(top, l))],
    upper: () => top,
    hasTravel: true,
  };
}

/** A beam is one body with both ends of the king pin. */
function beam({
  beamFront,
  beamRear,
  lowerJoint,
  upperJoint,
}: Extract<Linkage, { kind: "pivoting-beam" }>["left"]): LinkageLoops {
  const held = arm(lowerJoint, beamFront, beamRear);
  const upperIn = skewCoordinates(beamFront, beamRear, lowerJoint, upperJoint);
  return {
    start: [lowerJoint, upperJoint],
    residuals: (l, k) => [...offFrom(l, held), ...components(minus(k, fromSkew(beamFront, beamRear, l, upperIn)))],
    triples: () => [],
    upper: (k) => k,
    hasTravel: true,
  };
}

/** The equations of one side's linkage. */
export function linkageLoops(linkage: Linkage, side: "left" | "right", drawnTab: Point): LinkageLoops {
  switch (linkage.kind) {
    case "double-arm": {
      const p = linkage[side];
      return twoArms({
        lower: [p.lowerFront, p.lowerRear, p.lowerJoint],
        upper: [p.upperFront, p.upperRear, p.upperJoint],
      });
    }
    case "trailing-arms": {
      const p = linkage[side];
      const across = (pivot: Point) => plus(pivot, point(0, 150, 0));
      return twoArms({
        lower: [p.lowerPivot, across(p.lowerPivot), p.lowerJoint],
        upper: [p.upperPivot, across(p.upperPivot), p.upperJoint],
      });
    }
    case "strut":
      return strut(linkage[side], drawnTab);
    case "pivoting-beam":
      return beam(linkage[side]);
    case "fixed-kingpin": {
      const { lowerJoint, upperJoint } = linkage[side];
      return {
        start: [lowerJoint, upperJoint],
        residuals: (l, k) => [...components(minus(l, lowerJoint)), ...components(minus(k, upperJoint))],
        triples: () => [],
        upper: (k) => k,
        hasTravel: false,
      };
    }
  }
}
