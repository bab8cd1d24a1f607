import type { Linkage } from "../linkage.ts";
import { kingPinFaults, kingPinGroups, kingPinValues } from "./parts.ts";

/** A king pin welded to the frame: no suspension. */
export const fixedKingpin = {
  name: "fixed-kingpin",
  label: "Fixed king pins",
  gist: "no suspension, as on a kart",
  help: "A king pin fixed to the frame, as on a kart: no suspension, so no wheel-travel.",
  noTravel: "a front end on fixed king pins has no suspension, so its wheels have no travel: leave wheel-travel out",
  values: kingPinValues,
  groups: kingPinGroups,
  bodies: [],
  joints: [],
  faults: kingPinFaults,
} as const satisfies Linkage;
