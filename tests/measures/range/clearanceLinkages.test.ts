import { expect, test } from "vitest";
import type { Point } from "../../../src/kinematics/drawn.ts";
import { Side } from "../../../src/kinematics/slots.ts";
import type { Ring } from "../../../src/measures/range/distance.ts";
import { minus, plus, point } from "../../oracles/vectors.ts";
import { preset } from "../../vehicle/cars.ts";
import { studied } from "../carTexts.ts";
import { apart, armCarrier, type Bar, carrier, expectAll, fromRing, rod, slot } from "./pairs.ts";

test("a strut goes with the upright, and its arm on its own pivots", () => {
  const study = studied(`${preset("strut-hatchback-corners")}
tubes:
  both:
    tie-rod: 20
    lower-arm: 30
    strut: 50
    frame: { sill: { from: { ahead: -400, out: 250, up: 300 }, to: { ahead: 300, out: 250, up: 330 }, diameter: 40 } }
shock: { both: { top: { ahead: -80, out: 480, up: 700 }, foot: { ahead: -60, out: 600, up: 300 }, on: upright, diameter: 60 } }
`);
  const [front, rear, joint] = [point(40, 290, 240), point(-240, 300, 245), point(10, 610, 225)];
  const sill: readonly Bar[] = [[point(-400, 250, 300), point(300, 250, 330), 40]];
  const wall = 290 - 177.5;
  const tyre: Ring = { inner: 177.5, outer: 290, half: 92.5, round: wall / 4 };
  const rim: Ring = { inner: 177.5, outer: 177.5, half: 70, round: 0 };
  const drawn = Float64Array.from(study.pose(0, 0, 0));
  const marks = (poses: Float64Array, at: number) => {
    const centre = slot(poses, at + Side.WheelCenter);
    const [low, outer] = [slot(poses, at + Side.Lower), slot(poses, at + Side.TieRodOuter)];
    return [centre, low, outer, plus(centre, slot(poses, at + Side.Spin))] as const;
  };
  expectAll(study, "left", (pose, at) => {
    const low = slot(pose, at + Side.Lower);
    const carried = carrier(marks(drawn, at), marks(pose, at));
    expect(minus(carried(joint), low)).toSatisfy(({ x, y, z }: Point) => Math.hypot(x, y, z) < 1e-9);
    const bars: Readonly<Record<string, readonly Bar[]>> = {
      "tie-rod": rod(pose, at, 20),
      "lower-arm": [
        [front, low, 30],
        [rear, low, 30],
      ],
      strut: [[carried(point(12, 580, 380)), carried(point(-25, 535, 790)), 50]],
      shock: [[point(-80, 480, 700), carried(point(-60, 600, 300)), 60]],
      "frame-sill": sill,
    };
    const of = (name: string) => bars[name] ?? [];
    const pairs = [
      ["tie-rod", "lower-arm"],
      ["tie-rod", "strut"],
      ["tie-rod", "shock"],
      ["lower-arm", "shock"],
      ["tie-rod", "frame-sill"],
    ] as const;
    // The arm's rear pivot is 50 − 15 − 20 mm from the sill at most: it is bolted there.
    return Object.fromEntries([
      ...pairs.map(([a, b]) => [`${a}.${b}`, apart(of(a), of(b))] as const),
      ...["tie-rod", "lower-arm", "strut", "shock"].map(
        (each) => [`${each}.rim`, fromRing(of(each), rim, pose, at)] as const,
      ),
      ...Object.keys(bars).map((each) => [`${each}.tyre`, fromRing(of(each), tyre, pose, at)] as const),
    ]);
  });
});

test("two arms that trail swing about lines straight across the car", () => {
  const study = studied(`${preset("torsion-beam-steering-plate")}
tubes: { both: { lower-arm: 1.25, upper-arm: 1 } }
shock: { right: { top: { ahead: 2, out: 15, up: 24 }, foot: { ahead: 1, out: 19, up: 10 }, on: lower-arm, diameter: 2 } }
`);
  const mm = 25.4;
  const inches = (ahead: number, out: number, up: number): Point => point(ahead * mm, out * mm, up * mm);
  const tyre: Ring = { inner: 6 * mm, outer: 12 * mm, half: 3 * mm, round: (6 * mm) / 4 };
  const rim: Ring = { inner: 6 * mm, outer: 6 * mm, half: 2.25 * mm, round: 0 };
  const [lower, upper] = [inches(6, 17.5, 8.25), inches(6, 17.5, 14.125)];
  expectAll(study, "right", (pose, at) => {
    const [low, high] = [slot(pose, at + Side.Lower), slot(pose, at + Side.Upper)];
    const axis = [lower, plus(lower, point(0, 1, 0))] as const;
    const foot = armCarrier(axis, inches(0.2, 20.5, 7.75), low)(inches(1, 19, 10));
    const bars: Readonly<Record<string, readonly Bar[]>> = {
      "lower-arm": [[lower, low, 1.25 * mm]],
      "upper-arm": [[upper, high, mm]],
      shock: [[inches(2, 15, 24), foot, 2 * mm]],
    };
    const of = (name: string) => bars[name] ?? [];
    return Object.fromEntries([
      ["upper-arm.shock", apart(of("upper-arm"), of("shock"))] as const,
      ...Object.keys(bars).flatMap((each) => [
        [`${each}.rim`, fromRing(of(each), rim, pose, at)] as const,
        [`${each}.tyre`, fromRing(of(each), tyre, pose, at)] as const,
      ]),
    ]);
  });
});
