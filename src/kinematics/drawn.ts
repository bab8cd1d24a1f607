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

/** Two arms that trail from axes straight across the car; of a pivot only its ahead and up matter to the motion. */
export interface TrailingArmsPoints {
  readonly lowerPivot: Point;
  readonly lowerJoint: Point;
  readonly upperPivot: Point;
  readonly upperJoint: Point;
}

/** A lower arm, and a strut fixed to the upright that slides through its top mount on the body. */
export interface StrutPoints {
  readonly lowerFront: Point;
  readonly lowerRear: Point;
  readonly lowerJoint: Point;
  readonly top: Point;
  /** Any other place on the line that the strut slides along, as drawn. */
  readonly bottom: Point;
}

/** A beam that turns about one axis on the body and carries the king pin at its end. */
export interface PivotingBeamPoints {
  readonly beamFront: Point;
  readonly beamRear: Point;
  readonly lowerJoint: Point;
  readonly upperJoint: Point;
}

/** A king pin fixed to the body: no suspension. */
export interface FixedKingpinPoints {
  readonly lowerJoint: Point;
  readonly upperJoint: Point;
}

interface BothCorners<Kind extends string, Points> {
  readonly kind: Kind;
  readonly left: Points;
  readonly right: Points;
}

/** What carries the upright, and where, for both corners. */
export type Linkage =
  | BothCorners<"double-arm", DoubleArmPoints>
  | BothCorners<"trailing-arms", TrailingArmsPoints>
  | BothCorners<"strut", StrutPoints>
  | BothCorners<"pivoting-beam", PivotingBeamPoints>
  | BothCorners<"fixed-kingpin", FixedKingpinPoints>;

/**
 * A rack that slides across the car, tie rods on its ends. The midpoint of its two inner eyes at mid-travel is (ahead,
 * offset, up), offset positive to the driver's left; tilt raises its left end, rad; straightAhead is the displacement
 * from mid-travel at which the car is drawn, positive to the driver's left. Input: displacement, mm.
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

/** A rack with both tie rods on a bar at its middle. Eyes at mid-travel, each in its own corner's frame. Input: mm. */
export interface CentreRack {
  readonly kind: "centre-rack";
  readonly leftEye: Point;
  readonly rightEye: Point;
  readonly tilt: number;
  readonly straightAhead: number;
}

/**
 * A plate on the steering column with both tie rods on it. The column's axis goes through foot and points up toward the
 * driver, rake above level, rad; eyes as the plate stands at column 0, each in its own corner's frame. Input: column
 * angle, rad, positive as the steering wheel is turned left.
 */
export interface SteeringPlate {
  readonly kind: "steering-plate";
  /** In the vehicle's frame: y to the driver's left. */
  readonly foot: Point;
  readonly rake: number;
  readonly leftEye: Point;
  readonly rightEye: Point;
  readonly straightAhead: number;
}

/**
 * A pitman arm and an idler arm carry a centre link with both tie rods on it. Everything in the vehicle's frame (y to
 * the driver's left), at column 0. Axes need not be unit vectors. The pitman arm turns about its axis by column × turn.
 * Input: column angle, rad, positive as the steering wheel is turned left.
 */
export interface Relay {
  readonly kind: "relay";
  readonly pitmanPivot: Point;
  readonly pitmanAxis: Point;
  readonly pitmanJoint: Point;
  readonly idlerPivot: Point;
  readonly idlerAxis: Point;
  readonly idlerJoint: Point;
  readonly leftEye: Point;
  readonly rightEye: Point;
  /** Pitman angle per column angle, signed: 1/16 for a 16 to 1 box that turns with the column. */
  readonly turn: number;
  readonly straightAhead: number;
}

export type Mechanism = Rack | CentreRack | SteeringPlate | Relay;

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

/** The range of input (mm of rack or rad of column) and travel that the solver is tuned for; poses beyond it are solved all the same, only slower. */
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
