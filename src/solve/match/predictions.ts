import { Side } from "../../kinematics/slots.ts";
import { camber } from "../../measures/camber.ts";
import { caster } from "../../measures/caster.ts";
import { sideAt } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import { toe } from "../../measures/toe.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { CarReading, Stood } from "../../vehicle/car-readings/reading.ts";
import { tapeTolerance } from "../../vehicle/car-readings/tolerances.ts";
import { placeOf } from "./places.ts";
import { inputTurning, turnAt } from "./turned.ts";

/** A number that was read, and what a car gives in its place. mm or rad. */
export interface Prediction {
  readonly reading: CarReading;
  /** The wheel that is predicted, of a turn. */
  readonly wheel: Wheel | null;
  readonly kind: "length" | "angle";
  readonly read: number;
  /** Two standard deviations of the reading, what it was set by included. */
  readonly tolerance: number;
  /** Null where the car cannot be brought there. */
  readonly predict: (study: Study) => number | null;
}

type Turn = CarReading & { readonly kind: "turn" };

const wheels: readonly Wheel[] = ["left", "right"];

/** Everything that was read, each number by itself. `study` is the car as it is on file. */
export function predictionsOf(readings: readonly CarReading[], study: Study): readonly Prediction[] {
  return readings.flatMap((reading): readonly Prediction[] => {
    if (reading.kind === "turn") return turnPredictions(reading, study);
    return [{ reading, wheel: null, tolerance: reading.tolerance, ...predictionOf(reading, study) }];
  });
}

type Plain = Pick<Prediction, "kind" | "read" | "predict">;

function predictionOf(reading: Exclude<CarReading, Turn>, { inputKind }: Study): Plain {
  switch (reading.kind) {
    case "bump":
      return { kind: "angle", read: reading.toe, predict: (study) => toeChange(study, reading.wheel, reading.travel) };
    case "toe":
      return {
        kind: "angle",
        read: reading.value,
        predict: ({ zeroSteer }) => (zeroSteer === null ? null : (zeroSteer.right - zeroSteer.left) / 2),
      };
    case "camber":
    case "caster": {
      const measure = reading.kind === "camber" ? camber : caster;
      return {
        kind: "angle",
        read: reading.value,
        predict: (study) => (study.zero === null ? null : measure(study.ridePose(study.zero), sideAt(reading.wheel))),
      };
    }
    case "rod":
      return { kind: "length", read: reading.value, predict: ({ rodLengths }) => rodLengths[reading.wheel] };
    case "straight":
      return {
        kind: inputKind === "rack" ? "length" : "angle",
        read: reading.value,
        predict: ({ zero }) => zero,
      };
    case "between":
      return {
        kind: "length",
        read: reading.value,
        predict: (study) => {
          const [from, to] = [placeOf(study, reading.from), placeOf(study, reading.to)];
          return from === null || to === null ? null : Math.hypot(...from.map((value, k) => value - to[k]));
        },
      };
  }
}

function toeChange(study: Study, wheel: Wheel, travel: number): number | null {
  if (study.zero === null) return null;
  const at = sideAt(wheel);
  const ride = study.ridePose(study.zero);
  if (ride[at + Side.Blame] !== 0) return null;
  const before = toe(ride, at);
  const pose = study.pose(study.zero, travel, travel);
  return pose[at + Side.Blame] === 0 ? toe(pose, at) - before : null;
}

/** The input at which a reading was taken; null where it is known from the other wheel alone. */
function inputStood({ stood, turn }: Turn, study: Study): number | null {
  if (stood !== "lock") return stood;
  const { left, right } = study.inputTravel;
  return turn === study.inputLeftTurns ? left : -right;
}

/**
 * Where it is known how far the steering stood from its middle, each wheel that was read is a number of its own. Where it
 * is not, the left wheel is set to what it read, and the right one is the number: what is off in the setting comes in by how
 * fast the right wheel turns beside the left one.
 */
function turnPredictions(reading: Turn, before: Study): readonly Prediction[] {
  const sign = reading.turn === "left" ? 1 : -1;
  const toward = (turned: number | null) => (turned === null ? null : sign * turned);
  const { stood, left, right, tolerance } = reading;
  if (stood !== null)
    return wheels.flatMap((wheel): readonly Prediction[] => {
      const read = reading[wheel];
      if (read === null) return [];
      const predict = (study: Study) => {
        const input = inputStood(reading, study);
        return input === null ? null : toward(turnAt(study, wheel, input));
      };
      const set = setBy(before, wheel, stood);
      return [{ reading, wheel, kind: "angle", read, tolerance: Math.hypot(tolerance, set), predict }];
    });
  if (left === null || right === null) return [];
  const other = (study: Study, set: number) => {
    const input = inputTurning(study, "left", sign * set);
    return input === null ? null : toward(turnAt(study, "right", input));
  };
  const [more, less] = [other(before, left + NUDGE), other(before, left - NUDGE)];
  const rate = more === null || less === null ? 1 : (more - less) / (2 * NUDGE);
  return [
    {
      reading,
      wheel: "right",
      kind: "angle",
      read: right,
      tolerance: tolerance * Math.hypot(1, rate),
      predict: (study) => other(study, left),
    },
  ];
}

/**
 * How far a wheel turns, rad, while the rack moves by what the tape that it was set by is good to, for it may have stood so
 * far from where it is said to; 0 against a stop, which no tape sets, and of a column, whose place is read as an angle.
 * Taken as each wheel's own, though both share it: rather too wide than too narrow for either.
 */
function setBy(study: Study, wheel: Wheel, stood: Stood): number {
  if (stood === "lock" || study.inputKind !== "rack") return 0;
  const tape = tapeTolerance(study.car.form.units);
  const [more, less] = [turnAt(study, wheel, stood + tape / 2), turnAt(study, wheel, stood - tape / 2)];
  return more === null || less === null ? 0 : Math.abs(more - less);
}

/** Half a degree, rad. */
const NUDGE = Math.PI / 360;
