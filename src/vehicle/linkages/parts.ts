import type { Body, Fault, Joint } from "../linkage.ts";
import { distance, distanceFromLine, type Place, type PlaceAt, samePlace } from "../places.ts";
import type { Role } from "../quantity.ts";
import { formatAngle } from "../units/format.ts";
import { type Groups, pointValues, type Value } from "../value.ts";

// Parts that several linkages have. A part is described once, so that a car keeps it when its linkage changes.

/** A part that is welded or bolted where it is: it has a build tolerance, but nobody moves it by a sixteenth. */
export const built: readonly Role[] = ["build", "uncertain"];

/** A place that is made to a drawing: a search may move it where its builder gives it room, and never by itself. */
export const placed: readonly Role[] = ["find", ...built];

/** An arm's joint at the upright. `label` is "Lower arm" or "Upper arm". */
function jointValues(arm: string, label: string): readonly Value[] {
  return pointValues([arm, "joint"], `${label}, joint`, `Joint of the ${label.toLowerCase()} at the upright`, placed);
}

/** An arm on two pivots: the front pivot, the rear pivot and the joint. */
export function armValues(arm: string, label: string): readonly Value[] {
  const words = label.toLowerCase();
  return [
    ...pointValues([arm, "front"], `${label}, front pivot`, `Front pivot of the ${words} on the frame`, placed),
    ...pointValues([arm, "rear"], `${label}, rear pivot`, `Rear pivot of the ${words} on the frame`, placed),
    ...jointValues(arm, label),
  ];
}

/** What the mappings of an arm on two pivots are for. */
export function armGroups(arm: string, label: string): Groups {
  return {
    [arm]: `The ${label}: two pivots on the frame and the joint at the upright.`,
    [`${arm}.front`]: `Front pivot of the ${label} on the frame.`,
    [`${arm}.rear`]: `Rear pivot of the ${label} on the frame.`,
    [`${arm}.joint`]: `Joint of the ${label} at the upright.`,
  };
}

/** What keeps an arm on two pivots from being one. */
export function armFaults(arm: string, place: PlaceAt): readonly Fault[] {
  const [front, rear, joint] = [place(`${arm}.front`), place(`${arm}.rear`), place(`${arm}.joint`)];
  if (distance(front, rear) < samePlace)
    return [
      {
        path: [arm, "rear"],
        message: "the arm's front and rear pivots are at the same place, so that it has no axis to turn about",
      },
    ];
  if (distanceFromLine(joint, front, rear) < samePlace)
    return [
      {
        path: [arm, "joint"],
        message: "the arm's joint lies on the line through its two pivots, so that the arm has no length",
      },
    ];
  return [];
}

/** An arm on two pivots as a part that moves, and which end of the steering axis it carries. */
export function armBody(arm: string, label: string, end: "lower" | "upper"): Body {
  const joint = `${arm}.joint`;
  return {
    name: arm,
    label,
    moves: { about: [`${arm}.rear`, `${arm}.front`], joint, end },
    tubes: [
      [`${arm}.front`, joint],
      [`${arm}.rear`, joint],
    ],
  };
}

/** The joints of an arm on two pivots. */
export function armJoints(arm: string, label: string): readonly Joint[] {
  return [
    {
      path: [arm, "joint"],
      label: `${label}, outer joint`,
      shankOn: arm,
      boltOn: "upright",
      from: [`${arm}.front`, `${arm}.rear`],
    },
    { path: [arm, "front"], label: `${label}, front pivot`, shankOn: arm, boltOn: "frame", from: [`${arm}.joint`] },
    { path: [arm, "rear"], label: `${label}, rear pivot`, shankOn: arm, boltOn: "frame", from: [`${arm}.joint`] },
  ];
}

/** An arm that trails from an axis straight across the car: a place on that axis, and the joint. */
export function trailingArmValues(arm: string, label: string): readonly Value[] {
  const help = `Middle of the ${label.toLowerCase()}'s pivot, whose axis runs straight across the car`;
  return [...pointValues([arm, "pivot"], `${label}, pivot`, help, placed), ...jointValues(arm, label)];
}

/** What the mappings of a trailing arm are for. */
export function trailingArmGroups(arm: string, label: string): Groups {
  return {
    [arm]: `The ${label}: its pivot and its joint at the upright.`,
    [`${arm}.pivot`]: `Pivot of the ${label}. Its ahead and up matter; its out only places the arm in drawings.`,
    [`${arm}.joint`]: `Joint of the ${label} at the upright.`,
  };
}

/** A trailing arm as a part that moves. */
export function trailingArmBody(arm: string, label: string, end: "lower" | "upper"): Body {
  const [pivot, joint] = [`${arm}.pivot`, `${arm}.joint`];
  return { name: arm, label, moves: { across: pivot, joint, end }, tubes: [[pivot, joint]] };
}

/** The joint of a trailing arm at the upright. */
export function trailingArmJoint(arm: string, label: string): Joint {
  return {
    path: [arm, "joint"],
    label: `${label}, outer joint`,
    shankOn: arm,
    boltOn: "upright",
    from: [`${arm}.pivot`],
  };
}

/** The king pin: the upright's axis as its two ends. */
export const kingPinValues: readonly Value[] = [
  ...pointValues(["king-pin", "lower"], "King pin, lower end", "Lower end of the king pin", placed),
  ...pointValues(["king-pin", "upper"], "King pin, upper end", "Upper end of the king pin", placed),
];

export const kingPinGroups: Groups = {
  "king-pin": "The king pin, about which the upright turns.",
  "king-pin.lower": "Lower end of the king pin: any place low on its centre line.",
  "king-pin.upper": "Upper end of the king pin: any place high on its centre line.",
};

/** The two ends of a steering axis, the words for them and where the upper one is written. */
interface Ends {
  readonly lower: Place;
  readonly upper: Place;
  readonly words: string;
  readonly path: readonly string[];
}

/** A steering axis that leans further than this from upright is a slip of the pen: joints exchanged, or a height left out. */
const mostLean = (75 * Math.PI) / 180;

function leanWords(words: string, lean: number): string {
  const found = `found ${formatAngle(lean, 0)} degrees, expected at most ${formatAngle(mostLean, 0)}`;
  return `the steering axis, through ${words}, leans too far from upright: ${found}. The upper one stands above the lower`;
}

/** What keeps an upright from being turned by its tie rod: no steering axis, or a tab on it. */
export function steeringAxisFaults({ lower, upper, words, path }: Ends, place: PlaceAt): readonly Fault[] {
  if (distance(lower, upper) < samePlace)
    return [{ path, message: `${words} are at the same place, so that there is no steering axis` }];
  const lean = Math.atan2(Math.hypot(upper[0] - lower[0], upper[1] - lower[1]), upper[2] - lower[2]);
  if (lean > mostLean) return [{ path, message: leanWords(words, lean) }];
  if (distanceFromLine(place("tie-rod.outer"), lower, upper) < samePlace)
    return [
      {
        path: ["tie-rod", "outer"],
        message: "the tie rod's outer joint lies on the steering axis, so that the rod cannot turn the wheel",
      },
    ];
  return [];
}

/** The same of a king pin. */
export function kingPinFaults(place: PlaceAt): readonly Fault[] {
  const [lower, upper] = [place("king-pin.lower"), place("king-pin.upper")];
  return steeringAxisFaults({ lower, upper, words: "the king pin's two ends", path: ["king-pin", "upper"] }, place);
}
