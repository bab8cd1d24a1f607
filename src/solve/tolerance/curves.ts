import { newPoses } from "../../kinematics/poses.ts";
import { Pose, Side } from "../../kinematics/slots.ts";
import { solve } from "../../kinematics/solve.ts";
import { bounceSteer } from "../../measures/bounceSteer.ts";
import { travelSpan } from "../../measures/bumpTable.ts";
import { placeOf, type Span } from "../../measures/span.ts";
import { inputSpan, steerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import { toeChange } from "../../measures/toeChange.ts";
import { shortOfIdeal } from "../../measures/turning.ts";
import { newSample, put, type Sample, type Spread, spreadOf } from "./sample.ts";

/** Places along the steering and along the travel: enough for a plot of a terminal's width. */
const PLACES = 11;

const steerKeys = ["inner", "outer", "innerShortOfIdeal"] as const;
const travelKeys = ["left", "right", "bounce"] as const;

type SteerKey = (typeof steerKeys)[number];
type TravelKey = (typeof travelKeys)[number];

/** The spread of what a plot shows at one place: an input of the steering, or a travel. */
export interface BandRow<Key extends string> {
  readonly place: number;
  readonly of: Readonly<Record<Key, Spread | null>>;
}

/** Over the steering at ride height; and toe change of each wheel and bounce steer over the travel, wheels straight; rad. */
export interface Bands {
  readonly steer: readonly BandRow<SteerKey>[];
  readonly travel: readonly BandRow<TravelKey>[];
}

/** What is read of one build after the other for the plots. */
export interface Curves {
  readonly note: (study: Study, build: number) => void;
  readonly bands: (count: number) => Bands;
}

interface Row<Key extends string> {
  readonly place: number;
  readonly of: Readonly<Record<Key, Sample>>;
}

function rowsOf<Key extends string>(span: Span, keys: readonly Key[], builds: number): readonly Row<Key>[] {
  return Array.from({ length: span.rows }, (_, i) => ({
    place: placeOf(span, i),
    of: Object.fromEntries(keys.map((key) => [key, newSample(builds)])) as Record<Key, Sample>,
  }));
}

function banded<Key extends string>(rows: readonly Row<Key>[], keys: readonly Key[], count: number): BandRow<Key>[] {
  return rows.map(({ place, of }) => ({
    place,
    of: Object.fromEntries(keys.map((key) => [key, spreadOf(of[key], count)])) as Record<Key, Spread | null>,
  }));
}

/** Keeps the curves of so many builds at the places of the car without errors. */
export function curvesOf(study: Study, builds: number): Curves {
  const steerRows = rowsOf({ ...inputSpan(study), rows: PLACES }, steerKeys, builds);
  const travelRows = study.suspended ? rowsOf({ ...travelSpan(study), rows: PLACES }, travelKeys, builds) : [];
  const poses = newPoses(1);
  const ride = newPoses(1);
  return {
    note: (built, build) => {
      for (const { place, of } of steerRows) {
        solve(built.front, place, 0, 0, poses, 0);
        const row = steerRow(built, place, poses, 0);
        put(of.inner, build, row.inner);
        put(of.outer, build, row.outer);
        put(of.innerShortOfIdeal, build, shortOfIdeal(row));
      }
      const input = built.zero ?? built.straightAhead;
      solve(built.front, input, 0, 0, ride, 0);
      for (const { place, of } of travelRows) {
        solve(built.front, input, place, place, poses, 0);
        const closes = (at: number) => ride[at + Side.Blame] === 0 && poses[at + Side.Blame] === 0;
        const [left, right] = [closes(Pose.Left), closes(Pose.Right)];
        put(of.left, build, left ? toeChange(poses, Pose.Left, ride, Pose.Left) : null);
        put(of.right, build, right ? toeChange(poses, Pose.Right, ride, Pose.Right) : null);
        put(of.bounce, build, left && right ? bounceSteer(poses, 0, ride, 0) : null);
      }
    },
    bands: (count) => ({
      steer: banded(steerRows, steerKeys, count),
      travel: banded(travelRows, travelKeys, count),
    }),
  };
}
