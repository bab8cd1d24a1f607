import { Pose } from "../kinematics/slots.ts";
import { type Blame, blameOf } from "../measures/blame.ts";
import { wheelFigures } from "../measures/figures.ts";
import type { Study } from "../measures/study.ts";
import { degrees, type Length, rodAngleGrade, toeWay } from "../output/words.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Place } from "./model.ts";

/** An angle of both wheels at a place, in a builder's words. */
export interface Reading {
  readonly name: string;
  readonly left: string;
  readonly right: string;
}

/** The angles that are read at a place: the figure's id, a short name, and a builder's way to say it. */
const read: readonly { readonly id: string; readonly name: string; readonly say: (angle: number) => string }[] = [
  { id: "steer", name: "Steer", say: (angle) => `${degrees(Math.abs(angle))} ${angle >= 0 ? "left" : "right"}` },
  { id: "toe", name: "Toe", say: (angle) => `${degrees(Math.abs(angle), 2)} ${toeWay(angle)}` },
  { id: "transmissionAngle", name: "Rod to arm", say: (angle) => `${degrees(angle)}${gradeMark(angle)}` },
  { id: "camber", name: "Camber", say: (angle) => `${degrees(Math.abs(angle), 2)} ${angle > 0 ? "out" : "in"}` },
  { id: "caster", name: "Caster", say: (angle) => degrees(angle, 2) },
];

function gradeMark(angle: number): string {
  const grade = rodAngleGrade(angle);
  return grade === "good" ? "" : grade === "doubtful" ? " (!)" : " (!!)";
}

/** What the wheels do at a place, the most telling first; or why they cannot get there. */
export function here(study: Study, place: Place): readonly Reading[] | Blame {
  const pose = study.pose(place.rack, place.left, place.right);
  const blame = blameOf(pose, 0);
  if (blame !== null) return blame;
  return read.flatMap(({ id, name, say }) => {
    const figure = wheelFigures.find((one) => one.id === id);
    const side = (at: number) => {
      const value = figure?.read(pose, at, study) ?? null;
      return value === null ? "-" : say(value);
    };
    return figure === undefined ? [] : [{ name, left: side(Pose.Left), right: side(Pose.Right) }];
  });
}

/** A length that differs from an end of the travel by less than this is that end, mm. */
export const atTheEnd = 0.01;

/** The end that the rack stands at; null where it stands between them. */
export function rackEnd(study: Study, rack: number): Wheel | null {
  if (rack > study.rackTravel.left - atTheEnd) return "left";
  return rack < -study.rackTravel.right + atTheEnd ? "right" : null;
}

/** Where the rack stands: "at its left end", "1 1/4 in right", "on its middle". */
export function rackHere(study: Study, rack: number, length: Length): string {
  const end = rackEnd(study, rack);
  if (end !== null) return `at its ${end} end`;
  const size = length(Math.abs(rack));
  return size === length(0) ? "on its middle" : `${size} ${rack > 0 ? "left" : "right"}`;
}
