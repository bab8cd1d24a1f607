import { Link, Pose, Side } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";

/**
 * What is in the way: the upright that cannot span its arms, a tie rod, the wheel's travel itself, or the centre link of
 * the steering.
 */
export type BlamedLink = "upright" | "tie rod" | "travel" | "centre link";

/** A place the front end cannot get to: which wheel's link is in the way there, and by how much. A value, never thrown. */
export interface Blame {
  readonly wheel: Wheel;
  readonly link: BlamedLink;
  /**
   * mm. The link's length less the nearest or farthest distance it could have: negative when it is too short. For
   * travel, how much further up (positive) or down (negative) the wheel was asked to go than it can.
   */
  readonly gap: number;
  /** What was asked for: mm of rack or rad of column. */
  readonly input: number;
  /** mm. */
  readonly travel: number;
}

const LINKS = {
  [Link.Upright]: "upright",
  [Link.TieRod]: "tie rod",
  [Link.Travel]: "travel",
  [Link.CentreLink]: "centre link",
} as const;

/** Why the side that starts at `at` does not close; null when it does. */
export function blameOfSide(poses: Float64Array, at: number): Blame | null {
  const link = poses[at + Side.Blame] as Link;
  if (link === Link.None) return null;
  return {
    wheel: at % Pose.Stride === Pose.Right ? "right" : "left",
    link: LINKS[link],
    gap: poses[at + Side.Gap],
    input: poses[at + Side.Input],
    travel: poses[at + Side.Travel],
  };
}

/** Why the pose that starts at `at` does not close, the left side asked first; null when both sides close. */
export function blameOf(poses: Float64Array, at: number): Blame | null {
  return blameOfSide(poses, at + Pose.Left) ?? blameOfSide(poses, at + Pose.Right);
}

const PARTS: Readonly<Record<BlamedLink, string>> = {
  upright: "",
  "tie rod": "tie-rod",
  travel: "wheel",
  "centre link": "relay",
};

/** Where the car file says most about what is in the way, as a path from its root. */
export function blamePart({ link, wheel }: Blame): readonly string[] {
  return link === "centre link" ? ["steering", PARTS[link]] : ["front", wheel, PARTS[link]].filter((key) => key !== "");
}

/**
 * What is in the way, in a builder's words without a full stop: "right tie rod is 5/16 in too short". `length` writes a
 * length in mm, unit included, as the reader likes it.
 */
export function blameWords(blame: Blame, length: (mm: number) => string): string {
  const amount = length(Math.abs(blame.gap));
  const wheel = blame.wheel;
  if (blame.link === "travel") {
    return `${wheel} wheel stops ${amount} short of going that far ${blame.gap > 0 ? "up" : "down"}`;
  }
  const wrong = blame.gap < 0 ? "too short" : "too long";
  if (blame.link === "centre link") return `steering's centre link is ${amount} ${wrong}`;
  if (blame.link === "tie rod") return `${wheel} tie rod is ${amount} ${wrong}`;
  return `${wheel} upright, joint to joint, is ${amount} ${wrong} for the parts that carry it`;
}
