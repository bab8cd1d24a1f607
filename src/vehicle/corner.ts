import { degree, type Groups, pointValues, type Value } from "./value.ts";

/** The numbers of a corner that every linkage has, below front.both, front.left or front.right. */
export const cornerValues: readonly Value[] = [
  ...pointValues(["tie-rod", "outer"], "Tie-rod tab", "Centre of the tie rod's outer joint, on the upright", [
    "adjust",
    "find",
    "build",
    "uncertain",
  ]),
  {
    path: ["tie-rod", "length"],
    kind: "length",
    label: "Tie-rod length",
    help: "Tie rod, eye to eye. Left out, the rod is cut to fit the drawn toe; written, the rod is as cut.",
    low: 20,
    high: 2500,
    absent: 0,
    roles: ["adjust", "build", "uncertain"],
  },
  ...pointValues(["wheel", "center"], "Wheel centre", "Centre of the wheel, in the middle of its width", [
    "build",
    "uncertain",
  ]),
  {
    path: ["wheel", "camber"],
    kind: "angle",
    label: "Camber",
    help: "Lean of the wheel at ride height, degrees, top outward positive. Left out, 0.",
    low: -20 * degree,
    high: 20 * degree,
    absent: 0,
    roles: ["build", "uncertain"],
  },
  {
    path: ["wheel", "toe"],
    kind: "angle",
    label: "Toe",
    help: "Toe of this wheel at ride height, degrees, toe-in positive. Left out, 0.",
    low: -20 * degree,
    high: 20 * degree,
    absent: 0,
    roles: ["build", "uncertain"],
  },
];

/** What the mappings of a corner are for. */
export const cornerGroups: Groups = {
  "tie-rod": "The tie rod, from the steering's inner joint to the tab on the upright.",
  "tie-rod.outer": "The tie rod's outer joint, on the upright's tab.",
  wheel: "The wheel as drawn at ride height.",
  "wheel.center": "Centre of the wheel.",
};
