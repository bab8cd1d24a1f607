import { expect, test } from "vitest";
import type { Drawn, Point, StrutPoints } from "../../src/kinematics/drawn.ts";
import { expectClose } from "../close.ts";
import { frontOf, placesAt } from "../oracles/kernel.ts";
import { spatialCar } from "../oracles/known.ts";
import { cross, distance, dot, length, minus, plus, point, rotated, times, unit } from "../oracles/vectors.ts";

/**
 * A strut of invented geometry, swept through rack and arm angle by three distances at a time [D]: nothing of the product
 * but the drawing goes in, and no equation is iterated. The arm's angle sets the wheel's travel, at which the product is asked.
 */
const strut: StrutPoints = {
  lowerFront: point(140, 260, 245),
  lowerRear: point(-160, 250, 240),
  lowerJoint: point(8, 600, 220),
  top: point(-30, 540, 780),
  bottom: point(10, 570, 400),
};
const outer = point(-120, 575, 300);
const wheelCenter = point(0, 670, 300);
const inner = point(-150, 280, 330);
const corner = { tieRodOuter: outer, tieRodLength: null, wheelCenter, camber: 0, toe: 0 };
const drawn: Drawn = {
  linkage: { kind: "strut", left: strut, right: strut },
  mechanism: { ...spatialCar.mechanism, ahead: inner.x, up: inner.z, eyeToEye: 2 * inner.y },
  left: corner,
  right: corner,
  range: { inputLow: -60, inputHigh: 60, travelLow: -90, travelHigh: 90 },
};

/** The place at three distances from three others, on the side of their plane on which `like` lies of its own three. */
function trilaterated(
  [a, b, c]: readonly Point[],
  [ra, rb, rc]: readonly number[],
  like: readonly [Point, Point, Point, Point],
): Point {
  const side = Math.sign(dot(cross(minus(like[1], like[0]), minus(like[2], like[0])), minus(like[3], like[0])));
  const x = unit(minus(b, a));
  const across = minus(c, a);
  const y = unit(minus(across, times(x, dot(across, x))));
  const [bx, cx, cy] = [distance(a, b), dot(across, x), dot(across, y)];
  const px = (ra ** 2 - rb ** 2 + bx ** 2) / (2 * bx);
  const py = (ra ** 2 - rc ** 2 + cx ** 2 + cy ** 2 - 2 * cx * px) / (2 * cy);
  const pz = side * Math.sqrt(ra ** 2 - px ** 2 - py ** 2);
  return plus(a, plus(times(x, px), plus(times(y, py), times(cross(x, y), pz))));
}

/** The strut's own line, up, and how far along it and off it a place of the upright lies, from the lower joint. */
const line = unit(minus(strut.top, strut.bottom));
const along = (p: Point) => dot(minus(p, strut.lowerJoint), line);
const off = distance(plus(strut.lowerJoint, times(line, along(strut.top))), strut.top);

/** A place of the upright on its strut's line, `up` from the lower joint along it: as it is drawn. */
const onLine = (up: number) => plus(strut.top, times(line, up - along(strut.top)));

/** One pose of the left corner from the arm's turn, rad, and the rack, mm. */
function swept(turn: number, rack: number): { readonly lower: Point; readonly outer: Point; readonly wheel: Point } {
  const axis = unit(minus(strut.lowerFront, strut.lowerRear));
  const lower = plus(strut.lowerRear, rotated(minus(strut.lowerJoint, strut.lowerRear), times(axis, turn)));
  // The upright's material place that is in the top mount now: so far along the strut that it is as far from the joint.
  const reach = Math.sqrt(distance(lower, strut.top) ** 2 - off ** 2);
  const inMount = onLine(reach);
  const eye = plus(inner, point(0, rack, 0));
  const rod = distance(outer, inner);
  const drawnThree = [strut.lowerJoint, inMount, inner, outer] as const;
  const outerNow = trilaterated(
    [lower, strut.top, eye],
    [distance(outer, strut.lowerJoint), distance(outer, inMount), rod],
    drawnThree,
  );
  const wheel = trilaterated(
    [lower, strut.top, outerNow],
    [distance(wheelCenter, strut.lowerJoint), distance(wheelCenter, inMount), distance(wheelCenter, outer)],
    [strut.lowerJoint, inMount, outer, wheelCenter],
  );
  return { lower, outer: outerNow, wheel };
}

test("a strut stands where three distances at a time put it, over rack and travel", () => {
  const front = frontOf(drawn);
  expectClose(swept(0, 0).wheel, wheelCenter, { abs: 1e-9 });
  const travels: number[] = [];
  for (let rack = -60; rack <= 60; rack += 5) {
    for (let turn = -0.25; turn <= 0.25; turn += 0.02) {
      const expected = swept(turn, rack);
      const travel = expected.wheel.z - wheelCenter.z;
      const found = placesAt(front, rack, travel).left;
      const path = `rack ${rack}, travel ${travel}`;
      // The wheel's height is met to 1e-11 of the half width; places follow it within some tenfold of that.
      expectClose(found.lower, expected.lower, { abs: 1e-8 }, path);
      expectClose(found.tieRodOuter, expected.outer, { abs: 1e-8 }, path);
      expectClose(found.wheelCenter, expected.wheel, { abs: 1e-8 }, path);
      travels.push(travel);
    }
  }
  expect(Math.min(...travels)).toBeLessThan(-80);
  expect(Math.max(...travels)).toBeGreaterThan(80);
  expect(length(minus(swept(0.2, 40).wheel, wheelCenter))).toBeGreaterThan(50);
});
