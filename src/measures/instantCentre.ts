import { Side } from "../kinematics/slots.ts";
import { contactY, contactZ } from "./contact.ts";
import type { WheelFigure } from "./figure.ts";
import { contactRateOut, contactRateUp } from "./frontView.ts";

/** Slower turning than this, rad per mm of travel, puts the centre more than 100 km away: the arms are parallel. */
const STILL = 1e-8;

/** A place seen from the front, mm: outboard of the centreline on the corner's own side, above the drawn ground. */
export interface FrontViewPlace {
  readonly out: number;
  readonly up: number;
}

/**
 * Front-view instant centre of one wheel's upright: the place in the cross-section through the contact point C about
 * which the upright turns, seen from the front. Null when it does not turn.
 *
 * With v the velocity of the upright at C and ω its angular velocity, v_y = ω_x (z − C_z) and v_z = −ω_x (y − C_y) at
 * the place (y, z) that stands still; so it lies on the line through C normal to v (Reimpell's construction from the
 * arms, for arms on axes that run fore and aft).
 */
export function instantCentre(poses: Float64Array, at: number, radius: number): FrontViewPlace | null {
  const turn = poses[at + Side.Turn];
  if (Math.abs(turn) < STILL) return null;
  return {
    out: contactY(poses, at, radius) - contactRateUp(poses, at, radius) / turn,
    up: contactZ(poses, at, radius) + contactRateOut(poses, at, radius) / turn,
  };
}

export const instantCentreFigures: readonly WheelFigure[] = [
  {
    of: "wheel",
    id: "instantCentreOut",
    kind: "length",
    label: "Instant centre, out",
    sign: "on the wheel's own side positive",
    explanation:
      "Where the wheel swings about, seen from the front, from the centreline. Bump steer is least when the tie rod aims at it.",
    read: (poses, at, end) => instantCentre(poses, at, end.tireRadius)?.out ?? null,
  },
  {
    of: "wheel",
    id: "instantCentreUp",
    kind: "length",
    label: "Instant centre, up",
    sign: "above the ground at ride height positive",
    explanation:
      "Where the wheel swings about, seen from the front, above the ground. Bump steer is least when the tie rod aims at it.",
    read: (poses, at, end) => instantCentre(poses, at, end.tireRadius)?.up ?? null,
  },
];
