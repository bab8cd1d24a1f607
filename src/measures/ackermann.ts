/** While the outer wheel has turned less than this, the shares of the ideal say nothing. */
export const LEAST_OUTER = (2 * Math.PI) / 180;

/** Steers are known to about this, rad: an ideal that differs from parallel steer by less has no share to speak of. */
const NO_DIFFERENCE = 1e-9;

/**
 * Ackermann's condition, cot(outer) − cot(inner) = w/l, solved for the inner wheel: with it both wheels roll about one
 * centre on the rear axle's line. Standard; see Jazar, Vehicle Dynamics, ch. 7, and Gillespie, Fundamentals of Vehicle
 * Dynamics, ch. 6. In (0, π) for outer in (0, π); outer rad, toward the turn positive; w, the lateral distance between
 * the steering axes, and l, the wheelbase, in one unit.
 */
export function idealInner(outer: number, w: number, l: number): number {
  return Math.atan2(1, 1 / Math.tan(outer) - w / l);
}

/** The same condition solved for the outer wheel, rad: the inverse of idealInner. */
export function idealOuter(inner: number, w: number, l: number): number {
  return Math.atan2(1, 1 / Math.tan(inner) + w / l);
}

/** The inner wheel's turn as a percentage of its ideal; null while outer is under 2 degrees. */
export function percentOfIdealInner(inner: number, outer: number, w: number, l: number): number | null {
  return outer < LEAST_OUTER ? null : (inner / idealInner(outer, w, l)) * 100;
}

/**
 * Ackermann percentage, referred to the ideal inner angle of the outer wheel's angle: (inner − outer)/(ideal − outer) ×
 * 100. Parallel steer is 0, the full condition 100. Null while outer is under 2 degrees, and where both steering axes
 * meet the ground at one place: parallel steer is then the ideal itself. Other definitions in use (by the outer angle,
 * by cotangents) give values up to 8 points off for the same wheels.
 */
export function ackermann(inner: number, outer: number, w: number, l: number): number | null {
  const ideal = idealInner(outer, w, l) - outer;
  return outer < LEAST_OUTER || Math.abs(ideal) < NO_DIFFERENCE ? null : ((inner - outer) / ideal) * 100;
}
