import type { Drawn, Linkage, Point } from "../../src/kinematics/drawn.ts";
import { drawnSpin, type Places, type SideName } from "./corner.ts";
import { eyeAt } from "./newton.ts";
import { fromSkew, skewCoordinates } from "./skew.ts";
import { cross, distance, dot, minus, plus, point, rotated, times, unit } from "./vectors.ts";

/**
 * One corner placed by its arm's angle. The lower joint is turned about its axis; every other place follows by trilateration, three distances from three places on the drawn side of their plane. Elementary geometry; it shares the drawing and
 * the inner eye's place with the Newton, and nothing with the kernel.
 */
type Triple = readonly [Point, Point, Point];

/** The side of the plane of three places that a place lies on. */
const handOf = (place: Point, [a, b, c]: Triple): number =>
  Math.sign(dot(minus(place, a), cross(minus(b, a), minus(c, a))));

/** The place at three distances from three places, on the given side of their plane; null where the distances do not meet. */
function trilaterated([a, b, c]: Triple, far: readonly [number, number, number], hand: number): Point | null {
  const along = unit(minus(b, a));
  const toC = minus(c, a);
  const i = dot(along, toC);
  const aside = unit(minus(toC, times(along, i)));
  const d = distance(a, b);
  const j = dot(aside, toC);
  const x = (far[0] ** 2 - far[1] ** 2 + d * d) / (2 * d);
  const y = (far[0] ** 2 - far[2] ** 2 + i * i + j * j - 2 * i * x) / (2 * j);
  const up2 = far[0] ** 2 - x * x - y * y;
  if (!(up2 > 0)) return null;
  const up = times(cross(along, aside), hand * Math.sqrt(up2));
  return plus(a, plus(plus(times(along, x), times(aside, y)), up));
}

/** Where the arm has taken the lower joint and a second place on the steering axis, and where that place of the upright was as drawn. */
interface Axis {
  readonly lower: Point;
  readonly second: Point;
  readonly secondAsDrawn: Point;
}

interface Carrier {
  readonly drawnLower: Point;
  readonly drawnSecond: Point;
  readonly at: (angle: number) => Axis | null;
}

const turner = (front: Point, rear: Point) => (place: Point, angle: number) =>
  plus(rear, rotated(minus(place, rear), times(unit(minus(front, rear)), angle)));

function twoArms(lower: Triple, upper: Triple): Carrier {
  const [upperFront, upperRear, upperJoint] = upper;
  const [lowerFront, lowerRear, lowerJoint] = lower;
  const hand = handOf(upperJoint, [upperFront, upperRear, lowerJoint]);
  const far = [upperFront, upperRear, lowerJoint].map((place) => distance(place, upperJoint));
  const turned = turner(lowerFront, lowerRear);
  return {
    drawnLower: lowerJoint,
    drawnSecond: upperJoint,
    at: (angle) => {
      const l = turned(lowerJoint, angle);
      const second = trilaterated([upperFront, upperRear, l], [far[0], far[1], far[2]], hand);
      return second && { lower: l, second, secondAsDrawn: upperJoint };
    },
  };
}

function carrierOf(linkage: Linkage, side: SideName): Carrier {
  switch (linkage.kind) {
    case "double-arm": {
      const p = linkage[side];
      return twoArms([p.lowerFront, p.lowerRear, p.lowerJoint], [p.upperFront, p.upperRear, p.upperJoint]);
    }
    case "trailing-arms": {
      const p = linkage[side];
      const across = (pivot: Point) => plus(pivot, point(0, 150, 0));
      return twoArms(
        [p.lowerPivot, across(p.lowerPivot), p.lowerJoint],
        [p.upperPivot, across(p.upperPivot), p.upperJoint],
      );
    }
    case "strut": {
      const { lowerFront, lowerRear, lowerJoint, top, bottom } = linkage[side];
      const line = unit(minus(top, bottom));
      const foot = plus(top, times(line, dot(minus(lowerJoint, top), line)));
      const up = times(line, Math.sign(dot(minus(top, foot), line)));
      const turned = turner(lowerFront, lowerRear);
      return {
        drawnLower: lowerJoint,
        drawnSecond: top,
        at: (angle) => {
          const lower = turned(lowerJoint, angle);
          const slid2 = distance(lower, top) ** 2 - distance(lowerJoint, foot) ** 2;
          return slid2 > 0 ? { lower, second: top, secondAsDrawn: plus(foot, times(up, Math.sqrt(slid2))) } : null;
        },
      };
    }
    case "pivoting-beam": {
      const { beamFront, beamRear, lowerJoint, upperJoint } = linkage[side];
      const turned = turner(beamFront, beamRear);
      return {
        drawnLower: lowerJoint,
        drawnSecond: upperJoint,
        at: (angle) => ({
          lower: turned(lowerJoint, angle),
          second: turned(upperJoint, angle),
          secondAsDrawn: upperJoint,
        }),
      };
    }
    case "fixed-kingpin":
      throw new Error("a fixed king pin has no arm");
  }
}

/** The places of a corner, and where the upright's place that was second on the drawn steering axis has gone. */
export interface Placed extends Places {
  readonly second: Point;
}

/** A corner at one input of its steering mechanism, by the arm's angle from the drawn one; null where a link does not reach. */
export type PlacedAt = (angle: number) => Placed | null;

/** Places one corner with a rod of a length, mm. */
export function placedBy(drawn: Drawn, side: SideName, rod: number): (input: number) => PlacedAt {
  const carrier = carrierOf(drawn.linkage, side);
  const { drawnLower, drawnSecond } = carrier;
  const { tieRodOuter, wheelCenter } = drawn[side];
  const tip = plus(wheelCenter, drawnSpin(drawn[side]));
  const drawnEye = eyeAt(drawn, side, drawn.mechanism.straightAhead);
  if (drawnEye === null) throw new Error("the steering mechanism does not get to where the car is drawn");
  const hand = handOf(tieRodOuter, [drawnLower, drawnSecond, drawnEye]);
  return (input) => {
    const eye = eyeAt(drawn, side, input);
    if (eye === null) return () => null;
    return (angle) => {
      const axis = carrier.at(angle);
      if (axis === null) return null;
      const { lower, second, secondAsDrawn } = axis;
      const far = [distance(drawnLower, tieRodOuter), distance(secondAsDrawn, tieRodOuter), rod] as const;
      const tab = trilaterated([lower, second, eye], far, hand);
      if (tab === null) return null;
      const carried = (place: Point) =>
        fromSkew(lower, second, tab, skewCoordinates(drawnLower, secondAsDrawn, tieRodOuter, place));
      const wheel = carried(wheelCenter);
      return {
        lower,
        upper: second,
        tieRodOuter: tab,
        tieRodInner: eye,
        wheelCenter: wheel,
        spin: minus(carried(tip), wheel),
        second: carried(drawnSecond),
      };
    };
  };
}
