import type { Mechanism } from "../mechanism.ts";
import { movable, rackValues, wheelLeftMoves } from "./parts.ts";

/** A rack that slides across the car, with one tie rod at each of its two ends. */
export const rack = {
  name: "rack",
  word: "rack",
  takeOff: "end",
  section: "rack",
  input: "rack",
  label: "Rack, rods at its ends",
  gist: "the usual rack and pinion",
  help: "A rack that slides across the car, with a tie rod at each of its two inner eyes.",
  values: [
    {
      path: ["rack", "ahead"],
      kind: "length",
      label: "Rack, ahead",
      help: "Line of the rack's inner eyes: how far ahead of the front-axle line, behind it negative.",
      low: -2000,
      high: 2000,
      absent: null,
      roles: movable,
    },
    {
      path: ["rack", "up"],
      kind: "length",
      label: "Rack, up",
      help: "Midpoint between the rack's inner eyes: how far above the ground at ride height.",
      low: -500,
      high: 2000,
      absent: null,
      roles: movable,
    },
    {
      path: ["rack", "eye-to-eye"],
      kind: "length",
      label: "Rack, eye to eye",
      help: "Distance between the two inner eyes, along the rack; 0 where both rods start at one place.",
      low: 0,
      high: 2500,
      absent: null,
      roles: movable,
    },
    {
      path: ["rack", "offset"],
      kind: "length",
      label: "Rack offset",
      help: "Midpoint between the inner eyes at mid-travel: how far to the driver's left of the car's centreline, to his right negative. Left out, 0.",
      low: -1000,
      high: 1000,
      absent: 0,
      roles: movable,
    },
    ...rackValues,
  ],
  choices: [
    {
      path: ["rack", "take-off"],
      help: "Where the tie rods start: at the rack's ends, or at its centre. Left out, at its ends.",
      words: ["end"],
      required: false,
    },
    wheelLeftMoves,
  ],
  groups: { rack: "The steering rack. Sideways lengths are to the driver's left." },
  faults: () => [],
} as const satisfies Mechanism;
