import { Pose } from "../kinematics/slots.ts";
import { type Blame, blameOf } from "../measures/blame.ts";
import { wheelFigures } from "../measures/figures.ts";
import type { Study } from "../measures/study.ts";
import { assumedMark, isAssumedAngle } from "../output/assumed.ts";
import { degrees, type Length, rodAngleGrade, toeWay, toeWords } from "../output/words.ts";
import type { Wheel } from "../vehicle/car.ts";
import type { Place } from "./model.ts";

/** An angle of both wheels at a place, in a builder's words. */
export interface Reading {
  readonly name: string;
  /** The same where there is little room. */
  readonly brief: string;
  readonly left: string;
  readonly right: string;
  /** The same on both sides in words that stand alone, where they do not already. */
  readonly said: { readonly left: string; readonly right: string };
}

type Say = (angle: number) => string;

/** An angle's size in the words of its way; one that is shown as nothing has no way. */
function sized(angle: number, digits: number, words: (size: string) => string): string {
  const size = degrees(Math.abs(angle), digits);
  return size === degrees(0, digits) ? size : words(size);
}

/** Steer and toe are one angle, told apart by side, so that both are said as finely: a small one to a hundredth. */
function sizedFine(angle: number, words: (size: string) => string): string {
  return sized(angle, Math.abs(angle) < 9.995 * (Math.PI / 180) ? 2 : 1, words);
}

/** The angles that are read at a place: the figure's id, a short name, and a builder's way to say it. */
const read: readonly {
  readonly id: string;
  readonly name: string;
  readonly brief?: string;
  readonly say: Say;
  readonly tell?: Say;
}[] = [
  {
    id: "steer",
    name: "Steer",
    say: (angle) => sizedFine(angle, (size) => `${size.padStart(5)} ${angle > 0 ? "left" : "right"}`),
    tell: (angle) => sizedFine(angle, (size) => `${size} ${angle > 0 ? "left" : "right"}`),
  },
  {
    id: "toe",
    name: "Toe",
    say: (angle) => sizedFine(angle, (size) => `${toeWay(angle)} ${size}`),
    tell: (angle) => sized(angle, 2, () => toeWords(angle)),
  },
  {
    id: "transmissionAngle",
    name: "Rod to arm",
    brief: "Rod/arm",
    say: (angle) => `${degrees(angle)}${gradeMark(angle)}`,
  },
  {
    id: "camber",
    name: "Camber top",
    brief: "Camber",
    say: (angle) => sized(angle, 2, (size) => `${angle > 0 ? "out" : "in"} ${size}`),
    tell: (angle) => sized(angle, 2, (size) => `${size} ${angle > 0 ? "outward" : "inward"}`),
  },
  { id: "caster", name: "Caster", say: (angle) => degrees(angle, 2) },
];

function gradeMark(angle: number): string {
  const grade = rodAngleGrade(angle);
  return grade === "good" ? "" : grade === "doubtful" ? " (!)" : " (!!)";
}

/** What the wheels do at a place, the most telling first; or why they cannot get there. */
export function here(study: Study, place: Place): readonly Reading[] | Blame {
  const pose = study.pose(place.input, place.left, place.right);
  const blame = blameOf(pose, 0);
  if (blame !== null) return blame;
  return read.flatMap(({ id, name, brief = name, say, tell = say }) => {
    const figure = wheelFigures.find((one) => one.id === id);
    const side = (at: number, words: Say) => {
      const value = figure?.read(pose, at, study) ?? null;
      const mark = isAssumedAngle(study.car, id, at === Pose.Left ? "left" : "right") ? assumedMark : "";
      return value === null ? "-" : `${mark}${words(value)}`;
    };
    if (figure === undefined) return [];
    const said = { left: side(Pose.Left, tell), right: side(Pose.Right, tell) };
    return [{ name, brief, left: side(Pose.Left, say), right: side(Pose.Right, say), said }];
  });
}

/** A place that differs from an end of its travel by less than this share of it is that end. */
export const atTheEnd = 1e-4;

/** The end that the rack or column stands at; null where it stands between them. */
export function inputEnd({ inputTravel }: Study, input: number): Wheel | null {
  if (input > inputTravel.left * (1 - atTheEnd)) return "left";
  return input < -inputTravel.right * (1 - atTheEnd) ? "right" : null;
}

/** How far the rack or column is from its middle, in words without a side: "1 1/4 in", "12.5°". */
export function inputSize({ inputKind }: Study, input: number, length: Length): string {
  return inputKind === "rack" ? length(Math.abs(input)) : degrees(Math.abs(input));
}

/** Where the rack or column stands: "at its left end", "1 1/4 in right", "on its middle". */
export function inputHere(study: Study, input: number, length: Length): string {
  const end = inputEnd(study, input);
  if (end !== null) return `at its ${end} end`;
  const size = inputSize(study, input, length);
  return size === inputSize(study, 0, length) ? "on its middle" : `${size} ${input > 0 ? "left" : "right"}`;
}

/** What the builder moves to steer: "Rack" or "Column". */
export function inputName({ inputKind }: Study): string {
  return inputKind === "rack" ? "Rack" : "Column";
}
