/**
 * What the kernel is given: a front end as drawn, as plain numbers in mm and rad.
 *
 * A corner is described in its own frame: x forward, y outboard from the vehicle's centreline, z up from the ground at
 * the drawn ride height. The two corners are described alike, so a mirrored car is a car with its corners exchanged.
 */

/** A place in a corner's own frame, mm: x forward, y outboard, z up. */
export interface Point {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

/** Two arms that each turn about a fixed axis and carry one joint of the upright. */
export interface DoubleArmPoints {
  readonly lowerFront: Point;
  readonly lowerRear: Point;
  readonly lowerJoint: Point;
  readonly upperFront: Point;
  readonly upperRear: Point;
  readonly upperJoint: Point;
}

/** What carries the upright, and where, for both corners. */
export type Linkage = {
  readonly kind: "double-arm";
  readonly left: DoubleArmPoints;
  readonly right: DoubleArmPoints;
};

/**
 * A rack that slides across the car. The midpoint of its two inner eyes at mid-travel is (ahead, offset, up), offset
 * positive to the driver's left; tilt raises its left end, rad; straightAhead is the displacement from mid-travel at
 * which the car is drawn, positive to the driver's left.
 */
export interface Rack {
  readonly kind: "rack";
  readonly ahead: number;
  readonly up: number;
  readonly eyeToEye: number;
  readonly offset: number;
  readonly tilt: number;
  readonly straightAhead: number;
}

export type Mechanism = Rack;

/** The parts of a corner that every linkage has. camber and toe in rad, signs as ISO 8855 words them in DEVELOPERS.md. */
export interface Corner {
  readonly tieRodOuter: Point;
  /** Eye to eye, mm; null when the rod is cut to fit the drawn toe. */
  readonly tieRodLength: number | null;
  readonly wheelCenter: Point;
  /** Top outward positive. */
  readonly camber: number;
  /** Toe-in positive. */
  readonly toe: number;
}

/** The range of input and travel that the solver is tuned for; poses beyond it are solved all the same, only slower. */
export interface Range {
  readonly inputLow: number;
  readonly inputHigh: number;
  /** Least and greatest wheel travel, mm, bump positive: low is minus the droop. */
  readonly travelLow: number;
  readonly travelHigh: number;
}

export interface Drawn {
  readonly linkage: Linkage;
  readonly mechanism: Mechanism;
  readonly left: Corner;
  readonly right: Corner;
  readonly range: Range;
}
