import { expect, test } from "vitest";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Pose, Side } from "../../src/kinematics/slots.ts";
import type { FrontEnd } from "../../src/measures/frontEnd.ts";
import { toeChangeFigure } from "../../src/measures/toeChange.ts";
import { trackChangeFigure } from "../../src/measures/trackChange.ts";
import { plainWheel, poseOfWheel } from "./wheel.ts";

/** A front end of which nothing is known but how it stands at ride height, with one wheel that may not. */
function standing(blamed: number | null): FrontEnd {
  const ride = poseOfWheel(plainWheel, Pose.Left);
  ride.set(poseOfWheel(plainWheel, Pose.Right).subarray(Pose.Right), Pose.Right);
  if (blamed !== null) ride[blamed + Side.Blame] = Link.TieRod;
  return { suspended: true, tireRadius: 300, ridePose: () => ride } as unknown as FrontEnd;
}

test.each([
  ["left", Pose.Left],
  ["right", Pose.Right],
] as const)("a change from ride height is none where the %s wheel does not stand there", (_, at) => {
  const poses = newPoses(1);
  poses.set(poseOfWheel(plainWheel, at));
  for (const { read } of [toeChangeFigure, trackChangeFigure]) {
    expect(read(poses, at, standing(null))).toBe(0);
    expect(read(poses, at, standing(at))).toBeNull();
    expect(read(poses, at, standing(at === Pose.Left ? Pose.Right : Pose.Left))).toBe(0);
  }
});
