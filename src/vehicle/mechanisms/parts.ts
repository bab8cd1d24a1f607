import type { Role } from "../quantity.ts";
import { degree, type Groups, pointValues, type Value } from "../value.ts";
import type { Wheel } from "../words.ts";

// What several steering mechanisms have.

/** A part that a builder moves, searches, builds to a tolerance and measures again. */
export const movable: readonly Role[] = ["adjust", "find", "build", "uncertain"];

const wheels: readonly Wheel[] = ["left", "right"];

/** Both tie rods' inner joints, as places of their own. `on` says what carries them and when they stand there. */
export function eyeValues(section: string, label: string, on: string): readonly Value[] {
  const of = (wheel: Wheel, key: string) =>
    pointValues([section, key], label, `Inner joint of the ${wheel} tie rod, ${on}`, movable);
  return wheels.flatMap((wheel) =>
    of(wheel, `${wheel}-eye`).map((value) => ({
      ...value,
      twin: { wheel, path: [section, "eye", ...value.path.slice(2)] },
    })),
  );
}

export function eyeGroups(section: string, on: string): Groups {
  return Object.fromEntries(
    wheels.map((wheel) => [
      `${section}.${wheel}-eye`,
      `Inner joint of the ${wheel} tie rod, ${on}; its out is negative across the centreline.`,
    ]),
  );
}

/** How far a rack slides each way, and where it stands at straight ahead. */
export const rackValues: readonly Value[] = [
  {
    path: ["rack", "tilt"],
    kind: "angle",
    label: "Rack tilt",
    help: "Slope of the rack seen from the front or rear, degrees, left end up positive. Left out, 0.",
    low: -60 * degree,
    high: 60 * degree,
    absent: 0,
    roles: ["find", "build", "uncertain"],
  },
  {
    path: ["rack", "straight-ahead"],
    kind: "length",
    label: "Rack at straight ahead",
    help: "Where the rack stands, from mid-travel, when the wheels are straight as drawn, to the driver's left positive. Left out, 0.",
    low: -500,
    high: 500,
    absent: 0,
    roles: movable,
  },
  {
    path: ["rack", "travel"],
    kind: "length",
    label: "Rack travel",
    help: "How far the rack moves from mid-travel to its end, to the driver's left and to his right; one number means the same each way.",
    low: 1,
    high: 1000,
    absent: null,
    roles: ["adjust", "uncertain"],
    eachWay: true,
  },
  {
    path: ["rack", "per-turn"],
    kind: "length",
    label: "Rack, per turn",
    help: "How far the rack moves for one turn of the steering wheel. Left out, it counts as not known.",
    low: 1,
    high: 1000,
    absent: 0,
    roles: [],
  },
];

/** How far a steering column turns each way, and where it stands at straight ahead. */
export function columnValues(section: string, most: number): readonly Value[] {
  return [
    {
      path: [section, "straight-ahead"],
      kind: "angle",
      label: "Column at straight ahead",
      help: "Where the steering column stands, degrees from its middle, when the wheels are straight as drawn, turned left positive. Left out, 0.",
      low: -most,
      high: most,
      absent: 0,
      roles: movable,
    },
    {
      path: [section, "travel"],
      kind: "angle",
      label: "Column travel",
      help: "How far the steering column turns from its middle to its stop, degrees, to the left and to the right; one number means the same each way.",
      low: degree,
      high: most,
      absent: null,
      roles: ["adjust", "uncertain"],
      eachWay: true,
    },
  ];
}

/** The choice that a rack's file says its direction by. */
export const wheelLeftMoves = {
  path: ["rack", "wheel-left-moves"],
  help: "The way the rack moves when the steering wheel is turned left. Left out, it counts as not known.",
  words: ["left", "right"],
  required: false,
} as const;
