import type { Front } from "../kinematics/compile.ts";
import type { Drawn } from "../kinematics/drawn.ts";
import type { Car, Wheel } from "../vehicle/car.ts";
import type { Blame } from "./blame.ts";

/** One value a side. */
export interface Pair<T> {
  readonly left: T;
  readonly right: T;
}

/** Rows of a table: from and to included, evenly spaced, counted (rows >= 1; a single row stands at from). */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly rows: number;
}

/**
 * The wheels at one place of the rack, travel 0. Angles rad, lengths mm. Where a side does not close its numbers and
 * every number made from both are null and blame says why.
 */
export interface SteerRow {
  readonly rack: number;
  readonly blame: Blame | null;
  /** Absolute, static toe included, positive to the left. */
  readonly left: { readonly steer: number | null };
  readonly right: { readonly steer: number | null };
  /** The way the car turns, by the change of both steers from the wheels' zero; null with no change at all. */
  readonly turn: Wheel | null;
  /** Changes of steer from zero, positive toward the turn. */
  readonly inner: number | null;
  readonly outer: number | null;
  readonly idealInner: number | null;
  /** 100 = all. */
  readonly percentOfIdealInner: number | null;
  /** 100 = all. */
  readonly ackermann: number | null;
  /** Of the outer front wheel's contact point, mm. */
  readonly turnRadius: number | null;
}

export interface Locks {
  /** The rack end that turns the car left, at the file's travel; null when it cannot be told which end that is. */
  readonly left: SteerRow | null;
  readonly right: SteerRow | null;
  /** Left lock less right lock. */
  readonly difference: {
    readonly inner: number | null;
    readonly outer: number | null;
    readonly turnRadius: number | null;
  };
}

export interface SteerTable {
  readonly rows: readonly SteerRow[];
}

/** One wheel of a row of the bump table; all null where this side does not close. Angles rad, lengths mm. */
export interface BumpSide {
  /** Toe-in positive. */
  readonly toe: number | null;
  /** From travel 0 at the same rack. */
  readonly toeChange: number | null;
  /** Top outward positive. */
  readonly camber: number | null;
  /** Top rearward positive. */
  readonly caster: number | null;
  /** Outboard displacement of the contact point from travel 0 at the same rack. */
  readonly trackChange: number | null;
}

export interface BumpRow {
  /** Of both wheel centres, bump positive. */
  readonly travel: number;
  readonly blame: Blame | null;
  readonly left: BumpSide;
  readonly right: BumpSide;
  /** Mean of both wheels' change of steer from travel 0, positive to the left. */
  readonly bounceSteer: number | null;
}

export interface BumpTable {
  readonly rack: number;
  readonly rows: readonly BumpRow[];
  readonly summary: {
    /** d(toe)/d(travel) at travel 0, rad/mm. */
    readonly bumpSteer: Pair<number | null>;
    /** The largest size of toeChange of rows and sides, rad; null when no row closes. */
    readonly worstToeChange: number | null;
    /** The bounceSteer of largest size among the rows, signed, rad. */
    readonly worstBounceSteer: number | null;
  };
}

/** The least rod-to-arm angle (transmissionAngle) of one wheel over all rack and all travel, and where. */
export interface LeastRodAngle {
  /** rad: 90 degrees is best, 0 is the dead point. */
  readonly angle: number;
  readonly rack: number;
  readonly travel: number;
}

/** The worst toe change of one wheel over the whole travel, rack at zero. */
export interface WorstToe {
  /** The toeChange of largest size, signed, rad. */
  readonly toeChange: number;
  /** Where, mm. */
  readonly travel: number;
  /** The same as toe across the tyre: diameter times its sine, mm, signed. */
  readonly acrossTyre: number;
  /** What the curve chiefly is, by least squares: a slope (inner end's height) or a bow (rod's length). */
  readonly chiefly: "slope" | "bow";
  /** The largest toe change over the travel that is due to each part alone, rad, signed as at full bump. */
  readonly slopePart: number;
  readonly bowPart: number;
}

/** The largest bounce steer over the whole travel, rack at zero. */
export interface WorstBounce {
  /** Signed, rad, positive to the left. */
  readonly bounceSteer: number;
  readonly travel: number;
}

/** The worst there is over the whole of the rack's and the wheels' travel; null where nothing closes. */
export interface Worst {
  /** Over rack and travel. */
  readonly rodAngle: Pair<LeastRodAngle | null>;
  /** Straight ahead, over travel. */
  readonly toe: Pair<WorstToe | null>;
  readonly bounce: WorstBounce | null;
  /** A place within rack and travel that cannot be reached, null when all can be. */
  readonly blame: Blame | null;
}

/** A front end with all that is asked of it, each part worked out once, when first asked for. Lengths mm, angles rad. */
export interface Study {
  readonly car: Car;
  readonly drawn: Drawn;
  readonly front: Front;
  readonly wheelbase: number;
  /** Loaded radius of the tyre. */
  readonly tireRadius: number;
  /** The rack's travel from mid-travel to each side, both positive. */
  readonly rackTravel: Pair<number>;
  /** Of the wheel centre, both positive. */
  readonly wheelTravel: { readonly bump: number; readonly droop: number };
  /** The rack place at which the car is drawn. */
  readonly straightAhead: number;
  /** The rack place at travel 0 where both steers add up to nothing; null when there is none in reach. */
  readonly zero: number | null;
  /** Both wheels' absolute steer there; null with zero. */
  readonly zeroSteer: Pair<number> | null;
  /** Tie rods, eye to eye: as given, or as they must be cut. */
  readonly rodLengths: Pair<number>;
  /** Lateral distance of the drawn contact points. */
  readonly track: number;
  /** Lateral distance between the places where the drawn steering axes meet the ground. */
  readonly kingPinSpacing: number;
  /** True when turning the steering wheel left turns the road wheels right; null when the file does not say. */
  readonly steersBackwards: boolean | null;
  /** One solved pose in a buffer of its own (Pose.Stride doubles); sides that do not close carry their blame. */
  readonly pose: (rack: number, leftTravel: number, rightTravel: number) => Float64Array;
  /** Lock to lock in 21 rows unless a span of rack places is given. */
  readonly steerTable: (span?: Span) => SteerTable;
  /** At a rack place, full droop to full bump in 21 rows unless a span of travel is given. */
  readonly bumpTable: (rack: number, span?: Span) => BumpTable;
  readonly locks: Locks;
  readonly worst: Worst;
}

/** A car that cannot stand as drawn: said to a builder in one sentence, lengths in the file's units. */
export interface Refused {
  readonly refused: string;
}
