import type { Fault } from "../linkage.ts";
import type { Mechanism } from "../mechanism.ts";
import { distanceFromLine, type Place, samePlace } from "../places.ts";
import { degree, type Value } from "../value.ts";
import { columnValues, eyeGroups, eyeValues, movable } from "./parts.ts";

const on = "on the plate with the steering wheel straight (column at 0)";

const footValues: readonly Value[] = [
  {
    path: ["steering-plate", "ahead"],
    kind: "length",
    label: "Column, ahead",
    help: "A place on the column's centre line, at the plate: how far ahead of the front-axle line, behind it negative.",
    low: -2000,
    high: 2000,
    absent: null,
    roles: movable,
  },
  {
    path: ["steering-plate", "offset"],
    kind: "length",
    label: "Column offset",
    help: "The same place: how far to the driver's left of the car's centreline, to his right negative. Left out, 0.",
    low: -1000,
    high: 1000,
    absent: 0,
    roles: movable,
  },
  {
    path: ["steering-plate", "up"],
    kind: "length",
    label: "Column, up",
    help: "The same place: how far above the ground at ride height.",
    low: -500,
    high: 2000,
    absent: null,
    roles: movable,
  },
  {
    path: ["steering-plate", "rake"],
    kind: "angle",
    label: "Column rake",
    help: "Rise of the column toward the driver, degrees above level: 0 is a level column, 90 an upright one.",
    low: -30 * degree,
    high: 90 * degree,
    absent: null,
    roles: movable,
  },
];

/** An eye on the column's own axis goes nowhere as the plate turns. */
function faults(read: (path: string) => number): readonly Fault[] {
  const at = (key: string) => read(`steering-plate.${key}`);
  const foot: Place = [at("ahead"), at("offset"), at("up")];
  const rake = at("rake");
  const along: Place = [foot[0] - 1000 * Math.cos(rake), foot[1], foot[2] + 1000 * Math.sin(rake)];
  const ways = [
    ["left-eye", 1],
    ["right-eye", -1],
  ] as const;
  return ways.flatMap(([eye, hand]) => {
    const place: Place = [at(`${eye}.ahead`), hand * at(`${eye}.out`), at(`${eye}.up`)];
    if (distanceFromLine(place, foot, along) >= samePlace) return [];
    const message = "the eye lies on the column's centre line, so that the plate cannot move it";
    return [{ path: ["steering-plate", eye], message }];
  });
}

/** A plate on the steering column that carries both tie rods' inner joints around the column's axis. */
export const steeringPlate = {
  name: "steering-plate",
  word: "steering-plate",
  takeOff: null,
  section: "steering-plate",
  input: "column",
  label: "Steering plate",
  gist: "both rods on a plate turned by the column",
  help: "A plate on the end of the steering column, as on a kart, with both tie rods on it.",
  values: [
    ...footValues,
    ...eyeValues("steering-plate", "Plate eye", on),
    ...columnValues("steering-plate", 180 * degree),
  ],
  choices: [],
  groups: {
    "steering-plate": "The column and its plate: a place on the column's centre line, its rake, and the two eyes.",
    ...eyeGroups("steering-plate", on),
  },
  faults,
} as const satisfies Mechanism;
