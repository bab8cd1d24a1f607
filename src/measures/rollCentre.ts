import { Pose } from "../kinematics/slots.ts";
import { contactY, contactZ } from "./contact.ts";
import type { PoseFigure } from "./figure.ts";
import { contactRateOut, contactRateUp } from "./frontView.ts";

/** Lines whose directions differ by less than this, rad, are parallel; nearer than this, mm, they are one line. */
const PARALLEL = 1e-12;
const ONE_LINE = 1e-6;

/** Seen from the front, mm, in the vehicle frame: y to the driver's left of the centreline, z above the drawn ground. */
export interface RollCentre {
  readonly y: number;
  readonly z: number;
}

/**
 * Kinematic roll centre of a pose: the lines through the contact points, each normal to the velocity of the upright's
 * material point there, meet at it (form as in Reimpell, The Automotive Chassis). Null when they do not meet. When both
 * are one line, as with level parallel arms, it is the place of that line on the centreline.
 *
 * Left: v_y (y − C_y) + v_z (z − C_z) = 0; the right line likewise, its y and v_y turned round.
 */
export function rollCentre(poses: Float64Array, at: number, radius: number): RollCentre | null {
  const left = at + Pose.Left;
  const right = at + Pose.Right;
  const leftY = contactRateOut(poses, left, radius);
  const leftZ = contactRateUp(poses, left, radius);
  const rightY = -contactRateOut(poses, right, radius);
  const rightZ = contactRateUp(poses, right, radius);
  const leftAcross = leftY * contactY(poses, left, radius) + leftZ * contactZ(poses, left, radius);
  const rightAcross = -rightY * contactY(poses, right, radius) + rightZ * contactZ(poses, right, radius);
  const cross = leftY * rightZ - leftZ * rightY;
  const leftSize = Math.sqrt(leftY * leftY + leftZ * leftZ);
  const rightSize = Math.sqrt(rightY * rightY + rightZ * rightZ);
  if (Math.abs(cross) > PARALLEL * leftSize * rightSize) {
    return {
      y: (leftAcross * rightZ - rightAcross * leftZ) / cross,
      z: (leftY * rightAcross - rightY * leftAcross) / cross,
    };
  }
  const apart = leftAcross / leftZ - rightAcross / rightZ;
  return Math.abs(apart) < ONE_LINE ? { y: 0, z: (leftAcross / leftZ + rightAcross / rightZ) / 2 } : null;
}

/** Height of the roll centre above the ground midway between the contact points, mm. */
export function rollCentreHeight(poses: Float64Array, at: number, radius: number): number | null {
  const centre = rollCentre(poses, at, radius);
  if (centre === null) return null;
  const ground = (contactZ(poses, at + Pose.Left, radius) + contactZ(poses, at + Pose.Right, radius)) / 2;
  return centre.z - ground;
}

/**
 * True where the lines of both sides are so nearly parallel that the height of their meeting says nothing: they meet farther
 * aside than the contact points are apart. With T from contact to contact on level ground and the meeting y aside, turning
 * one line by a small δ moves its height by δ (|y| + T/2)² / T, whatever the height is: δ T / 4 on the centreline, nine times
 * that at y = T, and without limit beyond. A slope that is known to 1/16 in over an arm of 16 in then moves the height by
 * half an inch on a track of 4 ft.
 */
export function meetsFarAside(poses: Float64Array, at: number, radius: number): boolean {
  const centre = rollCentre(poses, at, radius);
  const apart = contactY(poses, at + Pose.Left, radius) + contactY(poses, at + Pose.Right, radius);
  return centre !== null && Math.abs(centre.y) > apart;
}

export const rollCentreFigures: readonly PoseFigure[] = [
  {
    of: "pose",
    id: "rollCentreHeight",
    kind: "length",
    label: "Roll centre height",
    sign: "above the ground positive",
    explanation:
      "The height about which the body rolls at the front: the lower, the more it leans in a corner. Where the lines of both sides, from contact to instant centre, run nearly parallel and meet farther aside than the track is wide, it says nothing and is left out.",
    read: (poses, at, end) =>
      meetsFarAside(poses, at, end.tireRadius) ? null : rollCentreHeight(poses, at, end.tireRadius),
  },
  {
    of: "pose",
    id: "rollCentreOffset",
    kind: "length",
    label: "Roll centre off the middle",
    sign: "to the left positive",
    explanation:
      "How far to one side of the centreline the lines meet about which the body rolls. It wanders when the two wheels stand unlike, and runs far aside where the lines are nearly parallel.",
    read: (poses, at, end) => rollCentre(poses, at, end.tireRadius)?.y ?? null,
  },
];
