import { stopGroups, stopValues } from "./stops.ts";
import type { Groups, Value } from "./value.ts";

/** The numbers of the whole car, below the root of the file. */
export const wholeValues: readonly Value[] = [
  {
    path: ["wheelbase"],
    kind: "length",
    label: "Wheelbase",
    help: "From the front-axle line back to the rear-axle line.",
    low: 300,
    high: 10000,
    absent: null,
    roles: ["build"],
  },
  {
    path: ["tire", "radius"],
    kind: "length",
    label: "Tyre radius",
    help: "Front tyre's loaded radius: from the ground up to the wheel centre.",
    low: 50,
    high: 1200,
    absent: null,
    roles: [],
  },
  {
    path: ["tire", "width"],
    kind: "length",
    label: "Tyre width",
    help: "Front tyre's width. Left out, it counts as not known.",
    low: 10,
    high: 1000,
    absent: 0,
    roles: [],
  },
  {
    path: ["rim", "diameter"],
    kind: "length",
    label: "Rim diameter",
    help: "Front rim's diameter at the bead seat. Left out, it counts as not known.",
    low: 50,
    high: 1200,
    absent: 0,
    roles: [],
  },
  {
    path: ["rim", "width"],
    kind: "length",
    label: "Rim width",
    help: "Front rim's width between its flanges. Left out, it counts as not known.",
    low: 10,
    high: 1000,
    absent: 0,
    roles: [],
  },
  ...stopValues,
];

/** The numbers of a car that has suspension, below the root of the file. */
export const travelValues: readonly Value[] = [
  {
    path: ["wheel-travel", "bump"],
    kind: "length",
    label: "Bump travel",
    help: "How far the wheel centre rises from ride height to full bump.",
    low: 0,
    high: 800,
    absent: null,
    roles: [],
  },
  {
    path: ["wheel-travel", "droop"],
    kind: "length",
    label: "Droop travel",
    help: "How far the wheel centre falls from ride height to full droop; a positive number.",
    low: 0,
    high: 800,
    absent: null,
    roles: [],
  },
];

/** What the mappings at the root are for. */
export const wholeGroups: Groups = {
  tire: "The front tyre.",
  rim: "The front rim.",
  ...stopGroups,
  "wheel-travel": "Travel of the front wheel centres from ride height, both ways. Required where there is suspension.",
};
