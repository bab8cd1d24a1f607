import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Pose, Side } from "../../src/kinematics/slots.ts";
import { contactY, contactZ } from "../../src/measures/contact.ts";
import { instantCentre, instantCentreFigures } from "../../src/measures/instantCentre.ts";
import { meetsFarAside, rollCentre, rollCentreFigures, rollCentreHeight } from "../../src/measures/rollCentre.ts";
import { expectClose } from "../close.ts";
import { alike, type Plan, planarArms } from "../oracles/known.ts";
import { point } from "../oracles/vectors.ts";
import { endOf, frontOf, mirrored, offsetCar, poseOf, setting } from "./cars.ts";
import { plainWheel, poseOfWheel } from "./wheel.ts";

const radius = setting.tireRadius;

/** A front end in one plane: the tie rod lies along the lower arm, so that the upright never steers. */
function planar(lower: readonly [Plan, Plan], upper: readonly [Plan, Plan]): Float64Array {
  const drawn = alike({
    arms: planarArms(lower, upper),
    inner: point(-100, ...lower[0]),
    outer: point(-100, ...lower[1]),
    wheelCenter: point(0, 750, 300),
    rack: 50,
    travel: 50,
  });
  return poseOf(frontOf(drawn), 0, 0);
}

describe("roll centre", () => {
  test("level parallel arms have it on the ground, and no instant centre", () => {
    const poses = planar(
      [
        [300, 200],
        [700, 200],
      ],
      [
        [300, 400],
        [700, 400],
      ],
    );
    // The wheel's height is brought within 1e-11 of 750 mm; over arms of 400 that slopes a line 750 mm long by 1.5e-8 mm.
    expectClose(rollCentre(poses, 0, 300), { y: 0, z: 0 }, { abs: 3e-8 });
    expect(instantCentre(poses, Pose.Left, 300)).toBeNull();
  });

  test("alike sides have it on the centreline, on the line from the contact to the instant centre", () => {
    const poses = planar(
      [
        [300, 250],
        [700, 200],
      ],
      [
        [350, 400],
        [650, 450],
      ],
    );
    const centre = instantCentre(poses, Pose.Left, 300);
    if (centre === null) throw new Error("these arms are not parallel");
    const out = contactY(poses, Pose.Left, 300);
    const height = (centre.up * out) / (out - centre.out);
    expectClose(rollCentre(poses, 0, 300), { y: 0, z: height }, { abs: 1e-9 });
  });

  test("its height counts from the ground that has come up with the wheels", () => {
    const poses = poseOf(frontOf(offsetCar), 0, 40);
    const centre = rollCentre(poses, 0, radius);
    const ground = (contactZ(poses, Pose.Left, radius) + contactZ(poses, Pose.Right, radius)) / 2;
    expectClose(rollCentreHeight(poses, 0, radius), (centre?.z ?? Number.NaN) - ground, { abs: 1e-9 });
    expect(ground).toBeGreaterThan(39);
  });

  test("where the lines are nearly parallel and meet farther aside than the track, its height is left out", () => {
    const height = rollCentreFigures.find(({ id }) => id === "rollCentreHeight");
    const end = endOf(offsetCar);
    const all = [-60, -30, 0, 30, 60, 70, 76].map((travel) => {
      const poses = poseOf(end.front, 0, travel);
      const apart = contactY(poses, Pose.Left, radius) + contactY(poses, Pose.Right, radius);
      const isFar = Math.abs(rollCentre(poses, 0, radius)?.y ?? 0) > apart;
      expect(meetsFarAside(poses, 0, radius)).toBe(isFar);
      expect(height?.read(poses, 0, end) === null, `at ${travel}`).toBe(isFar);
      return isFar;
    });
    // Level lines come with bump, and the unequal rods keep them from being alike.
    expect(all.slice(0, 4)).toEqual([false, false, false, false]);
    expect(all.at(-1)).toBe(true);
  });

  test("the height of a meeting far aside turns on a line's direction nine times as much as one on the centreline", () => {
    // Two lines through (±T/2, 0) that meet at (y, z); one is turned by a small angle: the law that the limit rests on.
    const moved = (T: number, y: number, z: number, by: number) => {
      const [left, right] = [Math.atan2(z, y - T / 2) + by, Math.atan2(z, y + T / 2)];
      const [a, b] = [Math.tan(left), Math.tan(right)];
      const meet = (a * (T / 2) + b * (T / 2)) / (a - b);
      return b * (meet + T / 2);
    };
    const rate = (T: number, y: number, z: number) => (moved(T, y, z, 1e-7) - moved(T, y, z, -1e-7)) / 2e-7;
    // The law leaves out the square of a line's slope, here at most 60/600; differences are good to far less.
    for (const z of [20, -60]) {
      expectClose(Math.abs(rate(1200, 0, z)), 1200 / 4, { rel: 1e-2 });
      expectClose(Math.abs(rate(1200, -1200, z)), (9 * 1200) / 4, { rel: 1e-2 });
    }
  });

  test("a mirrored car has it mirrored", () => {
    const [one, other] = [frontOf(offsetCar), frontOf(mirrored(offsetCar))];
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -70, max: 70, noNaN: true }),
        fc.double({ min: -70, max: 70, noNaN: true }),
        (rack, left, right) => {
          const here = rollCentre(poseOf(one, rack, left, right), 0, radius);
          const there = rollCentre(poseOf(other, -rack, right, left), 0, radius);
          expectClose(there && { y: -there.y, z: there.z }, here, { abs: 1e-6, rel: 1e-9 });
        },
      ),
    );
  });
});

/** Wheels whose contacts stand at these heights, each of which goes (out, up) at its contact as the wheels go up. */
function moving(left: readonly [z: number, out: number, up: number], right: typeof left): Float64Array {
  const poses = newPoses(1);
  for (const [at, [z, out, up]] of [[Pose.Left, left] as const, [Pose.Right, right] as const]) {
    const wheel = { ...plainWheel, wheelCenter: point(0, 650, 300 + z) };
    poses.set(poseOfWheel(wheel, at).subarray(at, at + Side.Stride), at);
    poses.set([0, out, up], at + Side.LowerRate);
  }
  return poses;
}

describe("lines that run alike", () => {
  const [height, offset] = ["rollCentreHeight", "rollCentreOffset"].map((id) =>
    rollCentreFigures.find((figure) => figure.id === id),
  );
  const end = { ...endOf(offsetCar), tireRadius: 300 };

  test.each([
    ["level", 1, 1, 0],
    ["level, however fast the wheels go", 1000, 0.001, 0],
    ["level, both fast", 1000, 1000, 0],
    ["level, both slow", 0.001, 0.001, 0],
    ["level but for the last bits", 1000, 1000, 1e-13],
  ])("%s and at one height are one line, with its place on the centreline", (_, left, right, slope) => {
    const poses = moving([40, left * slope, left], [40, 0, right]);
    // The slope over half a track of 650 mm is 6.5e-11 mm.
    expectClose(rollCentre(poses, 0, 300), { y: 0, z: 40 }, { abs: 1e-9 });
    expectClose(rollCentreHeight(poses, 0, 300), 0, { abs: 1e-9 });
    expect(meetsFarAside(poses, 0, 300)).toBe(false);
  });

  test("at heights that differ never meet, and then nothing is told", () => {
    const poses = moving([40, 0, 2], [50, 0, 0.5]);
    expect(rollCentre(poses, 0, 300)).toBeNull();
    expect(rollCentreHeight(poses, 0, 300)).toBeNull();
    expect(meetsFarAside(poses, 0, 300)).toBe(false);
    expect([height?.read(poses, 0, end), offset?.read(poses, 0, end)]).toEqual([null, null]);
    for (const figure of instantCentreFigures) expect(figure.read(poses, Pose.Left, end), figure.id).toBeNull();
  });

  test.each([1, 0.001, 1000])(
    "but for a hundred-millionth meet where their slopes say, far aside, at speed %d",
    (speed) => {
      // The left line rises outward by 1e-8 of its run and starts 0.001 mm lower: z = 40 − 0.001 + 1e-8 (y − 650).
      const poses = moving([40 - 0.001, -2e-8 * speed, 2 * speed], [40, 0, 3 * speed]);
      expectClose(rollCentre(poses, 0, 300), { y: 650 + 1e5, z: 40 }, { abs: 1, rel: 1e-6 });
      expect(meetsFarAside(poses, 0, 300)).toBe(true);
    },
  );
});
