import { newPoses } from "../../kinematics/poses.ts";
import { Pose, Side } from "../../kinematics/slots.ts";
import { solve } from "../../kinematics/solve.ts";
import { travelSpan } from "../../measures/bumpTable.ts";
import type { Detail } from "../../measures/leastRodAngle.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import { pairingsAt } from "../../measures/range/clearance.ts";
import { rodEndsAt, swing } from "../../measures/range/rodEnds.ts";
import type { Watched } from "../../measures/range/watched.ts";
import { placeOf } from "../../measures/span.ts";
import { shaftRun } from "../../measures/steeringShaft.ts";
import { type SteerRow, steerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import { threadsOf } from "../../measures/threads.ts";
import { toe } from "../../measures/toe.ts";
import { toeChange } from "../../measures/toeChange.ts";
import { shortOfIdeal } from "../../measures/turning.ts";
import { curbCircle } from "../../measures/turningCircle.ts";
import { acrossTyre } from "../../measures/worstToe.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { GoalName } from "../../vehicle/sections/goals.ts";
import type { SteeringShaft } from "../../vehicle/sections/steering-shaft.ts";
import { shocksAt } from "../check/shocks.ts";

/** What a car gives of a goal: the least and the most of it, mm, rad or bare. */
export interface Reading {
  readonly low: number;
  readonly high: number;
}

const wheels: readonly Wheel[] = ["left", "right"];

/** Places from a share of a lock on to its end. */
const LOCK_PLACES = 8;
/** Places over the travel at a lock. */
const TRAVEL_PLACES = 9;
/** Places a way over the whole range for rod ends, clearances and shocks: the check looks closer. */
const rangePlaces: Readonly<Record<Detail, number>> = { whole: 9, coarse: 5 };

/** The least and the most of some values; null where one of them, or all, cannot be told. */
function spread(values: readonly (number | null | undefined)[]): Reading | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const value of values) {
    if (value === null || value === undefined) return null;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return low > high ? null : { low, high };
}

function sizes(values: readonly (number | null | undefined)[]): Reading | null {
  return spread(values.map((value) => (value === null || value === undefined ? null : Math.abs(value))));
}

/** A number at both locks, from a share of the way to each on; those where it says nothing yet are passed over. */
function overLocks(study: Study, share: number, read: (row: SteerRow) => number | null): Reading | null {
  const ends = wheels.map((wheel) => study.locks[wheel]);
  const atEnds = ends.map((row) => (row === null ? null : read(row)));
  if (share >= 1 || atEnds.includes(null)) return spread(atEnds);
  const zero = study.zero ?? study.straightAhead;
  const before = ends.flatMap((row) => {
    if (row === null) return [];
    const inputs = Array.from({ length: LOCK_PLACES - 1 }, (_, i) => {
      const part = share + ((1 - share) * i) / (LOCK_PLACES - 1);
      return zero + part * (row.input - zero);
    });
    return inputs
      .map((input) => read(steerRow(study, input, study.ridePose(input), 0)))
      .filter((each) => each !== null);
  });
  return spread([...atEnds, ...before]);
}

/** The worst toe change over the travel at both locks, across the tyre; a lock whose ride height is out of reach has none. */
function toeAtLocks(study: Study): Reading | null {
  const ride = newPoses(1);
  const poses = newPoses(1);
  const span = { ...travelSpan(study), rows: TRAVEL_PLACES };
  const changes: number[] = [];
  for (const wheel of wheels) {
    const row = study.locks[wheel];
    if (row === null || row.blame !== null) return null;
    solve(study.front, row.input, 0, 0, ride, 0);
    for (let i = 0; i < TRAVEL_PLACES; i++) {
      const travel = placeOf(span, i);
      solve(study.front, row.input, travel, travel, poses, 0);
      for (const at of [Pose.Left, Pose.Right]) {
        if (poses[at + Side.Blame] === 0) changes.push(acrossTyre(toeChange(poses, at, ride, at), study.tireRadius));
      }
    }
  }
  return changes.length === 0 ? null : sizes([Math.max(...changes.map(Math.abs))]);
}

/** The least of what is watched, over a coarse range of steering and travel; null where nothing is. */
function leastWatched(study: Study, watched: readonly Watched[], detail: Detail): Reading | null {
  const places = rangePlaces[detail];
  const poses = newPoses(1);
  const travels = { ...travelSpan(study), rows: study.suspended ? places : 1 };
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < places; i++) {
    const { left, right } = study.furthestInput;
    const input = placeOf({ from: -right, to: left, rows: places }, i);
    for (let j = 0; j < travels.rows; j++) {
      const travel = placeOf(travels, j);
      solve(study.front, input, travel, travel, poses, 0);
      for (const { wheel, read } of watched) {
        const at = sideAt(wheel);
        if (poses[at + Side.Blame] === 0) least = Math.min(least, read(poses, at, least));
      }
    }
  }
  return least === Number.POSITIVE_INFINITY ? null : { low: least, high: least };
}

function rodEndsLeft(study: Study, detail: Detail): Reading | null {
  const ends = wheels.flatMap((wheel) => rodEndsAt(study, bodiesOf(study, wheel)));
  const watched = ends.map((end): Watched => {
    return { wheel: end.wheel, read: (poses, at) => end.end.angle - swing(end.shankIn(poses, at), end.bolt) };
  });
  return leastWatched(study, watched, detail);
}

/** What is left of the shocks' stroke, mm: fully closed they are their stroke shorter than free. */
function strokeLeft(study: Study, detail: Detail): Reading | null {
  const watched = wheels.flatMap((wheel) =>
    shocksAt(study, bodiesOf(study, wheel)).flatMap(({ shock, watched: [short, long] }): readonly Watched[] => {
      const { "free-length": free, stroke } = shock;
      if (free === null) return [];
      const inDroop: Watched = { wheel, read: (poses, at) => free + long.read(poses, at) };
      const inBump = (closed: number): Watched => ({ wheel, read: (poses, at) => short.read(poses, at) - closed });
      return stroke === null ? [inDroop] : [inDroop, inBump(free - stroke)];
    }),
  );
  return leastWatched(study, watched, detail);
}

/** How far straight-ahead toe is off what is drawn, rad; at each wheel. */
function toeOff(study: Study): Reading | null {
  if (study.zero === null) return null;
  const poses = study.ridePose(study.zero);
  return sizes(wheels.map((wheel) => toe(poses, sideAt(wheel)) - study.drawn[wheel].toe));
}

function threads(study: Study, read: (fit: NonNullable<ReturnType<typeof threadsOf>>) => number): Reading | null {
  return spread(
    wheels.flatMap((wheel) => {
      const fit = threadsOf(study, wheel);
      return fit === null ? [] : [read(fit)];
    }),
  );
}

const bends = new WeakMap<SteeringShaft, number>();

/**
 * The most that a joint of a steering shaft bends, rad. Its own places decide, which no search moves: one reading does for
 * all cars.
 */
function worstBend(shaft: SteeringShaft): number {
  const known = bends.get(shaft);
  if (known !== undefined) return known;
  const worst = Math.max(...shaftRun(shaft).joints.map(({ bend }) => bend));
  bends.set(shaft, worst);
  return worst;
}

const readers: Readonly<Record<GoalName, (study: Study, over: number, detail: Detail) => Reading | null>> = {
  ackermann: (study, over) => overLocks(study, over, (row) => row.ackermann),
  "off-ideal": (study, over) => {
    const short = overLocks(study, over, shortOfIdeal);
    return short === null ? null : sizes([short.low, short.high]);
  },
  "toe-change": ({ worst }) => sizes(wheels.map((wheel) => worst.toe[wheel]?.acrossTyre)),
  "toe-change-at-lock": (study) => (study.suspended ? toeAtLocks(study) : null),
  "bounce-steer": ({ worst }) => sizes([worst.bounce?.bounceSteer]),
  "lock-difference": ({ locks }) => sizes([locks.difference.inner]),
  "outer-difference": ({ locks }) => sizes([locks.difference.outer]),
  "circle-difference": ({ locks }) => {
    const radii = locks.difference.turnRadius;
    return radii === null ? null : sizes([2 * radii]);
  },
  "inner-lock": ({ locks }) => spread(wheels.map((wheel) => locks[wheel]?.inner)),
  "turning-circle": (study) => spread(wheels.map((wheel) => curbCircle(study, wheel))),
  "straight-toe": toeOff,
  "rod-to-arm": ({ worst }) => spread(wheels.map((wheel) => worst.rodAngle[wheel]?.angle)),
  "rod-end": (study, _, detail) => rodEndsLeft(study, detail),
  engagement: (study) => threads(study, ({ ends }) => Math.min(...ends.map(({ diameters }) => diameters))),
  adjustment: (study) => threads(study, ({ longer, shorter }) => Math.min(longer, shorter)),
  clearance: (study, _, detail) => {
    return leastWatched(
      study,
      wheels.flatMap((wheel) => pairingsAt(study, bodiesOf(study, wheel))),
      detail,
    );
  },
  "shock-stroke": (study, _, detail) => strokeLeft(study, detail),
  "shaft-joint": ({ car }) => {
    const shaft = car.sections["steering-shaft"];
    return shaft === null ? null : spread([worstBend(shaft)]);
  },
};

/** Goals that are read of a sweep over the whole range, which takes more than both locks together. */
export const swept: ReadonlySet<string> = new Set<GoalName | "range">([
  "range",
  "rod-to-arm",
  "toe-change",
  "toe-change-at-lock",
  "bounce-steer",
]);

/** Goals whose reading takes more than the rest of a car together: they are read last, and only where it matters. */
export const dear: ReadonlySet<string> = new Set<GoalName>(["rod-end", "clearance", "shock-stroke"]);

/**
 * What a car gives of a goal; `over`: from which share of the lock on, for those that can be asked for over a part of it.
 * `detail`: how closely the range is looked at for the dear ones. "range" is how far the worst place of its range is out of
 * reach, mm. Null where it cannot be told.
 */
export function readingOf(
  name: GoalName | "range",
  over: number,
  study: Study,
  detail: Detail = "whole",
): Reading | null {
  if (name !== "range") return readers[name](study, over, detail);
  const gap = study.worst.blame === null ? 0 : Math.abs(study.worst.blame.gap);
  return { low: gap, high: gap };
}
