import type { Point } from "./drawn.ts";
import { Link, Pose, Side } from "./slots.ts";

/**
 * The readable face of a pose buffer: named points in the vehicle's frame (ISO 8855: x forward, y to the driver's left,
 * z up; mm). Signs flip here and nowhere else.
 */
export interface SidePose {
  readonly closes: true;
  readonly travel: number;
  readonly lowerJoint: Point;
  readonly upperJoint: Point;
  readonly tieRodOuter: Point;
  readonly tieRodInner: Point;
  readonly wheelCenter: Point;
  /** Unit vector along the spin axis, to the driver's left on both sides. */
  readonly spin: Point;
  /** Unit vector along the steering axis, from the lower to the upper joint. */
  readonly axis: Point;
}

/** What could not be met: the link, and its length less the nearest or farthest distance it could have, mm. */
export interface DoesNotClose {
  readonly closes: false;
  readonly link: "upright" | "tie-rod" | "travel" | "centre-link";
  readonly gap: number;
}

/** One side of the pose that starts at `at`. */
export function readSide(poses: Float64Array, at: number, wheel: "left" | "right"): SidePose | DoesNotClose {
  const side = at + (wheel === "left" ? Pose.Left : Pose.Right);
  const blame = blameOf(poses, side);
  if (blame) return blame;
  const hand = wheel === "left" ? 1 : -1;
  const point = (slot: number): Point => ({
    x: poses[side + slot],
    y: hand * poses[side + slot + 1],
    z: poses[side + slot + 2],
  });
  return {
    closes: true,
    travel: poses[side + Side.Travel],
    lowerJoint: point(Side.Lower),
    upperJoint: point(Side.Upper),
    tieRodOuter: point(Side.TieRodOuter),
    tieRodInner: point(Side.TieRodInner),
    wheelCenter: point(Side.WheelCenter),
    spin: {
      x: hand * poses[side + Side.Spin],
      y: poses[side + Side.Spin + 1],
      z: hand * poses[side + Side.Spin + 2],
    },
    axis: point(Side.Axis),
  };
}

/** Why the side that starts at `side` does not close; null when it does. */
export function blameOf(poses: Float64Array, side: number): DoesNotClose | null {
  const link = LINKS[poses[side + Side.Blame]];
  return link ? { closes: false, link, gap: poses[side + Side.Gap] } : null;
}

const LINKS: Readonly<Record<number, DoesNotClose["link"]>> = {
  [Link.Upright]: "upright",
  [Link.TieRod]: "tie-rod",
  [Link.Travel]: "travel",
  [Link.CentreLink]: "centre-link",
};
