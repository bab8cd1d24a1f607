import type { LengthUnit } from "../../vehicle/car.ts";
import { inch } from "../../vehicle/units/length.ts";
import type { Pair } from "../span.ts";
import type { Study } from "../study.ts";
import { acrossTyre } from "../worstToe.ts";

/** What the wheels should read at one place of the steering, travel 0. */
export interface SteerProof {
  /** mm of rack or rad of column. */
  readonly input: number;
  /** Turned from straight ahead, rad, to the left positive: turn plates zeroed there. Null where it cannot be told. */
  readonly turned: Pair<number | null>;
  /**
   * How much further in or out the board's front end comes than its rear end, against straight ahead, mm, to the left
   * positive.
   */
  readonly board: Pair<number | null>;
}

/** What the wheels should read at one travel, the steering held straight. */
export interface BumpProof {
  /** mm, bump positive. */
  readonly travel: number;
  /** Change of toe from ride height, rad, and what it makes over the board and across the tyre, mm; toe-in positive. */
  readonly toe: Pair<number | null>;
  readonly board: Pair<number | null>;
  readonly acrossTyre: Pair<number | null>;
  /** Top outward positive, rad. */
  readonly camber: Pair<number | null>;
}

/** Where a car is read to prove it: places that a tape or a protractor shows, the ends, and straight ahead. */
export interface ProofPlaces {
  /** The straight board that readings are taken over, mm: 24 in or 600 mm. */
  readonly board: number;
  /** mm of rack or rad of column, from the right stop to the left one. */
  readonly inputs: readonly number[];
  /** mm, from full droop to full bump; none without suspension. */
  readonly travels: readonly number[];
}

/** So many marks between two ends are enough to see a curve by. */
const MOST_MARKS = 9;
const degree = Math.PI / 180;

const lengthMarks: Readonly<Record<LengthUnit, readonly number[]>> = {
  in: [0.25, 0.5, 1, 2, 4].map((each) => each * inch),
  mm: [5, 10, 20, 25, 50, 100],
};
const angleMarks = [5, 10, 15, 30, 45, 90, 180, 360].map((each) => each * degree);

/** The ends, the marks between them, counted from nothing, and what must be among them; marks too near to one of these are left out. */
function marked(from: number, to: number, marks: readonly number[], must: readonly number[]): readonly number[] {
  const between = (step: number) => {
    const [first, last] = [Math.ceil(from / step), Math.floor(to / step)];
    return Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => (first + i) * step);
  };
  const step = marks.find((each) => between(each).length <= MOST_MARKS) ?? to - from;
  const fixed = [from, ...must.filter((place) => place > from && place < to), to];
  const free = between(step).filter((place) => fixed.every((each) => Math.abs(each - place) > step / 3));
  return [...new Set([...fixed, ...free])].toSorted((a, b) => a - b);
}

/** The places for a car, as its builder measures: whole fractions of an inch, or millimetres. */
export function proofPlaces(study: Study, unit: LengthUnit): ProofPlaces {
  const { acting, wheelTravel, zero, inputKind, suspended } = study;
  const inputMarks = inputKind === "rack" ? lengthMarks[unit] : angleMarks;
  return {
    board: unit === "in" ? 24 * inch : 600,
    inputs: marked(-acting.right.at, acting.left.at, inputMarks, zero === null ? [] : [zero]),
    travels: suspended ? marked(-wheelTravel.droop, wheelTravel.bump, lengthMarks[unit], [0]) : [],
  };
}

const sides = ["left", "right"] as const;

function pair<T>(of: (wheel: (typeof sides)[number]) => T): Pair<T> {
  return { left: of("left"), right: of("right") };
}

/**
 * Readings to prove the steering by: turned = steer − steer at zero; a board of length b held against the wheel shows
 * b (sin steer − sin steer at zero) between its ends. Empty where the wheels cannot be set straight.
 */
export function steerProof(study: Study, { board, inputs }: ProofPlaces): readonly SteerProof[] {
  const { zeroSteer } = study;
  if (zeroSteer === null) return [];
  const rows = inputs.flatMap((at) => study.steerTable({ from: at, to: at, rows: 1 }).rows);
  return rows.map((row) => ({
    input: row.input,
    turned: pair((wheel) => {
      const { steer } = row[wheel];
      return steer === null ? null : steer - zeroSteer[wheel];
    }),
    board: pair((wheel) => {
      const { steer } = row[wheel];
      return steer === null ? null : board * (Math.sin(steer) - Math.sin(zeroSteer[wheel]));
    }),
  }));
}

/** Readings to prove the travel by, the steering held straight. */
export function bumpProof(study: Study, { board, travels }: ProofPlaces): readonly BumpProof[] {
  const straight = study.zero ?? study.straightAhead;
  return travels.flatMap((travel) => {
    const row = study.bumpTable(straight, { from: travel, to: travel, rows: 1 })?.rows[0];
    if (row === undefined) return [];
    const toe = pair((wheel) => row[wheel].toeChange);
    return [
      {
        travel,
        toe,
        board: pair((wheel) => {
          const { toe: at, toeChange } = row[wheel];
          return at === null || toeChange === null ? null : board * (Math.sin(at) - Math.sin(at - toeChange));
        }),
        acrossTyre: pair((wheel) => {
          const { [wheel]: change } = toe;
          return change === null ? null : acrossTyre(change, study.tireRadius);
        }),
        camber: pair((wheel) => row[wheel].camber),
      },
    ];
  });
}
