import { drawnSpin } from "../kinematics/upright.ts";
import type { Wheel } from "../vehicle/car.ts";
import { indexOf } from "../vehicle/quantities.ts";
import type { Body } from "../vehicle/sections/body.ts";
import type { Study } from "./study.ts";
import { turnCentre } from "./turnRadius.ts";

/** Curb to curb, mm: twice the turning radius at a lock, to the outer front tyre's contact (kerb circle in Reimpell). */
export function curbCircle(study: Study, lock: Wheel): number | null {
  const radius = study.locks[lock]?.turnRadius ?? null;
  return radius === null ? null : 2 * radius;
}

/**
 * Wall to wall, mm: twice the greatest distance from the turn's centre to the outer front tyre's contact or to the body's
 * corner, `ahead` of the front axle and `out` from the centreline on the outer side: √((l + ahead)² + (out + c)²), c the
 * centre's distance from the centreline. Null without `body` in the file. Form as in Reimpell and the Bosch handbook (quoted
 * from memory).
 */
export function wallCircle(study: Study, lock: Wheel): number | null {
  const { body } = study.car.sections;
  const row = study.locks[lock];
  if (body === null || row === null || row.turnRadius === null) return null;
  const centre = turnCentre(study.ridePose(row.input), 0, study.wheelbase);
  if (centre === null) return null;
  return 2 * Math.max(cornerRadius(study.wheelbase, body, centre), row.turnRadius);
}

/** How far a body's corner on the outer side is from the turn's centre, mm: see wallCircle. */
export function cornerRadius(wheelbase: number, body: Body, centre: number): number {
  return Math.hypot(wheelbase + body.ahead, body.out + Math.abs(centre));
}

const tyreWidth = indexOf("tire.width");

/**
 * Overall width at the front, mm, as drawn: from the outermost place of one tyre to that of the other. A tyre as a cylinder
 * of the loaded radius r and half width h about the spin axis a reaches h a_y + r √(1 − a_y²) beyond its centre. Null where
 * the file gives no tyre width.
 */
export function overallWidth(study: Study): number | null {
  const half = (study.car.numbers[tyreWidth] ?? 0) / 2;
  if (half === 0) return null;
  const reach = (wheel: Wheel) => {
    const corner = study.drawn[wheel];
    const across = drawnSpin(corner).y;
    return corner.wheelCenter.y + half * across + study.tireRadius * Math.sqrt(Math.max(1 - across * across, 0));
  };
  return reach("left") + reach("right");
}
