import { describe, expect, test } from "vitest";
import { Pose, Side } from "../../../src/kinematics/slots.ts";
import { bodiesOf } from "../../../src/measures/range/bodies.ts";
import { pairingsAt } from "../../../src/measures/range/clearance.ts";
import { point } from "../../oracles/vectors.ts";
import { preset } from "../../vehicle/cars.ts";
import { studied } from "../carTexts.ts";
import { apart, type Bar, rod } from "./pairs.ts";

describe("a tube of the other side's frame", () => {
  const tubes = (out: number, links: string) =>
    `\ntubes: { both: { ${links} }, left: { frame: { post: { from: { ahead: -4, out: ${out}, up: 0 }, to: { ahead: -4, out: ${out}, up: 30 }, diameter: 0.5 } } } }\n`;
  const centre = preset("centre-take-off");
  // The right rod's eye is drawn 1 in from the middle and goes 1 in beyond it at the left lock.
  const closer = centre.replaceAll("out: 2.5, up", "out: 1, up");
  // The beam's pivot is 6 in beyond the middle; a rack's eyes stay on their own side.
  const beam = `${preset("twin-beam-relay").split("steering:")[0]}steering:
  mechanism: rack
  rack: { ahead: -8, up: 13.25, eye-to-eye: 24, travel: 2 }
`;

  test.each([
    ["a tie rod at lock", closer, "tie-rod: 3/4", 0.5, true],
    ["a tie rod's eye, at lock half an inch from the middle", centre, "tie-rod: 3/4", 3.4, true],
    ["no tie rod's eye", centre, "tie-rod: 3/4", 3.5, false],
    ["a beam's pivot", beam, "tie-rod: 3/4, beam: 2", 9.9, true],
    ["no beam's pivot", beam, "tie-rod: 3/4, beam: 2", 10, false],
    ["nothing, and yet it crosses the middle itself", preset("widened-offset-rack"), "tie-rod: 3/4", -0.1, true],
    ["nothing", preset("balanced-two-seater"), "tie-rod: 3/4", 0.1, false],
  ])("is looked at where %s comes within 100 mm of it across the car", (_, text, links, out, looked) => {
    const study = studied(text + tubes(out, links));
    const pairs = pairingsAt(study, bodiesOf(study, "right"));
    expect(pairs.some(({ id }) => id === "tie-rod.frame-post-of-the-other-side")).toBe(looked);
  });

  test("is looked at from the left as it is from the right", () => {
    const mirrored = (out: number) => tubes(out, "tie-rod: 3/4").replace("left: { frame", "right: { frame");
    for (const [text, out, looked] of [
      [closer, 0.5, true],
      [centre, 3.4, true],
      [centre, 3.5, false],
    ] as const) {
      const study = studied(text + mirrored(out));
      const pairs = pairingsAt(study, bodiesOf(study, "left"));
      expect(pairs.some(({ id }) => id === "tie-rod.frame-post-of-the-other-side")).toBe(looked);
    }
  });

  test("is looked at from where a tie rod is drawn where it does not reach its locks", () => {
    const study = studied(centre.replace("travel: 2\n", "travel: 9\n") + tubes(1, "tie-rod: 3/4"));
    expect(study.pose(9 * 25.4, 0, 0)[Pose.Right + Side.Blame]).not.toBe(0);
    expect(study.pose(-9 * 25.4, 0, 0)[Pose.Right + Side.Blame]).not.toBe(0);
    const pairs = pairingsAt(study, bodiesOf(study, "right"));
    expect(pairs.some(({ id }) => id === "tie-rod.frame-post-of-the-other-side")).toBe(true);
  });

  test("is as near to a tie rod that crosses the middle only at lock as the file's numbers put it", () => {
    const study = studied(closer + tubes(0.5, "tie-rod: 3/4"));
    const pair = pairingsAt(study, bodiesOf(study, "right")).find(({ id }) => id.startsWith("tie-rod.frame-post"));
    const inch = 25.4;
    const post: Bar = [point(-4 * inch, -inch / 2, 0), point(-4 * inch, -inch / 2, 30 * inch), inch / 2];
    const poses = [0, 2 * inch].map((rack) => Float64Array.from(study.pose(rack, 0, 0)));
    const [middle, lock] = poses.map((pose) => Number(pair?.read(pose, Pose.Right)));
    expect(lock).toBeCloseTo(apart(rod(poses[1], Pose.Right, 0.75 * inch), [post]), 6);
    expect(lock).toBeLessThan(middle);
  });
});
