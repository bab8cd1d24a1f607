import type { Mechanism } from "../mechanism.ts";
import { eyeGroups, eyeValues, rackValues, wheelLeftMoves } from "./parts.ts";

const on = "on the rack's bar at mid-travel";

/** A rack that slides across the car, with both tie rods on a bar at its middle. */
export const centreRack = {
  name: "centre-rack",
  word: "rack",
  takeOff: "centre",
  section: "rack",
  input: "rack",
  label: "Rack, rods at its centre",
  gist: "both rods on a bar at the rack's middle",
  help: "A rack that slides across the car, with both tie rods on a bar at its middle.",
  values: [...eyeValues("rack", "Rack bar", on), ...rackValues],
  choices: [
    {
      path: ["rack", "take-off"],
      help: "Where the tie rods start: at the rack's centre, on a bar fixed to it.",
      words: ["centre"],
      required: true,
    },
    wheelLeftMoves,
  ],
  groups: {
    rack: "The steering rack, whose tie rods start on a bar at its middle.",
    ...eyeGroups("rack", on),
  },
  faults: () => [],
} as const satisfies Mechanism;
