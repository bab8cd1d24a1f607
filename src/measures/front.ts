import type { Corner, DoubleArmPoints, Drawn, Point } from "../kinematics/drawn.ts";
import type { Car, Wheel } from "../vehicle/car.ts";
import { indexOf } from "../vehicle/quantities.ts";
import type { Pair } from "./span.ts";

/** Where a corner's numbers stand in Car.numbers, found once. */
interface CornerPlaces {
  readonly arms: { readonly [K in keyof DoubleArmPoints]: PointPlaces };
  readonly tieRodOuter: PointPlaces;
  readonly tieRodLength: number;
  readonly wheelCenter: PointPlaces;
  readonly camber: number;
  readonly toe: number;
}

interface PointPlaces {
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
}

function pointPlaces(id: string): PointPlaces {
  return { ahead: indexOf(`${id}.ahead`), out: indexOf(`${id}.out`), up: indexOf(`${id}.up`) };
}

function cornerPlaces(wheel: Wheel): CornerPlaces {
  return {
    arms: {
      lowerFront: pointPlaces(`${wheel}.lower-arm.front`),
      lowerRear: pointPlaces(`${wheel}.lower-arm.rear`),
      lowerJoint: pointPlaces(`${wheel}.lower-arm.joint`),
      upperFront: pointPlaces(`${wheel}.upper-arm.front`),
      upperRear: pointPlaces(`${wheel}.upper-arm.rear`),
      upperJoint: pointPlaces(`${wheel}.upper-arm.joint`),
    },
    tieRodOuter: pointPlaces(`${wheel}.tie-rod.outer`),
    tieRodLength: indexOf(`${wheel}.tie-rod.length`),
    wheelCenter: pointPlaces(`${wheel}.wheel.center`),
    camber: indexOf(`${wheel}.wheel.camber`),
    toe: indexOf(`${wheel}.wheel.toe`),
  };
}

const PLACES = {
  left: cornerPlaces("left"),
  right: cornerPlaces("right"),
  rack: {
    ahead: indexOf("rack.ahead"),
    up: indexOf("rack.up"),
    eyeToEye: indexOf("rack.eye-to-eye"),
    offset: indexOf("rack.offset"),
    tilt: indexOf("rack.tilt"),
    straightAhead: indexOf("rack.straight-ahead"),
    travel: { left: indexOf("left.rack.travel"), right: indexOf("right.rack.travel") },
  },
  wheelbase: indexOf("wheelbase"),
  tireRadius: indexOf("tire.radius"),
  bump: indexOf("wheel-travel.bump"),
  droop: indexOf("wheel-travel.droop"),
} as const;

/** What a car's front end is used over: its ranges, and what the measures need beside the linkage. Lengths mm. */
export interface Setting {
  readonly wheelbase: number;
  /** Loaded radius of the tyre. */
  readonly tireRadius: number;
  /** The rack's travel from mid-travel to each side, both positive. */
  readonly rackTravel: Pair<number>;
  /** Of the wheel centre from ride height, both positive. */
  readonly wheelTravel: { readonly bump: number; readonly droop: number };
}

/** A car's ranges and its numbers beside the linkage. */
export function settingOf({ numbers }: Pick<Car, "numbers">): Setting {
  return {
    wheelbase: numbers[PLACES.wheelbase],
    tireRadius: numbers[PLACES.tireRadius],
    rackTravel: { left: numbers[PLACES.rack.travel.left], right: numbers[PLACES.rack.travel.right] },
    wheelTravel: { bump: numbers[PLACES.bump], droop: numbers[PLACES.droop] },
  };
}

/** A car's front end as the kernel takes it. A tie rod counts as cut where the file gives its length. */
export function drawnOf(car: Pick<Car, "numbers" | "form">): Drawn {
  const { numbers, form } = car;
  const { rackTravel, wheelTravel } = settingOf(car);
  const rack = PLACES.rack;
  return {
    linkage: { kind: "double-arm", left: armsOf(numbers, "left"), right: armsOf(numbers, "right") },
    mechanism: {
      kind: "rack",
      ahead: numbers[rack.ahead],
      up: numbers[rack.up],
      eyeToEye: numbers[rack.eyeToEye],
      offset: numbers[rack.offset],
      tilt: numbers[rack.tilt],
      straightAhead: numbers[rack.straightAhead],
    },
    left: cornerOf(numbers, "left", form.rods.left === "cut"),
    right: cornerOf(numbers, "right", form.rods.right === "cut"),
    range: {
      inputLow: -rackTravel.right,
      inputHigh: rackTravel.left,
      travelLow: -wheelTravel.droop,
      travelHigh: wheelTravel.bump,
    },
  };
}

function pointOf(numbers: Float64Array, places: PointPlaces): Point {
  return { x: numbers[places.ahead], y: numbers[places.out], z: numbers[places.up] };
}

function armsOf(numbers: Float64Array, wheel: Wheel): DoubleArmPoints {
  const arms = PLACES[wheel].arms;
  return {
    lowerFront: pointOf(numbers, arms.lowerFront),
    lowerRear: pointOf(numbers, arms.lowerRear),
    lowerJoint: pointOf(numbers, arms.lowerJoint),
    upperFront: pointOf(numbers, arms.upperFront),
    upperRear: pointOf(numbers, arms.upperRear),
    upperJoint: pointOf(numbers, arms.upperJoint),
  };
}

function cornerOf(numbers: Float64Array, wheel: Wheel, cut: boolean): Corner {
  const places = PLACES[wheel];
  return {
    tieRodOuter: pointOf(numbers, places.tieRodOuter),
    tieRodLength: cut ? numbers[places.tieRodLength] : null,
    wheelCenter: pointOf(numbers, places.wheelCenter),
    camber: numbers[places.camber],
    toe: numbers[places.toe],
  };
}
