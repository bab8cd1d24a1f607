import type { Places } from "./corner.ts";
import { cross, dot, minus, plus, point, times, unit, type Vector } from "./vectors.ts";

/**
 * What a wheel in a pose reads, worked out from its named places alone, in the corner's frame (y outboard): ISO 8855 signs, angles rad, lengths mm.
 * Heading h = spin x up for a spin axis that points to the driver's left; in the corner's frame the roles are the same on both sides.
 */
export interface Reading {
  readonly toe: number;
  readonly camber: number;
  readonly caster: number;
  readonly kpi: number;
  readonly scrubRadius: number;
  readonly trail: number;
  readonly contact: Vector;
}

/** `radius` is the loaded tyre's, mm; the ground moves with the wheel, as DEVELOPERS.md's glossary has scrub and trail. */
export function readingOf({ lower, upper, wheelCenter, spin }: Places, radius: number): Reading {
  const axis = minus(upper, lower);
  const up = point(0, 0, 1);
  const outward = unit(point(spin.x, spin.y, 0));
  const forward = cross(outward, up);
  const down = unit(minus(times(spin, spin.z), up));
  const contact = plus(wheelCenter, times(down, radius));
  const pierces = plus(lower, times(axis, (contact.z - lower.z) / axis.z));
  const patch = minus(contact, pierces);
  return {
    toe: Math.atan2(spin.x, spin.y),
    camber: -Math.asin(spin.z),
    caster: Math.atan2(-axis.x, axis.z),
    kpi: Math.atan2(-axis.y, axis.z),
    scrubRadius: dot(patch, outward),
    trail: -dot(patch, forward),
    contact,
  };
}
