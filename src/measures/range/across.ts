import { Link, Side } from "../../kinematics/slots.ts";
import type { FrameTube } from "../../vehicle/sections/tubes.ts";
import { sideAt } from "../points.ts";
import type { Study } from "../study.ts";
import type { CornerBodies } from "./bodies.ts";

/** Parts that leave more than this between their centre lines across the car are not looked at: it is far more than a clearance, mm. */
const ACROSS = 100;

/** How near to the middle of the car, from its own side, anything of a corner comes that moves: as drawn, and the tie rod at both ends of the steering. */
function innermost(study: Study, bodies: CornerBodies): number {
  const drawn = bodies.parts.flatMap(({ tubes }) => tubes.flat()).map((path) => bodies.place(path).y);
  const at = sideAt(bodies.wheel);
  const eyes = [-study.furthestInput.right, study.furthestInput.left].flatMap((input) => {
    const pose = study.ridePose(input);
    return pose[at + Side.Blame] === Link.None ? [pose[at + Side.TieRodInner + 1]] : [];
  });
  return Math.min(bodies.place("tie-rod.inner").y, ...eyes, ...drawn);
}

/** The other side's tubes that could be met from here: they cross the centreline, or come as near to it as this side does. */
export function tubesAcross(study: Study, bodies: CornerBodies): readonly (readonly [string, FrameTube])[] {
  const other = bodies.wheel === "left" ? "right" : "left";
  const frame = [...(study.car.sections.tubes?.[other]?.frame ?? [])];
  if (frame.length === 0) return frame;
  const here = innermost(study, bodies);
  return frame.filter(([, { from, to }]) => {
    const there = Math.min(from.out, to.out);
    return there < 0 || there + here < ACROSS;
  });
}
