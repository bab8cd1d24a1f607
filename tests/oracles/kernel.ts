import { compile } from "../../src/kinematics/compile.ts";
import type { Drawn, Point } from "../../src/kinematics/drawn.ts";
import type { Front } from "../../src/kinematics/front.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Pose, Side } from "../../src/kinematics/slots.ts";
import { solve } from "../../src/kinematics/solve.ts";
import { type Places, type SideName, sides } from "./corner.ts";
import { point } from "./vectors.ts";

/** The kernel under test, read back in the words of the tests' own solutions. */

export function frontOf(drawn: Drawn): Front {
  const front = compile(drawn);
  if ("refused" in front) throw new Error(`refused: ${JSON.stringify(front)}`);
  return front;
}

/** One solved pose, the raw buffer. Both wheels travel alike unless `right` is given. */
export function solved(front: Front, input: number, left: number, right = left): Float64Array {
  const poses = newPoses(1);
  solve(front, input, left, right, poses, 0);
  return poses;
}

export const startOf = (side: SideName): number => (side === "left" ? Pose.Left : Pose.Right);

export function pointIn(poses: Float64Array, at: number): Point {
  return point(poses[at], poses[at + 1], poses[at + 2]);
}

/** The places of one side of a pose, or null when that side does not close. */
export function placesIn(poses: Float64Array, side: SideName): Places | null {
  const at = startOf(side);
  if (poses[at + Side.Blame] !== Link.None) return null;
  return {
    lower: pointIn(poses, at + Side.Lower),
    upper: pointIn(poses, at + Side.Upper),
    tieRodOuter: pointIn(poses, at + Side.TieRodOuter),
    tieRodInner: pointIn(poses, at + Side.TieRodInner),
    wheelCenter: pointIn(poses, at + Side.WheelCenter),
    spin: pointIn(poses, at + Side.Spin),
  };
}

/** The places of both sides of a pose that must close. */
export function placesAt(front: Front, input: number, travel: number): Record<SideName, Places> {
  const poses = solved(front, input, travel);
  const [left, right] = sides.map((side) => placesIn(poses, side));
  if (!left || !right) throw new Error(`does not close at rack ${input}, travel ${travel}`);
  return { left, right };
}
