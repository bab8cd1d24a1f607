import type { Fault } from "../linkage.ts";
import type { Mechanism } from "../mechanism.ts";
import { distance, distanceFromLine, type Place, samePlace } from "../places.ts";
import { degree, pointValues, type Value } from "../value.ts";
import { columnValues, eyeGroups, eyeValues, movable } from "./parts.ts";

const on = "on the centre link with the steering wheel straight (column at 0)";

const arms = { pitman: "Pitman arm", idler: "Idler arm" } as const;
type Arm = keyof typeof arms;

/** The lean of an arm's pivot, seen from one side. */
function leanValue(arm: Arm, key: string, words: string): Value {
  return {
    path: ["relay", arm, key],
    kind: "angle",
    label: `${arms[arm]}, ${key.replace("-", " ")}`,
    help: `Lean of the ${arms[arm].toLowerCase()}'s pivot shaft ${words}. Left out, 0: the shaft is upright.`,
    low: -80 * degree,
    high: 80 * degree,
    absent: 0,
    roles: movable,
  };
}

function armValues(arm: Arm): readonly Value[] {
  const name = arms[arm];
  const words = name.toLowerCase();
  const pivot = `A place on the centre line of the ${words}'s pivot shaft, at the arm`;
  const joint = `Joint of the ${words} and the centre link with the steering wheel straight`;
  return [
    ...pointValues(["relay", arm, "pivot"], `${name}, pivot`, pivot, movable, "offset"),
    ...pointValues(["relay", arm, "joint"], `${name}, joint`, joint, movable, "offset"),
    leanValue(arm, "lean-back", "seen from the side, degrees, top rearward positive"),
    leanValue(arm, "lean-left", "seen from the front, degrees, top to the driver's left positive"),
  ];
}

const ratio: Value = {
  path: ["relay", "ratio"],
  kind: "ratio",
  label: "Steering box ratio",
  help: "Turns of the steering wheel for one whole turn of the pitman arm, such as 16.",
  low: 0.5,
  high: 60,
  absent: null,
  roles: ["adjust"],
};

/** An arm of no length, or a centre link of none. */
function faults(read: (path: string) => number): readonly Fault[] {
  const place = (path: string): Place => [
    read(`relay.${path}.ahead`),
    read(`relay.${path}.offset`),
    read(`relay.${path}.up`),
  ];
  const found = (["pitman", "idler"] as const).flatMap((arm): readonly Fault[] => {
    const pivot = place(`${arm}.pivot`);
    const back = Math.tan(read(`relay.${arm}.lean-back`));
    const left = Math.tan(read(`relay.${arm}.lean-left`));
    const along: Place = [pivot[0] - 1000 * back, pivot[1] + 1000 * left, pivot[2] + 1000];
    if (distanceFromLine(place(`${arm}.joint`), pivot, along) >= samePlace) return [];
    const message = "the arm's joint lies on the centre line of its pivot shaft, so that the arm has no length";
    return [{ path: ["relay", arm, "joint"], message }];
  });
  if (distance(place("pitman.joint"), place("idler.joint")) >= samePlace) return found;
  const message = "the pitman arm's and the idler arm's joints are at the same place, so that the link has no length";
  return [...found, { path: ["relay", "idler", "joint"], message }];
}

/** A steering box's pitman arm and an idler arm that carry a centre link, with both tie rods on it. */
export const relay = {
  name: "relay",
  word: "relay",
  takeOff: null,
  section: "relay",
  input: "column",
  label: "Relay",
  gist: "steering box, pitman arm, idler, centre link",
  help: "A steering box whose pitman arm, with an idler arm, moves a centre link that both tie rods start from.",
  values: [
    ...armValues("pitman"),
    ...armValues("idler"),
    ...eyeValues("relay", "Centre-link eye", on),
    ratio,
    ...columnValues("relay", 3600 * degree),
  ],
  choices: [
    {
      path: ["relay", "turns"],
      help: "Which way the pitman arm turns, seen from above: with the steering wheel, or against it.",
      words: ["with", "against"],
      required: true,
    },
  ],
  groups: {
    relay: "The steering box's pitman arm, the idler arm, and the centre link between them.",
    "relay.pitman": "The pitman arm, on the steering box's shaft.",
    "relay.pitman.pivot": "A place on the centre line of the steering box's shaft.",
    "relay.pitman.joint": "Joint of the pitman arm and the centre link.",
    "relay.idler": "The idler arm, on its own bracket.",
    "relay.idler.pivot": "A place on the centre line of the idler arm's shaft.",
    "relay.idler.joint": "Joint of the idler arm and the centre link.",
    ...eyeGroups("relay", on),
  },
  faults,
} as const satisfies Mechanism;
