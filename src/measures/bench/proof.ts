import type { LengthUnit } from "../../vehicle/car.ts";
import { inch } from "../../vehicle/units/length.ts";
import type { Pair } from "../span.ts";
import { placeOf, type Span } from "../span.ts";
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

/** The straight board that readings are taken over, mm: 24 in or 600 mm. */
export function boardLength(unit: LengthUnit): number {
  return unit === "in" ? 24 * inch : 600;
}

const STEER_ROWS = 9;
const BUMP_ROWS = 7;

const sides = ["left", "right"] as const;

function pair<T>(of: (wheel: (typeof sides)[number]) => T): Pair<T> {
  return { left: of("left"), right: of("right") };
}

/** Where the steering is read: from stop to stop. */
export function steerSpan({ acting }: Study): Span {
  return { from: -acting.right.at, to: acting.left.at, rows: STEER_ROWS };
}

/**
 * Readings to prove the steering by, from stop to stop unless told: turned = steer − steer at zero; a board of length b held against
 * the wheel shows b (sin steer − sin steer at zero) between its ends. Empty where the wheels cannot be set straight.
 */
export function steerProof(study: Study, board: number, span: Span = steerSpan(study)): readonly SteerProof[] {
  const { zeroSteer } = study;
  if (zeroSteer === null) return [];
  return study.steerTable(span).rows.map((row) => ({
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

/** Readings to prove the travel by, from full droop to full bump, the steering held straight. Empty without suspension. */
export function bumpProof(study: Study, board: number): readonly BumpProof[] {
  const straight = study.zero ?? study.straightAhead;
  const { bump, droop } = study.wheelTravel;
  const below: Span = { from: -droop, to: 0, rows: (BUMP_ROWS + 1) / 2 };
  const above: Span = { from: 0, to: bump, rows: (BUMP_ROWS + 1) / 2 };
  const travels = [below, above].flatMap((span) => Array.from({ length: span.rows }, (_, i) => placeOf(span, i)));
  return [...new Set(travels.map((travel) => (travel === 0 ? 0 : travel)))].flatMap((travel) => {
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
