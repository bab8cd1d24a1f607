import { describe, expect, test } from "vitest";
import type { Corner, Drawn, Point, StrutPoints } from "../../src/kinematics/drawn.ts";
import { carryStrut, compileStrut } from "../../src/kinematics/linkages/strut.ts";
import { Link, Own, Pose, Side, Upright, Work } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { drawnSpin } from "../oracles/corner.ts";
import { frontOf, pointIn, solved } from "../oracles/kernel.ts";
import { cross, distance, dot, length, minus, plus, point, times, unit } from "../oracles/vectors.ts";

/** Struts that are drawn out of the common. Invented; mm, rad. */

const corner: Corner = {
  tieRodOuter: point(-120, 620, 260),
  tieRodLength: null,
  wheelCenter: point(5, 720, 290),
  camber: 0.01,
  toe: -0.005,
};
const eye = point(-110, 260, 270);
const usual: StrutPoints = {
  lowerFront: point(110, 250, 190),
  lowerRear: point(-90, 250, 205),
  lowerJoint: point(0, 650, 200),
  top: point(-30, 560, 720),
  bottom: point(-5, 640, 400),
};
const drawnOn = (points: StrutPoints): Drawn => ({
  linkage: { kind: "strut", left: points, right: points },
  mechanism: { kind: "centre-rack", leftEye: eye, rightEye: eye, tilt: 0, straightAhead: 0 },
  left: corner,
  right: corner,
  range: { inputLow: -40, inputHigh: 40, travelLow: -60, travelHigh: 60 },
});

test("a strut's bottom may be any place on its line, above the top mount too", () => {
  const here = frontOf(drawnOn(usual));
  const way = minus(usual.top, usual.bottom);
  for (const share of [0.25, 1.5, 4]) {
    const there = frontOf(drawnOn({ ...usual, bottom: plus(usual.bottom, times(way, share)) }));
    for (const [rack, travel] of [
      [0, 0],
      [35, -50],
      [-20, 40],
    ] as const) {
      const [one, other] = [solved(here, rack, travel), solved(there, rack, travel)];
      expect(one[Side.Blame]).toBe(Link.None);
      // The height is met to 1e-11 of the half width.
      for (let slot = 0; slot < Pose.Stride; slot++) expect(Math.abs(one[slot] - other[slot])).toBeLessThan(1e-7);
    }
  }
});

const joint = usual.lowerJoint;
describe.each([
  { name: "upright", top: point(0, 650, 700) },
  { name: "leaning in and back", top: point(-64, 522, 712) },
])("a strut straight through its lower joint, $name", ({ top }) => {
  const bottom = plus(joint, times(minus(top, joint), 0.25));
  const drawn = drawnOn({ ...usual, top, bottom });

  test("is the steering axis, about which its upright keeps everything", () => {
    const front = frontOf(drawn);
    const shape = (lower: Point, axis: Point, tab: Point, wheel: Point, spin: Point) => ({
      tab: [dot(minus(tab, lower), axis), distance(tab, lower)],
      wheel: [dot(minus(wheel, lower), axis), distance(wheel, lower), distance(wheel, tab)],
      spin: [dot(spin, axis), length(spin), dot(spin, cross(axis, minus(tab, lower)))],
      hand: Math.sign(dot(minus(wheel, lower), cross(axis, minus(tab, lower)))),
    });
    const asDrawn = shape(joint, unit(minus(top, joint)), corner.tieRodOuter, corner.wheelCenter, drawnSpin(corner));
    for (const rack of [-35, 0, 35])
      for (const travel of [-50, 0, 55]) {
        const poses = solved(front, rack, travel);
        const path = `rack ${rack}, travel ${travel}`;
        expect(poses[Side.Blame], path).toBe(Link.None);
        const at = (slot: number) => pointIn(poses, slot);
        const axis = at(Side.Axis);
        expectClose(axis, unit(minus(top, at(Side.Lower))), { abs: 1e-12 }, path);
        const found = shape(at(Side.Lower), axis, at(Side.TieRodOuter), at(Side.WheelCenter), at(Side.Spin));
        expectClose(found, asDrawn, { abs: 1e-9 }, path);
      }
  });
});

/** The linkage alone, at an angle of its arm: what it writes for the upright to be turned by. */
function placedAt(points: StrutPoints, angle: number) {
  const own = new Float64Array(Own.Linkage);
  const work = new Float64Array(Work.Stride);
  if ("refused" in compileStrut(points, "left", own, corner)) throw new Error("refused");
  carryStrut.place(own, Math.tan(angle / 2), work);
  carryStrut.rates(own, work);
  const at = (slot: number) => work[Work.Upright + slot];
  return {
    lower: pointIn(work, Work.Lower),
    axis: pointIn(work, Work.Axis),
    gap: work[Work.UprightGap],
    bend: at(Upright.Bend),
    tab: { along: at(Upright.TieRodAlong), out: at(Upright.TieRodRadius) },
    wheel: {
      along: at(Upright.Wheel),
      out: at(Upright.TieRodRadius) * Math.hypot(at(Upright.Wheel + 1), at(Upright.Wheel + 2)),
    },
  };
}

/** Along an axis through the lower joint, and out from it. */
function seenFrom(axis: Point, place: Point): { along: number; out: number } {
  const arm = minus(place, joint);
  return { along: dot(arm, axis), out: length(cross(arm, axis)) };
}

test("a strut straight through its lower joint and flat across the car keeps its upright too, though none is", () => {
  const top = point(0, 150, 200);
  const axis = point(0, -1, 0);
  const points = { ...usual, top, bottom: point(0, 400, 200) };
  for (const angle of [-0.3, 0, 0.2]) {
    const { tab, wheel, gap } = placedAt(points, angle);
    expectClose(
      { tab, wheel, gap },
      { tab: seenFrom(axis, corner.tieRodOuter), wheel: seenFrom(axis, corner.wheelCenter), gap: 0 },
      { abs: 1e-9 },
    );
  }
});

test("a strut whose line passes its lower joint farther off than the joint then stands from its top mount lacks the difference", () => {
  // Seen from the front, the lower arm turns about (250, 200), 400 long; the top mount stands beside its joint's way.
  const top = point(0, 560, 480);
  const points: StrutPoints = {
    lowerFront: point(100, 250, 200),
    lowerRear: point(-100, 250, 200),
    lowerJoint: joint,
    top,
    bottom: point(-40, 380, 240),
  };
  const line = unit(minus(points.top, points.bottom));
  const toLine = minus(minus(top, joint), times(line, dot(minus(top, joint), line)));
  const offset = length(toLine);
  for (const angle of [0.35, 0.5]) {
    const { lower, axis, gap, bend, tab, wheel } = placedAt(points, angle);
    expectClose(lower, point(0, 250 + 400 * Math.cos(angle), 200 + 400 * Math.sin(angle)), { abs: 1e-9 });
    const span = distance(lower, top);
    expect(span).toBeLessThan(offset);
    expectClose(gap, offset - span, { abs: 1e-9 });
    // There the strut does not slide, and nothing may be divided by how far it has.
    expect(bend).toBe(0);
    expectClose(axis, times(minus(top, lower), 1 / span), { abs: 1e-12 });
    // As near as it goes, the strut stands square to the line from joint to mount: that is where its offset points to in the upright.
    const across = unit(toLine);
    expectClose(
      { tab, wheel },
      { tab: seenFrom(across, corner.tieRodOuter), wheel: seenFrom(across, corner.wheelCenter) },
      { abs: 1e-9 },
    );
  }
  // Short of that it closes.
  expect(placedAt(points, 0.05).gap).toBe(0);
});
