import type { Drawn, Linkage, Point } from "../../src/kinematics/drawn.ts";
import { Pose, Side } from "../../src/kinematics/slots.ts";

/** What no pose may change, by the drawing alone. Lengths mm, in the corner's own frame. */

/** A place of a solved side, by its name and where it stands in the buffer. */
const solvedPlaces = { lower: Side.Lower, upper: Side.Upper, tab: Side.TieRodOuter, wheel: Side.WheelCenter } as const;
type Solved = keyof typeof solvedPlaces;

/** From a solved place to another, or to a place on the body. */
export interface Kept {
  readonly name: string;
  readonly from: Solved;
  readonly to: Solved | Point;
  readonly long: number;
}

const far = (a: Point, b: Point): number => Math.hypot(a.x - b.x, a.y - b.y, a.z - b.z);
const outboard = ({ x, y, z }: Point): Point => ({ x, y: y + 100, z });

/** Both ends of the king pin as drawn, and what on the body each keeps its distance from. */
function heldOf(
  linkage: Linkage,
  wheel: "left" | "right",
): { lower: Point; upper: Point; to: readonly [Solved, Point][] } {
  switch (linkage.kind) {
    case "double-arm": {
      const p = linkage[wheel];
      return {
        lower: p.lowerJoint,
        upper: p.upperJoint,
        to: [
          ["lower", p.lowerFront],
          ["lower", p.lowerRear],
          ["upper", p.upperFront],
          ["upper", p.upperRear],
        ],
      };
    }
    case "trailing-arms": {
      const p = linkage[wheel];
      return {
        lower: p.lowerJoint,
        upper: p.upperJoint,
        to: [
          ["lower", p.lowerPivot],
          ["lower", outboard(p.lowerPivot)],
          ["upper", p.upperPivot],
          ["upper", outboard(p.upperPivot)],
        ],
      };
    }
    case "strut": {
      const p = linkage[wheel];
      return {
        lower: p.lowerJoint,
        upper: p.top,
        to: [
          ["lower", p.lowerFront],
          ["lower", p.lowerRear],
          ["upper", p.top],
        ],
      };
    }
    case "pivoting-beam": {
      const p = linkage[wheel];
      return {
        lower: p.lowerJoint,
        upper: p.upperJoint,
        to: [
          ["lower", p.beamFront],
          ["lower", p.beamRear],
          ["upper", p.beamFront],
          ["upper", p.beamRear],
        ],
      };
    }
    case "fixed-kingpin": {
      const p = linkage[wheel];
      return {
        lower: p.lowerJoint,
        upper: p.upperJoint,
        to: [
          ["lower", p.lowerJoint],
          ["upper", p.upperJoint],
        ],
      };
    }
  }
}

/** Every distance of one corner that a pose keeps, but for the tie rod's. */
export function keptOf({ linkage, ...corners }: Drawn, wheel: "left" | "right"): readonly Kept[] {
  const { tieRodOuter, wheelCenter } = corners[wheel];
  const { lower, upper, to } = heldOf(linkage, wheel);
  const drawn: Readonly<Record<Solved, Point>> = { lower, upper, tab: tieRodOuter, wheel: wheelCenter };
  const between = (from: Solved, other: Solved): Kept => ({
    name: `${from} to ${other}`,
    from,
    to: other,
    long: far(drawn[from], drawn[other]),
  });
  return [
    ...to.map(([from, place]): Kept => ({ name: `${from} to body`, from, to: place, long: far(drawn[from], place) })),
    between("lower", "tab"),
    between("lower", "wheel"),
    between("tab", "wheel"),
    // A strut's upright slides along its top mount.
    ...(linkage.kind === "strut"
      ? []
      : [between("lower", "upper"), between("upper", "tab"), between("upper", "wheel")]),
  ];
}

function place(poses: Float64Array, at: number): Point {
  return { x: poses[at] ?? Number.NaN, y: poses[at + 1] ?? Number.NaN, z: poses[at + 2] ?? Number.NaN };
}

/** How far a solved side is off a distance that it keeps, mm. */
export function offBy(poses: Float64Array, at: number, { from, to, long }: Kept): number {
  const other = typeof to === "string" ? place(poses, at + solvedPlaces[to]) : to;
  return far(place(poses, at + solvedPlaces[from]), other) - long;
}

/** The length of a solved side's tie rod, mm. */
export function rodOf(poses: Float64Array, at: number): number {
  return far(place(poses, at + Side.TieRodOuter), place(poses, at + Side.TieRodInner));
}

/** From the left inner eye to the right one, mm: every mechanism carries both on one part. */
export function eyeToEye(poses: Float64Array): number {
  const right = place(poses, Pose.Right + Side.TieRodInner);
  return far(place(poses, Pose.Left + Side.TieRodInner), { ...right, y: -right.y });
}
