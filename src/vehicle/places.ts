/** A place in a corner's own frame, mm: ahead, out, up. */
export type Place = readonly [ahead: number, out: number, up: number];

/** Reads a point of a corner by its path below it, such as "lower-arm.joint". */
export type PlaceAt = (path: string) => Place;

/** Joints closer than this are one and the same, mm: no two joints can be built so near. */
export const samePlace = 1;

/** Distance between two places, mm. */
export function distance(a: Place, b: Place): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
}

/**
 * Distance of p from the line through a and b, mm: |(p − a) × (b − a)| / |b − a|.
 * Where a and b coincide there is no line, and it is the distance from a.
 */
export function distanceFromLine(p: Place, a: Place, b: Place): number {
  const length = distance(a, b);
  if (length === 0) return distance(p, a);
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [p[0] - a[0], p[1] - a[1], p[2] - a[2]];
  return Math.hypot(vy * uz - vz * uy, vz * ux - vx * uz, vx * uy - vy * ux) / length;
}
