import { inv, type Matrix, matrix, multiply, rotationMatrix, transpose } from "mathjs";
import { describe, expect, test } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import { Pose, Side } from "../../../src/kinematics/slots.ts";
import { bodiesOf } from "../../../src/measures/range/bodies.ts";
import { type RodEndInPlace, rodEndsAt, swing } from "../../../src/measures/range/rodEnds.ts";
import type { Study } from "../../../src/measures/study.ts";
import { expectClose } from "../../close.ts";
import { cross, dot, minus, point, radians, unit } from "../../oracles/vectors.ts";
import { preset } from "../../vehicle/cars.ts";
import { studied } from "../carTexts.ts";

/**
 * Rod-end angles against rotation matrices from a general mathematics library: the turn of a body from its drawn place is
 * the matrix that takes three of its drawn directions to where a solved pose has them, found by inverting a matrix.
 */
const columns = (...all: readonly Point[]): Matrix => transpose(matrix(all.map(({ x, y, z }) => [x, y, z])));

const turnOf = (before: readonly Point[], after: readonly Point[]): Matrix =>
  multiply(columns(...after), inv(columns(...before)));

function turned(by: Matrix, p: Point): Point {
  const [x, y, z] = multiply(by, [p.x, p.y, p.z]).toArray() as number[];
  return point(x, y, z);
}

const same = matrix([
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
]);

const slot = (poses: Float64Array, at: number): Point => point(poses[at], poses[at + 1], poses[at + 2]);

/** Swing by its definition: the angle between the shank and the plane square to the bolt. */
const byDefinition = (shank: Point, bolt: Point): number =>
  Math.asin(Math.min(1, Math.abs(dot(unit(shank), unit(bolt)))));

/** How each body of the left corner has turned in a pose, by the library. */
function turnsIn(study: Study, poses: Float64Array): Readonly<Record<string, Matrix>> {
  const drawn = Float64Array.from(study.pose(study.straightAhead, 0, 0));
  const marks = [Side.Lower, Side.TieRodOuter, Side.WheelCenter, Side.Spin];
  const spans = (of: Float64Array) => {
    const [lower, outer, wheel, spin] = marks.map((at) => slot(of, Pose.Left + at));
    return [minus(outer, lower), minus(wheel, lower), spin];
  };
  const { place } = bodiesOf(study, "left");
  const arm = (pivots: readonly [string, string], end: Side.Lower | Side.Upper) => {
    const [a, b] = pivots.map(place);
    const span = (joint: Point) => [minus(joint, a), minus(joint, b), cross(minus(joint, a), minus(joint, b))];
    return turnOf(span(slot(drawn, Pose.Left + end)), span(slot(poses, Pose.Left + end)));
  };
  const { linkage, mechanism } = study.car.form;
  const column = poses[Pose.Left + Side.Input];
  // The plate's column leans back by 30 degrees from upright in that car, top rearward.
  const plate = rotationMatrix(column, matrix([-Math.sin(radians(60)), 0, Math.cos(radians(60))]));
  // A centre link with its pitman's shaft upright stays level: it turns about the vertical as the line between its eyes does.
  const eyes = (of: Float64Array) => {
    const [left, right] = [slot(of, Pose.Left + Side.TieRodInner), slot(of, Pose.Right + Side.TieRodInner)];
    return minus(point(right.x, -right.y, right.z), left);
  };
  const flat = (a: Point) => Math.atan2(a.y, a.x);
  const link = rotationMatrix(flat(eyes(poses)) - flat(eyes(drawn)), matrix([0, 0, 1]));
  return {
    frame: same,
    upright: turnOf(spans(drawn), spans(poses)),
    steering: mechanism === "steering-plate" ? plate : mechanism === "relay" ? link : same,
    ...(linkage === "double-arm"
      ? {
          "lower-arm": arm(["lower-arm.front", "lower-arm.rear"], Side.Lower),
          "upper-arm": arm(["upper-arm.front", "upper-arm.rear"], Side.Upper),
        }
      : {}),
    ...(linkage === "strut" ? { "lower-arm": arm(["lower-arm.front", "lower-arm.rear"], Side.Lower) } : {}),
    ...(linkage === "pivoting-beam" ? { beam: arm(["beam.pivot", "beam.brace"], Side.Lower) } : {}),
  };
}

/** The swing by the library's matrices: the bolt is turned with its body, the shank with its own. */
function oracle(end: RodEndInPlace, turns: Readonly<Record<string, Matrix>>, poses: Float64Array): number {
  const carrier = end.end["bolt-on"] ?? end.joint.boltOn;
  const holder = carrier === end.joint.boltOn ? end.joint.shankOn : end.joint.boltOn;
  const rod = minus(slot(poses, Pose.Left + Side.TieRodOuter), slot(poses, Pose.Left + Side.TieRodInner));
  const shank = holder === "tie-rod" ? rod : turned(turns[holder], end.shank);
  return byDefinition(shank, turned(turns[carrier], end.bolt));
}

const tie =
  "tie-rod: { outer: { bolt: vertical, angle: 20 }, inner: { bolt: { ahead: 1, out: 0.2, up: 0.3 }, angle: 20 } }";
const cars: readonly (readonly [preset: string, ends: string])[] = [
  [
    "balanced-two-seater",
    `${tie}
    lower-arm: { joint: { bolt: vertical, angle: 30 }, front: { bolt: fore-and-aft, angle: 15 }, rear: { bolt: square-flat, angle: 15 } }
    upper-arm: { joint: { bolt: square-upright, bolt-on: upper-arm, angle: 30 } }`,
  ],
  [
    "strut-hatchback-corners",
    `${tie}
    lower-arm: { joint: { bolt: { ahead: 0.3, out: -0.2, up: 1 }, angle: 30 }, rear: { bolt: crosswise, bolt-on: lower-arm, angle: 15 } }`,
  ],
  [
    "twin-beam-relay",
    `tie-rod: { outer: { bolt: vertical, angle: 20 }, inner: { bolt: fore-and-aft, angle: 20 } }
    beam: { pivot: { bolt: fore-and-aft, angle: 20 }, brace: { bolt: vertical, angle: 20 } }`,
  ],
  ["torsion-beam-steering-plate", tie],
  ["fixed-kingpin-yard-kart", tie.replace("{ ahead: 1, out: 0.2, up: 0.3 }", "square-flat")],
];

/** The yard kart's column leans by 45 degrees: its plate has a test of its own below. */
const byMatrix = cars.filter(([name]) => name !== "fixed-kingpin-yard-kart");

/** How far both ways the steering is tried, mm of rack or rad of column. */
const reachOf = ({ inputKind, car }: Study) => (inputKind === "rack" ? 50 : car.form.mechanism === "relay" ? 6 : 0.55);

function withEnds(name: string, ends: string): Study {
  return studied(`${preset(name)}\nrod-ends:\n  both:\n    ${ends}\n`);
}

describe.each(byMatrix)("%s", (name, text) => {
  test("has every rod end that its file gives, each shank as drawn where the car is as drawn", () => {
    const study = withEnds(name, text);
    for (const [wheel, at] of [
      ["left", Pose.Left],
      ["right", Pose.Right],
    ] as const) {
      const ends = rodEndsAt(study, bodiesOf(study, wheel));
      expect(ends).toHaveLength(text.split("angle:").length - 1);
      const drawn = Float64Array.from(study.pose(study.straightAhead, 0, 0));
      for (const end of ends) expectClose(end.shankIn(drawn, at), end.shank, { abs: 1e-7 });
      expect(ends.map((end) => end.wheel)).toEqual(ends.map(() => wheel));
    }
  });

  test("on the right swings as it does on the left with the steering the other way: the car's sides are alike", () => {
    const study = withEnds(name, text);
    const reach = reachOf(study);
    const swings = (wheel: "left" | "right", input: number, travel: number) => {
      const poses = Float64Array.from(study.pose(input, travel, travel));
      const at = wheel === "left" ? Pose.Left : Pose.Right;
      return rodEndsAt(study, bodiesOf(study, wheel)).map((end) => swing(end.shankIn(poses, at), end.bolt));
    };
    for (const [input, travel] of [
      [reach, 0],
      [-0.4 * reach, 50],
      [0.7 * reach, -50],
    ] as const)
      expectClose(swings("right", -input, travel), swings("left", input, travel), { abs: 1e-9 });
  });

  test("its rod ends swing as the bodies' rotation matrices say, all over steering and travel", () => {
    const study = withEnds(name, text);
    const ends = rodEndsAt(study, bodiesOf(study, "left"));
    const reach = reachOf(study);
    for (const share of [-1, -0.4, 0, 0.6, 1]) {
      for (const travel of [-60, -20, 0, 30, 60]) {
        const poses = Float64Array.from(study.pose(share * reach, travel, travel));
        expect(poses[Side.Blame]).toBe(0);
        const turns = turnsIn(study, poses);
        for (const end of ends) {
          const ours = swing(end.shankIn(poses, Pose.Left), end.bolt);
          // asin loses half the digits near a right angle; nothing here swings so far that more than 1e-7 is lost.
          expect(Math.abs(ours - oracle(end, turns, poses))).toBeLessThan(1e-7);
        }
      }
    }
  });
});

test("a bolt on a king pin's upright goes round with it: the library's rotation about the pin", () => {
  const [, text] = cars[4];
  const study = studied(`${preset("fixed-kingpin-yard-kart")}\nrod-ends:\n  both:\n    ${text}\n`);
  const [outer] = rodEndsAt(study, bodiesOf(study, "left"));
  const drawn = Float64Array.from(study.pose(0, 0, 0));
  const [lower, upper] = [slot(drawn, Side.Lower), slot(drawn, Side.Upper)];
  const pin = unit(minus(upper, lower));
  const fromPin = (p: Point) => {
    const off = minus(p, lower);
    return minus(off, point(pin.x * dot(off, pin), pin.y * dot(off, pin), pin.z * dot(off, pin)));
  };
  for (const column of [-0.5, -0.2, 0.3, 0.55]) {
    const poses = study.pose(column, 0, 0);
    const [before, after] = [fromPin(slot(drawn, Side.TieRodOuter)), fromPin(slot(poses, Side.TieRodOuter))];
    const turn = Math.atan2(dot(cross(before, after), pin), dot(before, after));
    const bolt = turned(rotationMatrix(turn, matrix([pin.x, pin.y, pin.z])), point(0, 0, 1));
    const rod = minus(slot(poses, Side.TieRodOuter), slot(poses, Side.TieRodInner));
    expect(swing(outer.shankIn(poses, Pose.Left), outer.bolt)).toBeCloseTo(byDefinition(rod, bolt), 9);
  }
});

test("a centre link whose eyes are at one place is taken to slide: between arms alike it does nothing else", () => {
  const text = preset("twin-beam-relay").replace(
    /((?:left|right)-eye: \{ ahead: )"-7 7\/8", out: -5/g,
    "$1-8.5, out: 0",
  );
  const study = studied(`${text}rod-ends: { both: { tie-rod: { inner: { bolt: fore-and-aft, angle: 20 } } } }\n`);
  for (const [wheel, at] of [
    ["left", Pose.Left],
    ["right", Pose.Right],
  ] as const) {
    const [inner] = rodEndsAt(study, bodiesOf(study, wheel));
    for (const column of [-6, 3]) {
      const poses = Float64Array.from(study.pose(column, 30, 30));
      const rod = minus(slot(poses, at + Side.TieRodOuter), slot(poses, at + Side.TieRodInner));
      expect(swing(inner.shankIn(poses, at), inner.bolt)).toBeCloseTo(byDefinition(rod, point(1, 0, 0)), 9);
    }
  }
});
