import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import { Pose, Side } from "../../../src/kinematics/slots.ts";
import { bodiesOf } from "../../../src/measures/range/bodies.ts";
import { namedDirection, rodEndsAt, swing } from "../../../src/measures/range/rodEnds.ts";
import { expectClose } from "../../close.ts";
import { dot, length, minus, point, radians, rotated, times, unit } from "../../oracles/vectors.ts";
import { preset } from "../../vehicle/cars.ts";
import { studied } from "../carTexts.ts";

/** Swing by its definition: the angle between the shank and the plane square to the bolt. */
const byDefinition = (shank: Point, bolt: Point): number =>
  Math.asin(Math.min(1, Math.abs(dot(unit(shank), unit(bolt)))));

describe("a corner's rod ends", () => {
  test("are none where its file gives none", () => {
    expect(
      rodEndsAt(studied(preset("balanced-two-seater")), bodiesOf(studied(preset("balanced-two-seater")), "left")),
    ).toEqual([]);
    const one = studied(
      `${preset("balanced-two-seater")}\nrod-ends: { left: { tie-rod: { outer: { bolt: vertical, angle: 20 } } } }\n`,
    );
    expect(rodEndsAt(one, bodiesOf(one, "left"))).toHaveLength(1);
    expect(rodEndsAt(one, bodiesOf(one, "right"))).toEqual([]);
  });

  test("point as the file says where it says so, and else from the middle of where their link is held", () => {
    const study = studied(
      `${preset("widened-offset-rack")}rod-ends:
  both:
    lower-arm: { joint: { bolt: { ahead: 0, out: 0, up: 3 }, angle: 30 } }
    upper-arm: { joint: { bolt: vertical, shank: { ahead: 0, out: 3, up: 4 }, angle: 30 } }
`,
    );
    const [lower, upper] = rodEndsAt(study, bodiesOf(study, "left"));
    expect(lower.bolt).toEqual(point(0, 0, 1));
    // From (-0.25, 6, 7.5), the middle of both pivots, to the joint at (0.2, 21.5, 7).
    expectClose(lower.shank, unit(point(0.45, 15.5, -0.5)), { abs: 1e-12 });
    expectClose(upper.shank, point(0, 0.6, 0.8), { abs: 1e-12 });
  });
});

describe("a bolt on what steers", () => {
  const inner = "rod-ends: { both: { tie-rod: { inner: { bolt: fore-and-aft, angle: 20 } } } }\n";
  const wheels = [
    ["left", Pose.Left, 1],
    ["right", Pose.Right, -1],
  ] as const;
  const slot = (poses: Float64Array, at: number) => point(poses[at], poses[at + 1], poses[at + 2]);
  const rodOf = (poses: Float64Array, at: number) =>
    minus(slot(poses, at + Side.TieRodOuter), slot(poses, at + Side.TieRodInner));

  test("turns with a centre link whose arms are unlike, on either side", () => {
    const relay = preset("twin-beam-relay").replace(
      "joint: { ahead: -8, offset: -12",
      "joint: { ahead: -6, offset: -12",
    );
    const study = studied(relay + inner);
    /** How the line between the eyes lies, seen from above: the link stays level, its shafts being upright. */
    const lie = (poses: Float64Array) => {
      const [a, b] = [slot(poses, Pose.Left + Side.TieRodInner), slot(poses, Pose.Right + Side.TieRodInner)];
      return Math.atan2(-b.y - a.y, b.x - a.x);
    };
    const drawn = lie(study.pose(0, 0, 0));
    for (const column of [-6, 5]) {
      const poses = Float64Array.from(study.pose(column, 20, 20));
      const turn = lie(poses) - drawn;
      expect(Math.abs(turn)).toBeGreaterThan(radians(0.3));
      for (const [wheel, at, hand] of wheels) {
        const [end] = rodEndsAt(study, bodiesOf(study, wheel));
        const bolt = point(Math.cos(turn), hand * Math.sin(turn), 0);
        expect(swing(end.shankIn(poses, at), end.bolt)).toBeCloseTo(byDefinition(rodOf(poses, at), bolt), 9);
      }
    }
  });

  test("turns with a plate about its column, though that stands off the middle", () => {
    const plate = preset("torsion-beam-steering-plate").replace('ahead: "-4 5/8"', 'ahead: "-4 5/8"\n    offset: 1.5');
    const study = studied(plate + inner);
    // Its column leans back by 30 degrees above level; seen from the right corner it turns the other way.
    const axis = point(-Math.cos(radians(30)), 0, Math.sin(radians(30)));
    for (const column of [-0.5, 0.4]) {
      const poses = Float64Array.from(study.pose(column, 20, 20));
      for (const [wheel, at, hand] of wheels) {
        const [end] = rodEndsAt(study, bodiesOf(study, wheel));
        const bolt = rotated(point(1, 0, 0), times(axis, hand * column));
        expect(swing(end.shankIn(poses, at), end.bolt)).toBeCloseTo(byDefinition(rodOf(poses, at), bolt), 9);
      }
    }
  });

  test("is where its own side's rod begins, on a rack that stands to one side", () => {
    const study = studied(preset("widened-offset-rack"));
    const inch = 25.4;
    // Eyes 13 in apart about a middle that is 2.5 in to the right.
    expectClose(bodiesOf(study, "left").place("tie-rod.inner"), point(-5.5 * inch, 4 * inch, 8.625 * inch), {
      abs: 1e-9,
    });
    expectClose(bodiesOf(study, "right").place("tie-rod.inner"), point(-5.5 * inch, 9 * inch, 8.625 * inch), {
      abs: 1e-9,
    });
  });
});

describe("a bolt by its name", () => {
  const shank = unit(point(0.1, 0.9, -0.2));

  test.each(["square-upright", "square-flat"] as const)(
    "%s is square to the shank: nothing swings as drawn",
    (name) => {
      const bolt = namedDirection(name, shank);
      expect(length(bolt)).toBeCloseTo(1, 12);
      expect(swing(shank, bolt)).toBeCloseTo(0, 12);
    },
  );

  test("square to an upright shank is fore and aft where it is flat, and crosswise where it is upright", () => {
    expect(namedDirection("square-flat", point(0, 0, 1))).toEqual(point(1, 0, 0));
    expectClose(namedDirection("square-upright", point(0, 0, 1)), point(0, -1, 0), { abs: 1e-15 });
  });

  test("flat is level, and upright as upright as can be", () => {
    expect(namedDirection("square-flat", shank).z).toBeCloseTo(0, 12);
    expect(namedDirection("square-upright", shank).z).toBeCloseTo(Math.hypot(shank.x, shank.y), 12);
  });

  test.each([
    ["vertical", point(0, 0, 1)],
    ["fore-and-aft", point(1, 0, 0)],
    ["crosswise", point(0, 1, 0)],
  ] as const)("%s", (name, expected) => {
    expect(namedDirection(name, shank)).toEqual(expected);
    expect(swing(shank, expected)).toBeCloseTo(byDefinition(shank, expected), 12);
  });
});
