import type { Fault, Linkage } from "../linkage.ts";
import { distance, type PlaceAt, samePlace } from "../places.ts";
import { pointValues } from "../value.ts";
import { armBody, armFaults, armGroups, armJoints, armValues, built, placed, steeringAxisFaults } from "./parts.ts";

function lineFaults(place: PlaceAt): readonly Fault[] {
  if (distance(place("strut.top"), place("strut.bottom")) >= samePlace) return [];
  const message = "the strut's top and bottom are at the same place, so that it has no line to slide along";
  return [{ path: ["strut", "bottom"], message }];
}

/** A lower arm, and a strut fixed to the upright that slides through its top mount on the frame. */
export const strut = {
  name: "strut",
  label: "Strut",
  gist: "a lower arm, and a strut up to its top mount",
  help: "A lower arm on two pivots on the frame, and a strut fixed to the upright that slides up to its top mount.",
  values: [
    ...armValues("lower-arm", "Lower arm"),
    ...pointValues(["strut", "top"], "Strut, top mount", "Middle of the strut's top mount on the frame", placed),
    ...pointValues(
      ["strut", "bottom"],
      "Strut, bottom",
      "Any place low on the centre line that the strut slides along, at the upright",
      built,
    ),
  ],
  groups: {
    ...armGroups("lower-arm", "lower arm"),
    strut: "The strut: two places on the centre line that it slides along. The wheel steers about its top mount.",
    "strut.top": "The strut's top mount on the frame.",
    "strut.bottom": "Any place low on the strut's centre line, at the upright.",
  },
  bodies: [
    armBody("lower-arm", "lower arm", "lower"),
    { name: "strut", label: "strut", moves: "with the upright", tubes: [["strut.bottom", "strut.top"]] },
  ],
  joints: armJoints("lower-arm", "lower arm"),
  faults: (place) => [
    ...armFaults("lower-arm", place),
    ...lineFaults(place),
    ...steeringAxisFaults(
      {
        lower: place("lower-arm.joint"),
        upper: place("strut.top"),
        words: "the strut's top mount and the lower joint",
        path: ["strut", "top"],
      },
      place,
    ),
  ],
} as const satisfies Linkage;
