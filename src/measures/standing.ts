import type { Corner, Drawn } from "../kinematics/drawn.ts";
import type { Front } from "../kinematics/front.ts";
import { newPoses } from "../kinematics/poses.ts";
import { Pose } from "../kinematics/slots.ts";
import { solve } from "../kinematics/solve.ts";
import type { Setting } from "./front.ts";
import type { FrontEnd } from "./frontEnd.ts";
import type { Pair } from "./span.ts";
import { steer } from "./steer.ts";
import { type Stop, turnsStop } from "./stops.ts";
import { type Standing, stopsActing } from "./stopsActing.ts";
import { tieRodLength } from "./tieRod.ts";
import { findZero, turnOfInputLeft } from "./zero.ts";

/** How far the input is moved to see which way the wheels turn, as a share of its travel. */
const NUDGE = 0.01;

/**
 * Works out what is known of a compiled front end before any table is made. The front end must close at input 0,
 * travel 0; what cannot be known of it is null.
 */
export function frontEndOf(front: Front, setting: Setting): FrontEnd {
  const { drawn } = front;
  const { straightAhead } = drawn.mechanism;
  const longest = Math.max(setting.inputTravel.left, setting.inputTravel.right);
  // From where the car is drawn; rods as cut may not reach there, and then from where it does stand.
  const zero = findZero(front, straightAhead, 2 * longest) ?? findZero(front, 0, 2 * longest);
  const cache = newPoses(1);
  let cached: number | null = null;
  const ridePose = (input: number): Float64Array => {
    if (input !== cached) solve(front, input, 0, 0, cache, 0);
    cached = input;
    return cache;
  };
  // At a zero both sides close: their steers were added up there.
  const zeroSteer = zero === null ? null : steersOf(ridePose(zero));
  const inputLeftTurns = turnOfInputLeft(front, zero ?? 0, NUDGE * longest);
  const ends = setting.inputTravel;
  const standing = { front, ends, zero, zeroSteer, inputLeftTurns };
  const acting = stopsActing(standing, setting.stops, 0);
  return {
    ...setting,
    inputTravel: { left: acting.left.at, right: acting.right.at },
    furthestInput: furthestOf(standing, setting, acting),
    acting,
    drawn,
    front,
    straightAhead,
    zero,
    zeroSteer,
    inputLeftTurns,
    rodLengths: rodLengthsOf(drawn, ridePose(straightAhead)),
    track: drawnContactOut(drawn.left, setting.tireRadius) + drawnContactOut(drawn.right, setting.tireRadius),
    kingPinSpacing: kingPinOut(drawn, "left") + kingPinOut(drawn, "right"),
    ridePose,
  };
}

/** Shares of full droop and full bump at which stops are looked for, beside ride height. */
const SHARES = [0.25, 0.5, 0.75, 1];

/** The furthest that stops let the input go to each side, at any travel of both wheels. */
function furthestOf(standing: Standing, { stops, wheelTravel }: Setting, atRide: Pair<Stop>): Pair<number> {
  const furthest = { left: atRide.left.at, right: atRide.right.at };
  if (!turnsStop(stops)) return furthest;
  for (const share of SHARES) {
    for (const travel of [share * wheelTravel.bump, -share * wheelTravel.droop]) {
      const { left, right } = stopsActing(standing, stops, travel);
      furthest.left = Math.max(furthest.left, left.at);
      furthest.right = Math.max(furthest.right, right.at);
    }
  }
  return furthest;
}

function steersOf(poses: Float64Array): Pair<number> {
  return { left: steer(poses, Pose.Left), right: steer(poses, Pose.Right) };
}

/** As given; a rod that is cut to fit reaches from eye to eye in the drawn pose. */
function rodLengthsOf(drawn: Drawn, poses: Float64Array): Pair<number> {
  return {
    left: drawn.left.tieRodLength ?? tieRodLength(poses, Pose.Left),
    right: drawn.right.tieRodLength ?? tieRodLength(poses, Pose.Right),
  };
}

/**
 * How far outboard the drawn wheel's contact point stands, mm. With camber γ and toe δ the spin axis is a = (cos γ sin δ,
 * cos γ cos δ, −sin γ), so the lowest point of the disc of radius r is out by −r sin γ cos δ from the wheel centre.
 */
function drawnContactOut(corner: Corner, radius: number): number {
  return corner.wheelCenter.y - radius * Math.sin(corner.camber) * Math.cos(corner.toe);
}

/** How far outboard the drawn steering axis meets the ground z = 0, mm. */
function kingPinOut(drawn: Drawn, wheel: "left" | "right"): number {
  const points = drawn.linkage[wheel];
  const lower = points.lowerJoint;
  const upper = "top" in points ? points.top : points.upperJoint;
  return lower.y - (lower.z * (upper.y - lower.y)) / (upper.z - lower.z);
}
