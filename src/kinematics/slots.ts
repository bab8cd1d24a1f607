/**
 * Where a solved pose keeps its numbers: one pose is two sides of Side.Stride doubles each, left first, in a
 * Float64Array that the caller owns. Places are in the corner's own frame (x forward, y outboard, z up), mm.
 */
export const enum Side {
  /** 0 when the side closes, else a Link: what could not be met. */
  Blame = 0,
  /** The link's length less the nearest or farthest distance it could have, mm; 0 when the side closes. */
  Gap = 1,
  /** Rack displacement from mid-travel, mm, or column angle, rad; positive to the driver's left. */
  Input = 2,
  /** Wheel travel asked for, mm, bump positive. */
  Travel = 3,
  /** Lower joint; the steering axis starts here. */
  Lower = 4,
  /** Upper joint, or what stands in its place. */
  Upper = 7,
  /** Unit vector from the lower to the upper joint. */
  Axis = 10,
  TieRodOuter = 13,
  TieRodInner = 16,
  WheelCenter = 19,
  /** Unit spin axis, pointing OUTBOARD in the corner's frame (on the left side that is the driver's left). */
  Spin = 22,
  /** Velocity of the upright's material point at the lower joint, per mm of wheel travel at fixed input. */
  LowerRate = 25,
  /** Angular velocity of the upright, rad per mm of wheel travel at fixed input, in the corner's frame. */
  Turn = 28,
  /** Signed moment arm of the tie-rod force about the steering axis, mm; its sign is the branch. */
  Lever = 31,
  Stride = 32,
}

/** Where each side of a pose starts, and how long a pose is. */
export const enum Pose {
  Left = 0,
  Right = 32,
  Stride = 64,
}

/** What can be to blame for a side that does not close. */
export const enum Link {
  None = 0,
  /** The upright, joint to joint, cannot span the two arms. */
  Upright = 1,
  TieRod = 2,
  /** The wheel centre cannot get as high or as low as was asked, whatever the links. */
  Travel = 3,
  /** The centre link cannot span the pitman and the idler arm. */
  CentreLink = 4,
}

/** What compile works out once for a corner. */
export const enum Corner {
  /** The upright's places about its steering axis: Upright.Stride doubles. */
  Upright = 0,
  RodLength = 12,
  /** +1 or −1: the side of the dead point that the drawn pose stands on. */
  RodBranch = 13,
  /** Height of the drawn wheel centre, mm. */
  Height = 14,
  /** +1 when the drawn wheel rises with the arm's angle, −1 when it falls, 0 when there is no suspension. */
  Rise = 15,
  /** How near the wheel's height is brought to what was asked, mm. */
  Tolerance = 16,
  /** The fitted start: middle and 1/half of travel and of the corner's own input, then the coefficients. */
  Start = 17,
  StartTerms = 21,
  Stride = 64,
}

/** Doubles that a linkage has to itself in a corner, and a steering mechanism in a front: for what it works out once. */
export const enum Own {
  Linkage = 32,
  Mechanism = 48,
}

/**
 * The upright's places about its steering axis, from the lower joint, in the frame (k, R, Q): k along the axis, R from
 * the axis to the tie-rod outer, Q = k × R. Constant where the axis is fixed in the upright, else the linkage's to write.
 */
export const enum Upright {
  /** The tie-rod outer: along the axis, and its distance from it, mm. */
  TieRodAlong = 0,
  TieRodRadius = 1,
  Wheel = 2,
  Spin = 5,
  /**
   * Where the axis turns in the upright: its rate, rad per rad of the arm's angle, about (R, Q)·(Across, Across + 1),
   * the unit vector that it turns about.
   */
  Bend = 8,
  Across = 9,
  Stride = 11,
}

/** The scratch of one corner while it is solved. Rates are written once the place is found, and are per rad of the arm's angle. */
export const enum Work {
  /** Written by the linkage: the steering axis, and its rates. */
  Lower = 0,
  Upper = 3,
  Axis = 6,
  LowerRate = 9,
  /** The part of the upright's angular velocity that is square to the steering axis. */
  Lean = 12,
  /** The upright's length less the nearest or farthest distance it could span, mm; 0 when it closes. */
  UprightGap = 15,
  /** Written by the steering mechanism. */
  Eye = 16,
  /** Written by the upright: R, from the axis to the tie-rod outer; Q = k × R; angular velocity, a rate. */
  Radius = 19,
  Across = 22,
  Turn = 25,
  TieRodGap = 28,
  /** Moment arm of the tie-rod force about the axis, times the rod's length, mm². */
  LeverRod = 29,
  /** Height of the wheel centre, and its rate. */
  Height = 30,
  HeightRate = 31,
  /** The t = tan(θ/2) that all of this was worked out at, or is to be, and its rate per mm of the wheel's height. */
  HalfAngle = 32,
  PerHeight = 33,
  /** Written by the steering mechanism: the centre link's length less what it could span, mm; 0 when it closes. */
  CentreLinkGap = 34,
  /** Upright.Stride doubles, where the steering axis turns in the upright. */
  Upright = 35,
  /** What the linkage hands from its place to its rates: 8 doubles. */
  Linkage = 47,
  Stride = 55,
}
