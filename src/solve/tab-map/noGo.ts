import { newPoses } from "../../kinematics/poses.ts";
import { Side } from "../../kinematics/slots.ts";
import { solve } from "../../kinematics/solve.ts";
import type { Detail } from "../../measures/leastRodAngle.ts";
import { sideAt } from "../../measures/points.ts";
import { bodiesOf } from "../../measures/range/bodies.ts";
import { type Pairing, pairingsAt } from "../../measures/range/clearance.ts";
import { placeOf, type Span } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { limitOf } from "../../vehicle/sections/limits.ts";
import { type NoGo, noGos } from "./tabPlane.ts";

/** Places over steering and travel at which clearances are looked at, both ends among them. */
export const clearancePlaces: Readonly<Record<Detail, { readonly inputs: number; readonly travels: number }>> = {
  whole: { inputs: 7, travels: 5 },
  coarse: { inputs: 5, travels: 3 },
};

/** The place in the list of what a tie rod's pair is with. */
function rankOf({ id }: Pairing): number {
  const other = id.slice("tie-rod.".length);
  if (other === "rim" || other === "tyre" || other === "shock") return noGos.indexOf(other);
  return noGos.indexOf(other.startsWith("frame-") ? "frame tube" : "arm");
}

const poses = newPoses(1);

/** What the tie rods of these wheels come nearer to than the car's limit, over steering and travel; null where nothing. */
function metBy(study: Study, wheels: readonly Wheel[], detail: Detail): NoGo | null {
  const { tubes, limits } = study.car.sections;
  const { broken } = limitOf(limits, "clearance");
  const pairs = wheels
    .filter((wheel) => (tubes?.[wheel]?.diameters["tie-rod"] ?? null) !== null)
    .flatMap((wheel) => pairingsAt(study, bodiesOf(study, wheel), "tie rod"));
  if (pairs.length === 0) return null;
  const { furthestInput, wheelTravel, suspended } = study;
  const places = clearancePlaces[detail];
  const inputs: Span = { from: -furthestInput.right, to: furthestInput.left, rows: places.inputs };
  const travels: Span = {
    from: -wheelTravel.droop,
    to: wheelTravel.bump,
    rows: suspended ? places.travels : 1,
  };
  const ranks = pairs.map(rankOf);
  // The first of them in the list is told: what comes after one that is met need not be looked at.
  let met: number = noGos.length;
  for (let at = 0; at < inputs.rows * travels.rows; at++) {
    const travel = placeOf(travels, Math.floor(at / inputs.rows));
    solve(study.front, placeOf(inputs, at % inputs.rows), travel, travel, poses, 0);
    for (const [i, pair] of pairs.entries()) {
      const side = sideAt(pair.wheel);
      if (ranks[i] >= met || poses[side + Side.Blame] !== 0) continue;
      if (pair.read(poses, side, broken) < broken) met = ranks[i];
    }
  }
  return noGos[met] ?? null;
}

/** Places over steering and of travel, both ends among them, of which none may be out of reach: nearly all that is, is at an end. */
const REACH = 3;

/** Whether a place at the ends or in the middle is out of reach: known long before the whole range has been looked at. */
function failsAtEnds({ front, furthestInput, wheelTravel, suspended }: Study): boolean {
  const inputs: Span = { from: -furthestInput.right, to: furthestInput.left, rows: REACH };
  const travels: Span = { from: -wheelTravel.droop, to: wheelTravel.bump, rows: suspended ? REACH : 1 };
  for (let at = 0; at < inputs.rows * travels.rows; at++) {
    const travel = placeOf(travels, Math.floor(at / inputs.rows));
    solve(front, placeOf(inputs, at % inputs.rows), travel, travel, poses, 0);
    if (poses[sideAt("left") + Side.Blame] !== 0 || poses[sideAt("right") + Side.Blame] !== 0) return true;
  }
  return false;
}

/**
 * Why the tabs of these wheels cannot be where a car has them: steering or travel out of reach, a rod-to-arm angle or a
 * clearance under the car's limit; null where nothing of that holds. Clearances are looked at coarsely, and only between
 * parts whose sizes the file gives: the whole check decides.
 */
export function noGoOf(study: Study, wheels: readonly Wheel[], detail: Detail = "whole"): NoGo | null {
  if (failsAtEnds(study)) return "does not close";
  const { worst, car } = study;
  if (worst.blame !== null) return "does not close";
  const { broken } = limitOf(car.sections.limits, "rod-to-arm");
  if (wheels.some((wheel) => (worst.rodAngle[wheel]?.angle ?? 0) < broken)) return "dead point";
  return metBy(study, wheels, detail);
}
