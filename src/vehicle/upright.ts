import type { Place } from "./places.ts";

/**
 * An upright as it lies on the bench, with the line through its two joints, the king-pin line, held upright and the
 * spindle pointing straight out. Lengths mm, angle rad.
 */
export interface Upright {
  /** From the lower joint's centre to the upper one's. */
  readonly jointToJoint: number;
  /** Where the spindle's line passes the king-pin line: above the lower joint, along that line. */
  readonly spindleUp: number;
  /** How far the spindle leans down from square to the king-pin line: inclination and camber together, as hung without toe and caster. */
  readonly spindleLean: number;
  /** How far the spindle's line passes ahead of the king-pin line. */
  readonly spindleAhead: number;
  /** From there along the spindle to the middle of the wheel's width. */
  readonly wheelOut: number;
  /** The tie-rod hole: behind and inboard of the king-pin line, and above the lower joint along it. */
  readonly tabBack: number;
  readonly tabIn: number;
  readonly tabUp: number;
}

/** How an upright is to stand on the car; signs as a car file has them. */
export interface Hang {
  /** Where its lower joint stays. */
  readonly lower: Place;
  readonly camber: number;
  readonly caster: number;
  readonly toe: number;
}

/** The places of an upright that hangs on the car, in its corner's frame, mm, and the inclination that it then has, rad. */
export interface Hung {
  readonly lower: Place;
  readonly upper: Place;
  readonly wheelCenter: Place;
  readonly tab: Place;
  readonly inclination: number;
}

type Vector = Place;

const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const less = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** a + s u + t v + r w. */
function along(a: Vector, s: number, u: Vector, t: number, v: Vector, r: number, w: Vector): Vector {
  const at = (i: 0 | 1 | 2) => a[i] + s * u[i] + t * v[i] + r * w[i];
  return [at(0), at(1), at(2)];
}

/** The way the spindle points in a corner (ahead, out, up): camber is its lean from level, toe its turn toward the front. */
function spindleOf({ camber, toe }: Pick<Hang, "camber" | "toe">): Vector {
  return [Math.sin(toe) * Math.cos(camber), Math.cos(toe) * Math.cos(camber), -Math.sin(camber)];
}

/** The upright's own directions: up along the king-pin line, out (square to it, where the spindle points), and ahead. */
function frameOf(up: Vector, spindle: Vector, lean: number): { readonly out: Vector; readonly ahead: Vector } {
  const none: Vector = [0, 0, 0];
  const share = 1 / Math.cos(lean);
  const out = along(none, share, spindle, share * Math.sin(lean), up, 0, none);
  return { out, ahead: cross(out, up) };
}

/**
 * An upright hung at a wanted camber, caster and toe, its lower joint where it was; null where no way to hold it has them.
 *
 * Camber and toe give the spindle's direction a. With tan of caster p and of inclination q, the king-pin line points
 * along k = (−p, −q, 1)/n, n² = 1 + p² + q², and the spindle leans from square to it by λ: k·a = −sin λ. Squared, with
 * A = a_z − p a_x:  (a_y² − sin²λ) q² − 2 A a_y q + A² − (1 + p²) sin²λ = 0,  and of its two roots
 * q = (A a_y + sin λ √(A² + (1 + p²)(a_y² − sin²λ))) / (a_y² − sin²λ)  has the sign right. Elementary geometry.
 */
export function hung(upright: Upright, hang: Hang): Hung | null {
  const { lower, caster } = hang;
  const a = spindleOf(hang);
  const lean = Math.sin(upright.spindleLean);
  const p = Math.tan(caster);
  const A = a[2] - p * a[0];
  const square = a[1] * a[1] - lean * lean;
  const under = A * A + (1 + p * p) * square;
  if (!(square > 0) || !(under >= 0)) return null;
  const q = (A * a[1] + lean * Math.sqrt(under)) / square;
  const n = Math.hypot(1, p, q);
  const up: Vector = [-p / n, -q / n, 1 / n];
  const { out, ahead } = frameOf(up, a, upright.spindleLean);
  const none: Vector = [0, 0, 0];
  return {
    lower,
    upper: along(lower, upright.jointToJoint, up, 0, none, 0, none),
    wheelCenter: along(lower, upright.spindleUp, up, upright.spindleAhead, ahead, upright.wheelOut, a),
    tab: along(lower, upright.tabUp, up, -upright.tabBack, ahead, -upright.tabIn, out),
    inclination: Math.atan(q),
  };
}

/** An upright as it would lie on the bench, from where its places are on the car; its two joints must be apart. */
export function uprightOf(
  { lower, upper, wheelCenter, tab }: Omit<Hung, "inclination">,
  hang: Pick<Hang, "camber" | "toe">,
): Upright {
  const line = less(upper, lower);
  const jointToJoint = Math.hypot(...line);
  const none: Vector = [0, 0, 0];
  const up = along(none, 1 / jointToJoint, line, 0, none, 0, none);
  const a = spindleOf(hang);
  const spindleLean = Math.asin(Math.max(-1, Math.min(1, -dot(up, a))));
  const { out, ahead } = frameOf(up, a, spindleLean);
  const [hub, hole] = [less(wheelCenter, lower), less(tab, lower)];
  const wheelOut = dot(hub, out) / Math.cos(spindleLean);
  return {
    jointToJoint,
    spindleUp: dot(hub, up) + wheelOut * Math.sin(spindleLean),
    spindleLean,
    spindleAhead: dot(hub, ahead),
    wheelOut,
    tabBack: -dot(hole, ahead),
    tabIn: -dot(hole, out),
    tabUp: dot(hole, up),
  };
}
