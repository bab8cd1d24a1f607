import type { Fault, Linkage } from "../linkage.ts";
import { distance, distanceFromLine, type PlaceAt, samePlace } from "../places.ts";
import { pointValues } from "../value.ts";
import { kingPinFaults, kingPinGroups, kingPinValues, placed } from "./parts.ts";

function beamFaults(place: PlaceAt): readonly Fault[] {
  const [pivot, brace] = [place("beam.pivot"), place("beam.brace")];
  if (distance(pivot, brace) < samePlace)
    return [
      {
        path: ["beam", "brace"],
        message: "the beam's pivot and its radius arm's are at the same place, so that it has no axis to turn about",
      },
    ];
  return (["lower", "upper"] as const)
    .filter((end) => distanceFromLine(place(`king-pin.${end}`), pivot, brace) < samePlace)
    .map((end) => ({
      path: ["king-pin", end],
      message: "the king pin's end lies on the line that the beam turns about, so that the beam cannot lift it",
    }));
}

/** A beam that pivots on the frame, one a side, held by a radius arm, with the king pin at its end. */
export const pivotingBeam = {
  name: "pivoting-beam",
  label: "Pivoting beams",
  gist: "a beam a side, held by a radius arm",
  help: "A beam a side that pivots on the frame and is held by a radius arm, with the king pin at its outer end.",
  values: [
    ...pointValues(
      ["beam", "pivot"],
      "Beam, pivot",
      "Pivot of this wheel's beam on the frame; out is negative where the beam crosses the centreline",
      placed,
    ),
    ...pointValues(
      ["beam", "brace"],
      "Beam, radius arm",
      "Frame end of the radius arm that holds the beam: beam and arm turn about the line from here to the pivot",
      placed,
    ),
    ...kingPinValues,
  ],
  groups: {
    beam: "The beam: it turns about the line through its pivot and the frame end of its radius arm.",
    "beam.pivot": "Pivot of the beam on the frame.",
    "beam.brace": "Frame end of the beam's radius arm.",
    ...kingPinGroups,
  },
  bodies: [
    {
      name: "beam",
      label: "beam",
      moves: { about: ["beam.brace", "beam.pivot"], joint: "king-pin.lower", end: "lower" },
      tubes: [
        ["beam.pivot", "king-pin.lower"],
        ["beam.brace", "king-pin.lower"],
      ],
    },
  ],
  joints: [
    { path: ["beam", "pivot"], label: "beam, pivot", shankOn: "beam", boltOn: "frame", from: ["king-pin.lower"] },
    { path: ["beam", "brace"], label: "beam, radius arm", shankOn: "beam", boltOn: "frame", from: ["king-pin.lower"] },
  ],
  faults: (place) => [...beamFaults(place), ...kingPinFaults(place)],
} as const satisfies Linkage;
