import { compile } from "../kinematics/compile.ts";
import { newPoses } from "../kinematics/poses.ts";
import { solve } from "../kinematics/solve.ts";
import type { Car, LengthUnit } from "../vehicle/car.ts";
import { sayLength } from "../vehicle/units/format.ts";
import { type Blame, blameOf, blamePart, blameWords } from "./blame.ts";
import { type BumpTable, bumpTable, travelSpan } from "./bumpTable.ts";
import { drawnOf, settingOf } from "./front.ts";
import type { FrontEnd } from "./frontEnd.ts";
import { type InnerEndMove, innerEndWays } from "./innerEnd.ts";
import type { Detail } from "./leastRodAngle.ts";
import { type Locks, locksOf } from "./locks.ts";
import { refusalPart, refusalWords } from "./refusal.ts";
import type { Pair, Span } from "./span.ts";
import { frontEndOf } from "./standing.ts";
import { inputSpan, type SteerTable, steerTable } from "./steerTable.ts";
import { type Worst, worstOf } from "./worst.ts";

/** A front end with all that is asked of it, each part worked out once, when first asked for. Lengths mm, angles rad. */
export interface Study extends FrontEnd {
  readonly car: Car;
  /** True when turning the steering wheel left turns the road wheels right; null when the file does not say. */
  readonly steersBackwards: boolean | null;
  /** One solved pose at an input (mm of rack or rad of column) and travels in a buffer of its own (Pose.Stride doubles); sides that do not close carry their blame. */
  readonly pose: (input: number, leftTravel: number, rightTravel: number) => Float64Array;
  /** Lock to lock in 21 rows unless a span of inputs is given. */
  readonly steerTable: (span?: Span) => SteerTable;
  /** At an input, full droop to full bump in 21 rows unless a span of travel is given; null without suspension. */
  readonly bumpTable: (input: number, span?: Span) => BumpTable | null;
  readonly locks: Locks;
  readonly worst: Worst;
  /** Which way each rod's inner end has to go for less toe change; null where that hardly helps. */
  readonly innerEnds: Pair<InnerEndMove | null>;
}

/** A car that is no mechanism or cannot stand at input 0, travel 0. */
export interface Refused {
  /** To a builder, in one sentence with a full stop, lengths in the file's units. */
  readonly refused: string;
  /** The part of the car file that says most about it, as a path from the root. */
  readonly part: readonly string[];
}

/**
 * Studies a car's front end. Never throws on a car: what cannot stand is refused, in words. `detail`: how closely the worst
 * over its range is looked for.
 */
export function studyOf(car: Car, detail: Detail = "whole"): Study | Refused {
  const front = compile(drawnOf(car));
  if ("refused" in front) return { refused: refusalWords(front), part: refusalPart(front) };
  const end = frontEndOf(front, settingOf(car));
  const blame = blameOf(end.ridePose(0), 0);
  if (blame !== null) {
    const beyond = car.warnings.find(({ part }) => part.endsWith(".straight-ahead"));
    if (beyond !== undefined)
      return {
        refused: `From the middle the front end does not go together: ${beyond.message}.`,
        part: beyond.part.split("."),
      };
    const words = blameWords(blame, (mm) => fineLength(mm, car.form.units));
    const where = `${end.inputKind} 0${end.suspended ? ", travel 0" : ""}`;
    return { refused: `At ${where} the front end does not go together: the ${words}.`, part: partOf(car, blame) };
  }
  return studyOfEnd(car, end, detail);
}

function studyOfEnd(car: Car, end: FrontEnd, detail: Detail): Study {
  const lockToLock = once(() => steerTable(end, inputSpan(end)));
  const locks = once(() => locksOf(end));
  const worst = once(() => worstOf(end, detail));
  const innerEnds = once(() => innerEndWays({ drawn: end.drawn, setting: settingOf(car) }, worst().toe));
  let bump: BumpTable | null = null;
  return {
    ...end,
    car,
    steersBackwards: steersBackwards(car, end),
    pose: (input, leftTravel, rightTravel) => {
      const poses = newPoses(1);
      solve(end.front, input, leftTravel, rightTravel, poses, 0);
      return poses;
    },
    steerTable: (span) => (span === undefined ? lockToLock() : steerTable(end, span)),
    bumpTable: (input, span) => {
      if (!end.suspended) return null;
      if (span !== undefined) return bumpTable(end, input, span);
      if (bump === null || bump.input !== input) bump = bumpTable(end, input, travelSpan(end));
      return bump;
    },
    get locks() {
      return locks();
    },
    get worst() {
      return worst();
    },
    get innerEnds() {
      return innerEnds();
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

/** The column goes the way of the steering wheel; for a rack the file has to say. */
function steersBackwards(car: Car, end: FrontEnd): boolean | null {
  const moves = end.inputKind === "column" ? "left" : car.form.wheelLeftMoves;
  return moves === null || end.inputLeftTurns === null ? null : moves !== end.inputLeftTurns;
}

/** A tie rod that is as cut is where its length is written. */
function partOf({ form }: Car, blame: Blame): readonly string[] {
  const part = blamePart(blame);
  return blame.link === "tie rod" && form.rods[blame.wheel] === "cut" ? [...part, "length"] : part;
}

/** A length in the file's units, finer than a tape reads and never rounded to nothing: a gap of nothing is no gap. */
function fineLength(mm: number, units: LengthUnit): string {
  return units === "in"
    ? sayLength(Math.max(mm, 0.01 * 25.4), { unit: "in", decimals: 2 })
    : sayLength(Math.max(mm, 0.1), { unit: "mm" });
}
