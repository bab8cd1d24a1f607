import type { Linkage } from "../linkage.ts";
import { armBody, armFaults, armGroups, armJoints, armValues, steeringAxisFaults } from "./parts.ts";

/** Two arms that each turn about an axis on the frame and carry the upright between their joints. */
export const doubleArm = {
  name: "double-arm",
  label: "Double A-arms",
  gist: "two arms a side, each on two pivots",
  help: "An upper and a lower arm, each on two pivots on the frame, with the upright between their joints.",
  values: [...armValues("lower-arm", "Lower arm"), ...armValues("upper-arm", "Upper arm")],
  groups: { ...armGroups("lower-arm", "lower arm"), ...armGroups("upper-arm", "upper arm") },
  bodies: [armBody("lower-arm", "lower arm", "lower"), armBody("upper-arm", "upper arm", "upper")],
  joints: [...armJoints("lower-arm", "lower arm"), ...armJoints("upper-arm", "upper arm")],
  faults: (place) => [
    ...armFaults("lower-arm", place),
    ...armFaults("upper-arm", place),
    ...steeringAxisFaults(
      {
        lower: place("lower-arm.joint"),
        upper: place("upper-arm.joint"),
        words: "the upper and the lower joint",
        path: ["upper-arm", "joint"],
      },
      place,
    ),
  ],
} as const satisfies Linkage;
