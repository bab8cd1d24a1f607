import { Pose } from "../kinematics/slots.ts";
import type { Wheel } from "../vehicle/car.ts";
import { ackermann, idealInner, LEAST_OUTER, percentOfIdealInner } from "./ackermann.ts";
import { blameOf } from "./blame.ts";
import type { PoseFigure } from "./figure.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { steer } from "./steer.ts";
import { turnRadius } from "./turnRadius.ts";

/** Changes of steer that add up to less than this, rad, are rounding: the wheels stand at zero. */
const NO_TURN = 1e-10;

/** How a pair of wheels turns, measured from their zero. */
export interface Turning {
  readonly turn: Wheel | null;
  readonly inner: number | null;
  readonly outer: number | null;
  readonly idealInner: number | null;
  readonly percentOfIdealInner: number | null;
  readonly ackermann: number | null;
}

/** What is known of wheels that have not turned, or of which nothing is known. */
export const NOT_TURNING: Turning = {
  turn: null,
  inner: null,
  outer: null,
  idealInner: null,
  percentOfIdealInner: null,
  ackermann: null,
};

/**
 * The Ackermann measures of two changes of steer from zero, rad, both positive to the left. The turn is the sign of
 * their sum; inner and outer are positive toward it.
 */
export function turning(left: number, right: number, w: number, l: number): Turning {
  const both = left + right;
  if (Math.abs(both) < NO_TURN) return NOT_TURNING;
  const turn = both > 0 ? "left" : "right";
  const inner = both > 0 ? left : -right;
  const outer = both > 0 ? right : -left;
  return {
    turn,
    inner,
    outer,
    idealInner: outer < LEAST_OUTER ? null : idealInner(outer, w, l),
    percentOfIdealInner: percentOfIdealInner(inner, outer, w, l),
    ackermann: ackermann(inner, outer, w, l),
  };
}

/** The Ackermann measures of a solved pose, from the wheels' zero; all null without a zero or when it does not close. */
export function turningOf(end: FrontEnd, poses: Float64Array, at: number): Turning {
  if (end.zeroSteer === null || blameOf(poses, at) !== null) return NOT_TURNING;
  return turning(
    steer(poses, at + Pose.Left) - end.zeroSteer.left,
    steer(poses, at + Pose.Right) - end.zeroSteer.right,
    end.kingPinSpacing,
    end.wheelbase,
  );
}

/** Turning radius of a solved pose, mm; null while outer is under 2 degrees, where it says nothing. */
export function turnRadiusOf(end: FrontEnd, poses: Float64Array, at: number, way: Turning): number | null {
  if (way.turn === null || way.outer === null || way.outer < LEAST_OUTER) return null;
  return turnRadius(poses, at, way.turn, end.wheelbase, end.tireRadius);
}

/** How far the inner wheel falls short of its ideal, rad; negative where it turns more than that. */
export function shortOfIdeal(way: Turning): number | null {
  return way.idealInner === null || way.inner === null ? null : way.idealInner - way.inner;
}

export const turningFigures: readonly PoseFigure[] = [
  {
    of: "pose",
    id: "inner",
    kind: "angle",
    label: "Inner wheel's turn",
    sign: "toward the turn positive",
    explanation: "How far the wheel on the inside of the turn has turned from straight ahead.",
    read: (poses, at, end) => turningOf(end, poses, at).inner,
  },
  {
    of: "pose",
    id: "outer",
    kind: "angle",
    label: "Outer wheel's turn",
    sign: "toward the turn positive",
    explanation: "How far the wheel on the outside of the turn has turned from straight ahead.",
    read: (poses, at, end) => turningOf(end, poses, at).outer,
  },
  {
    of: "pose",
    id: "idealInner",
    kind: "angle",
    label: "Ideal inner turn",
    sign: "toward the turn positive",
    explanation: "How far the inner wheel should turn, so that both wheels roll about one centre without scrubbing.",
    read: (poses, at, end) => turningOf(end, poses, at).idealInner,
  },
  {
    of: "pose",
    id: "innerShortOfIdeal",
    kind: "angle",
    label: "Inner short of ideal",
    sign: "too little turn positive",
    explanation:
      "How many degrees the inner wheel lacks of its ideal turn. Lacking much, the wheels fight each other in slow, tight turns and the car pushes.",
    read: (poses, at, end) => shortOfIdeal(turningOf(end, poses, at)),
  },
  {
    of: "pose",
    id: "percentOfIdealInner",
    kind: "percent",
    label: "Share of ideal inner turn",
    sign: "",
    explanation: "The inner wheel's turn as a share of its ideal turn: 100 % is no scrubbing.",
    read: (poses, at, end) => turningOf(end, poses, at).percentOfIdealInner,
  },
  {
    of: "pose",
    id: "ackermann",
    kind: "percent",
    label: "Ackermann",
    sign: "inner turning more than outer positive",
    explanation:
      "Of the difference that the two wheels should have in this turn, how much they have: 0 % is parallel steer, 100 % no scrubbing. Taken at the outer wheel's angle.",
    read: (poses, at, end) => turningOf(end, poses, at).ackermann,
  },
  {
    of: "pose",
    id: "turnRadius",
    kind: "length",
    label: "Turning radius",
    sign: "",
    explanation:
      "From the middle of the turning circle to the outer front tyre's contact, rolling slowly without slip.",
    read: (poses, at, end) => turnRadiusOf(end, poses, at, turningOf(end, poses, at)),
  },
];
