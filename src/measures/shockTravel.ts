import { Side } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Shock } from "../vehicle/sections/shock.ts";
import { sideAt } from "./points.ts";
import type { ShockIn, ShockPlace } from "./shock.ts";
import { placeOf } from "./span.ts";
import type { Study } from "./study.ts";

/** How a shock stands at an input (mm of rack or rad of column) and a travel, mm; null where its wheel does not close. */
export type ShockStands = (input: number, travel: number) => ShockPlace | null;

/** A shock of one wheel, asked by input and travel. */
export function standsOf(study: Study, wheel: Wheel, shock: ShockIn): ShockStands {
  const at = sideAt(wheel);
  return (input, travel) => {
    const poses = study.pose(input, travel, travel);
    return poses[at + Side.Blame] === 0 ? shock(poses, at) : null;
  };
}

/** Halvings of the travel in search of where a shock has a length: they leave less than a thousandth of a millimetre. */
const HALVINGS = 16;

/** How far a shock's end is looked for from ride height, mm: wheels go no further; and how far apart, so that no place is missed. */
const FAR = 600;
const STEP = 10;

/** Steering positions at which a shock's ends are looked for: both locks, and between them. */
const INPUTS = 9;

/**
 * The wheel travel nearest to ride height, up (1) or down (−1), at which a shock has a length, mm, beyond the file's travel
 * too; null where the linkage stops before. What is past the length at ride height already is looked for the other way.
 */
function travelAt(lengthAt: (travel: number) => number | null, length: number, way: 1 | -1): number | null {
  const over = (travel: number) => {
    const here = lengthAt(travel);
    return here === null ? null : here > length;
  };
  const first = over(0);
  // A shock gets shorter in bump: one that is longer than the length has to go up, and else down, to have it.
  const toward = first === (way === 1) ? way : -way;
  for (let near = 0; near < FAR; near += STEP) {
    const there = over(toward * (near + STEP));
    if (there === null) return null;
    if (there === first) continue;
    let [low, high] = [near, near + STEP];
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (low + high) / 2;
      if (over(toward * middle) === first) low = middle;
      else high = middle;
    }
    return (toward * (low + high)) / 2;
  }
  return null;
}

/**
 * The wheel travels at which a shock bottoms and tops out, mm, each at the steering position where it does so first, and
 * all that lies between them; null where the file does not say, or the linkage stops before.
 */
export function travelsOf(study: Study, shock: Shock, stands: ShockStands) {
  const { "free-length": free, stroke } = shock;
  const { left, right } = study.furthestInput;
  const inputs = { from: -right, to: left, rows: INPUTS };
  const first = (length: number, way: 1 | -1): number | null => {
    const found = Array.from({ length: INPUTS }, (_, i) => {
      const input = placeOf(inputs, i);
      return travelAt((travel) => stands(input, travel)?.length ?? null, length, way);
    }).filter((travel) => travel !== null);
    return found.length === 0 ? null : way * Math.min(...found.map((travel) => way * travel));
  };
  const bottoms = free === null || stroke === null ? null : first(free - stroke, 1);
  const topsOut = free === null ? null : first(free, -1);
  return { bottoms, topsOut, whole: bottoms === null || topsOut === null ? null : bottoms - topsOut };
}
