import { type Blame, blameOfSide } from "../measures/blame.ts";
import { poseFigures, wheelFigures } from "../measures/figures.ts";
import { pointsOf, sideAt, type WheelPoints } from "../measures/points.ts";
import type { Pair } from "../measures/span.ts";
import type { Study } from "../measures/study.ts";
import type { Wheel } from "../vehicle/words.ts";

/** Where the steering and the wheels stand; what is left out is 0. */
export interface Asked {
  /** mm of rack or rad of column, as the car's inputKind says, positive to the driver's left. */
  readonly input?: number;
  /** Of each wheel centre from ride height, mm, bump positive. */
  readonly travel?: Pair<number>;
}

/** Figures by their ids; null where there is nothing to tell. */
export type Figures = Readonly<Record<string, number | null>>;

/** One wheel, where its links reach. */
export interface WheelPose {
  readonly closes: true;
  /** In the vehicle's frame, mm: x forward, y to the driver's left, z up from the ground at ride height. */
  readonly points: WheelPoints;
  readonly figures: Figures;
}

/** One wheel, where a link does not reach: which, and by how much. */
export interface OutOfReach {
  readonly closes: false;
  readonly blame: Blame;
}

/** Both wheels at a place. */
export interface Pose {
  readonly left: WheelPose | OutOfReach;
  readonly right: WheelPose | OutOfReach;
  /** Figures of both wheels together; all null where one is out of reach. */
  readonly figures: Figures;
}

/** Both wheels of a car at a place. Never throws: what is out of reach is said. */
export function poseAt(study: Study, { input = 0, travel = { left: 0, right: 0 } }: Asked): Pose {
  const solved = study.pose(input, travel.left, travel.right);
  const [left, right] = [wheelAt(study, solved, "left"), wheelAt(study, solved, "right")];
  const both = left.closes && right.closes;
  return {
    left,
    right,
    figures: Object.fromEntries(poseFigures.map(({ id, read }) => [id, both ? read(solved, 0, study) : null])),
  };
}

function wheelAt(study: Study, solved: Float64Array, wheel: Wheel): WheelPose | OutOfReach {
  const at = sideAt(wheel);
  const blame = blameOfSide(solved, at);
  const points = pointsOf(solved, wheel, study.tireRadius);
  if (blame !== null) return { closes: false, blame };
  if (points === null) throw new Error("a wheel that is not to blame has points");
  return {
    closes: true,
    points,
    figures: Object.fromEntries(wheelFigures.map(({ id, read }) => [id, read(solved, at, study)])),
  };
}
