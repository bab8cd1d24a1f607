import { compile } from "../kinematics/compile.ts";
import { newPoses } from "../kinematics/poses.ts";
import { solve } from "../kinematics/solve.ts";
import type { Car, LengthUnit } from "../vehicle/car.ts";
import { sayLength } from "../vehicle/units/format.ts";
import { blameOf, blameWords } from "./blame.ts";
import { type BumpTable, bumpTable, travelSpan } from "./bumpTable.ts";
import { drawnOf, settingOf } from "./front.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type Locks, locksOf } from "./locks.ts";
import { refusalWords } from "./refusal.ts";
import type { Span } from "./span.ts";
import { frontEndOf } from "./standing.ts";
import { rackSpan, type SteerTable, steerTable } from "./steerTable.ts";
import { type Worst, worstOf } from "./worst.ts";

/** A front end with all that is asked of it, each part worked out once, when first asked for. Lengths mm, angles rad. */
export interface Study extends FrontEnd {
  readonly car: Car;
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

/** A car that is no mechanism or cannot stand at rack 0, travel 0. */
export interface Refused {
  /** To a builder, in one sentence with a full stop, lengths in the file's units. */
  readonly refused: string;
}

/** Studies a car's front end. Never throws on a car: what cannot stand is refused, in words. */
export function studyOf(car: Car): Study | Refused {
  const front = compile(drawnOf(car));
  if ("refused" in front) return { refused: refusalWords(front) };
  const end = frontEndOf(front, settingOf(car));
  const blame = blameOf(end.ridePose(0), 0);
  if (blame !== null) {
    const words = blameWords(blame, (mm) => fineLength(mm, car.form.units));
    return { refused: `At rack 0, travel 0 the front end does not go together: the ${words}.` };
  }
  return studyOfEnd(car, end);
}

function studyOfEnd(car: Car, end: FrontEnd): Study {
  const lockToLock = once(() => steerTable(end, rackSpan(end)));
  const locks = once(() => locksOf(end));
  const worst = once(() => worstOf(end));
  let bump: BumpTable | null = null;
  return {
    ...end,
    car,
    steersBackwards: steersBackwards(car, end),
    pose: (rack, leftTravel, rightTravel) => {
      const poses = newPoses(1);
      solve(end.front, rack, leftTravel, rightTravel, poses, 0);
      return poses;
    },
    steerTable: (span) => (span === undefined ? lockToLock() : steerTable(end, span)),
    bumpTable: (rack, span) => {
      if (span !== undefined) return bumpTable(end, rack, span);
      if (bump === null || bump.rack !== rack) bump = bumpTable(end, rack, travelSpan(end));
      return bump;
    },
    get locks() {
      return locks();
    },
    get worst() {
      return worst();
    },
  };
}

function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}

function steersBackwards(car: Car, end: FrontEnd): boolean | null {
  const moves = car.form.wheelLeftMoves;
  if (moves === null || end.rackLeftTurns === null) return null;
  return moves === "left" ? end.rackLeftTurns === "right" : end.rackLeftTurns === "left";
}

/** A length in the file's units, finer than a tape reads and never rounded to nothing: a gap of nothing is no gap. */
function fineLength(mm: number, units: LengthUnit): string {
  return units === "in"
    ? sayLength(Math.max(mm, 0.01 * 25.4), { unit: "in", decimals: 2 })
    : sayLength(Math.max(mm, 0.1), { unit: "mm" });
}
