import { describe, expect, test } from "vitest";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Link, Pose, Side } from "../../src/kinematics/slots.ts";
import { type Blame, blameOf, blameOfSide, blamePart, blameWords } from "../../src/measures/blame.ts";

const asked = { input: 12, travel: -34 };

/** Two poses of which the second one's sides have these links to blame, each with a gap of its own. */
function posesWith(left: Link, right: Link): Float64Array {
  const poses = newPoses(2);
  const put = (at: number, link: Link, gap: number) => {
    poses[at + Side.Blame] = link;
    poses[at + Side.Gap] = link === Link.None ? 0 : gap;
    poses[at + Side.Input] = asked.input;
    poses[at + Side.Travel] = asked.travel;
  };
  put(Pose.Stride + Pose.Left, left, -5);
  put(Pose.Stride + Pose.Right, right, 7);
  return poses;
}

describe("what is in the way in a pose", () => {
  test.each([
    [Link.Upright, "upright"],
    [Link.TieRod, "tie rod"],
    [Link.Travel, "travel"],
    [Link.CentreLink, "centre link"],
  ] as const)("of kind %d is the %s, with its gap and what was asked for", (kind, link) => {
    const poses = posesWith(kind, kind);
    expect(blameOfSide(poses, Pose.Stride + Pose.Left)).toEqual({ wheel: "left", link, gap: -5, ...asked });
    expect(blameOfSide(poses, Pose.Stride + Pose.Right)).toEqual({ wheel: "right", link, gap: 7, ...asked });
  });

  test("is told of the left first, of the right where the left closes, and of neither where both do", () => {
    const told = (left: Link, right: Link) => blameOf(posesWith(left, right), Pose.Stride);
    expect(told(Link.TieRod, Link.Upright)).toMatchObject({ wheel: "left", link: "tie rod" });
    expect(told(Link.None, Link.Upright)).toMatchObject({ wheel: "right", link: "upright" });
    expect(told(Link.None, Link.None)).toBeNull();
    expect(blameOf(posesWith(Link.TieRod, Link.TieRod), 0)).toBeNull();
  });
});

const blame = (link: Blame["link"], wheel: Blame["wheel"], gap: number): Blame => ({ link, wheel, gap, ...asked });

test.each([
  [blame("tie rod", "right", -8), "right tie rod is 8 mm too short", "front.right.tie-rod"],
  [blame("tie rod", "left", 8), "left tie rod is 8 mm too long", "front.left.tie-rod"],
  [
    blame("upright", "left", -2),
    "left upright, joint to joint, is 2 mm too short for the parts that carry it",
    "front.left",
  ],
  [
    blame("upright", "right", 2),
    "right upright, joint to joint, is 2 mm too long for the parts that carry it",
    "front.right",
  ],
  [blame("travel", "left", 30), "left wheel stops 30 mm short of going that far up", "front.left.wheel"],
  [blame("travel", "right", -30), "right wheel stops 30 mm short of going that far down", "front.right.wheel"],
  [blame("centre link", "left", -1), "steering's centre link is 1 mm too short", "steering.relay"],
  [blame("centre link", "left", 1), "steering's centre link is 1 mm too long", "steering.relay"],
] as const)("%j: %s, at %s", (each, words, part) => {
  expect(blameWords(each, (mm) => `${mm} mm`)).toBe(words);
  expect(blamePart(each).join(".")).toBe(part);
});
