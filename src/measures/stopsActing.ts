import type { Front } from "../kinematics/front.ts";
import { newPoses } from "../kinematics/poses.ts";
import { Pose, Side } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Pair } from "./span.ts";
import { steer } from "./steer.ts";
import type { Stop, Stops } from "./stops.ts";

/** What is known of a front end when its stops are looked for. */
export interface Standing {
  readonly front: Front;
  /** From the middle to the ends of the rack or the column, both positive. */
  readonly ends: Pair<number>;
  readonly zero: number | null;
  readonly zeroSteer: Pair<number> | null;
  readonly inputLeftTurns: Wheel | null;
}

/** Places looked at from straight ahead to an end, and halvings between two of them: below the last bit that matters. */
const PLACES = 48;
const HALVINGS = 50;

/** The first input on the way from zero to an end at which a wheel has turned so far, rad; null where it never does, or does not get there. */
function whereTurned(
  { front, zero, zeroSteer }: Standing,
  end: number,
  wheel: Wheel,
  turn: Wheel,
  angle: number,
  travel: number,
): number | null {
  if (zero === null || zeroSteer === null) return null;
  const poses = newPoses(1);
  const at = wheel === "left" ? Pose.Left : Pose.Right;
  const toward = turn === "left" ? 1 : -1;
  const isBefore = (input: number) => {
    solve(front, input, travel, travel, poses, 0);
    return poses[at + Side.Blame] === 0 && toward * (steer(poses, at) - zeroSteer[wheel]) < angle;
  };
  const place = (i: number) => zero + ((end - zero) * i) / PLACES;
  let i = 1;
  while (i <= PLACES && isBefore(place(i))) i++;
  if (i > PLACES) return null;
  let [before, past] = [place(i - 1), place(i)];
  for (let round = 0; round < HALVINGS; round++) {
    const middle = (before + past) / 2;
    if (isBefore(middle)) before = middle;
    else past = middle;
  }
  solve(front, past, travel, travel, poses, 0);
  return poses[at + Side.Blame] === 0 ? past : null;
}

/**
 * What ends the steering's travel to one side: the least of the rack's (or column's) own end, its collar, and the places
 * where a wheel meets a stop on its upright or its tyre rubs. Turns are changes of steer from straight ahead at ride height.
 */
function stopToward(standing: Standing, stops: Stops, side: Wheel, travel: number): Stop {
  const { ends, inputLeftTurns } = standing;
  const sign = side === "left" ? 1 : -1;
  const end: Stop = { kind: "end", wheel: null, at: ends[side] };
  const found: Stop[] = [end];
  if (stops.collar[side] > 0)
    found.push({ kind: "collar", wheel: null, at: Math.max(0, ends[side] - stops.collar[side]) });
  const other = side === "left" ? "right" : "left";
  const turn = inputLeftTurns === null ? null : inputLeftTurns === "left" ? side : other;
  for (const kind of ["upright", "tyreRub"] as const) {
    for (const wheel of ["left", "right"] as const) {
      const angle = stops[kind][wheel === turn ? "inner" : "outer"][wheel];
      if (turn === null || angle === 0) continue;
      const at = whereTurned(standing, sign * ends[side], wheel, turn, angle, travel);
      if (at !== null) found.push({ kind, wheel, at: sign * at });
    }
  }
  return found.reduce((least, each) => (each.at < least.at ? each : least));
}

/** What ends the steering's travel to each side, both wheels at a travel, mm. */
export function stopsActing(standing: Standing, stops: Stops, travel: number): Pair<Stop> {
  return {
    left: stopToward(standing, stops, "left", travel),
    right: stopToward(standing, stops, "right", travel),
  };
}
