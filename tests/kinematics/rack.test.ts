import { describe, expect, test } from "vitest";
import type { Corner, Drawn, Mechanism } from "../../src/kinematics/drawn.ts";
import { readSide } from "../../src/kinematics/face.ts";
import { Link, Side } from "../../src/kinematics/slots.ts";
import { expectClose } from "../close.ts";
import { type SideName, sides } from "../oracles/corner.ts";
import { frontOf, pointIn, solved, startOf } from "../oracles/kernel.ts";
import { distance, point } from "../oracles/vectors.ts";

/**
 * A rack that is off the car's middle and tilted, by hand: with sides of 7, 24 and 25, 25 mm along the rack are 24 across and 7 up. Eyes are told
 * in their own corner's frame, y outboard. Invented; mm, rad.
 */
const tilt = Math.atan2(7, 24);

const pin = { lowerJoint: point(0, 600, 180), upperJoint: point(-20, 570, 400) };
const corner: Corner = {
  tieRodOuter: point(-110, 590, 320),
  tieRodLength: null,
  wheelCenter: point(0, 690, 290),
  camber: 0,
  toe: 0,
};
const steeredBy = (mechanism: Mechanism): Drawn => ({
  linkage: { kind: "fixed-kingpin", left: pin, right: pin },
  mechanism,
  left: corner,
  right: corner,
  range: { inputLow: -50, inputHigh: 50, travelLow: 0, travelHigh: 0 },
});

const onEnds = (straightAhead: number): Mechanism => ({
  kind: "rack",
  ahead: -120,
  up: 300,
  eyeToEye: 500,
  offset: 30,
  tilt,
  straightAhead,
});

/** Half of 500 is 240 across and 70 up; the left end is the higher one. */
const endsAt = [
  { rack: 0, left: point(-120, 30 + 240, 370), right: point(-120, -30 + 240, 230) },
  { rack: 25, left: point(-120, 270 + 24, 377), right: point(-120, 210 - 24, 237) },
  { rack: -50, left: point(-120, 270 - 48, 356), right: point(-120, 210 + 48, 216) },
];

const onBar = (straightAhead: number): Mechanism => ({
  kind: "centre-rack",
  leftEye: point(-100, 90, 310),
  rightEye: point(-105, 20, 330),
  tilt,
  straightAhead,
});

const barAt = [
  { rack: 0, left: point(-100, 90, 310), right: point(-105, 20, 330) },
  { rack: 25, left: point(-100, 114, 317), right: point(-105, -4, 337) },
  { rack: -50, left: point(-100, 42, 296), right: point(-105, 68, 316) },
];

describe.each([
  { kind: "on its ends", mechanism: onEnds, eyes: endsAt },
  { kind: "on a bar at its middle", mechanism: onBar, eyes: barAt },
])("a tilted rack off the middle, with tie rods $kind", ({ mechanism, eyes }) => {
  test.each(eyes)("has its eyes where a triangle of 7, 24 and 25 puts them at $rack mm", ({ rack, ...eye }) => {
    const poses = solved(frontOf(steeredBy(mechanism(0))), rack, 0);
    for (const side of sides) {
      expectClose(pointIn(poses, startOf(side) + Side.TieRodInner), eye[side], { abs: 1e-9 }, side);
      expect(poses[startOf(side) + Side.Blame]).toBe(Link.None);
    }
  });

  test.each(eyes)("has its rods cut to where it is drawn, $rack mm from its middle", ({ rack, ...eye }) => {
    const front = frontOf(steeredBy(mechanism(rack)));
    const there = solved(front, rack, 0);
    for (const side of sides) {
      const at = startOf(side);
      // As drawn there, and as long anywhere else.
      expectClose(pointIn(there, at + Side.TieRodOuter), corner.tieRodOuter, { abs: 1e-9 }, side);
      const elsewhere = solved(front, rack - 20, 0);
      const long = distance(pointIn(elsewhere, at + Side.TieRodInner), pointIn(elsewhere, at + Side.TieRodOuter));
      expectClose(long, distance(eye[side], corner.tieRodOuter), { abs: 1e-9 }, side);
    }
  });

  test("is read in the car's own frame: its left end goes left and up, and so does its right end", () => {
    const front = frontOf(steeredBy(mechanism(0)));
    const inner = (rack: number, side: SideName) => {
      const read = readSide(solved(front, rack, 0), 0, side);
      if (!read.closes) throw new Error(`does not close on the ${side}`);
      expect(read.travel).toBe(0);
      return read.tieRodInner;
    };
    for (const side of sides) {
      const [from, to] = [inner(0, side), inner(25, side)];
      expectClose(point(to.x - from.x, to.y - from.y, to.z - from.z), point(0, 24, 7), { abs: 1e-9 }, side);
    }
    expect(Math.sign(inner(0, "left").y - inner(0, "right").y)).toBe(1);
  });
});
