import type { Fault, Linkage } from "../linkage.ts";
import { type PlaceAt, samePlace } from "../places.ts";
import {
  steeringAxisFaults,
  trailingArmBody,
  trailingArmGroups,
  trailingArmJoint,
  trailingArmValues,
} from "./parts.ts";

/** An arm whose joint lies on its crosswise axis, or a pivot without one, has no length seen from the side. */
function armFaults(arm: string, place: PlaceAt): readonly Fault[] {
  const [pivot, joint] = [place(`${arm}.pivot`), place(`${arm}.joint`)];
  if (Math.hypot(joint[0] - pivot[0], joint[2] - pivot[2]) >= samePlace) return [];
  const message =
    "the arm's joint lies on the axis of its pivot, seen from the side at the same place, so that the arm has no length";
  return [{ path: [arm, "joint"], message }];
}

/** Two arms that trail from axes straight across the car, as on a torsion-tube beam. */
export const trailingArms = {
  name: "trailing-arms",
  label: "Trailing arms",
  gist: "two arms a side, pivots straight across",
  help: "An upper and a lower arm that trail from pivots straight across the car, as on a torsion-tube beam.",
  values: [...trailingArmValues("lower-arm", "Lower arm"), ...trailingArmValues("upper-arm", "Upper arm")],
  groups: { ...trailingArmGroups("lower-arm", "lower arm"), ...trailingArmGroups("upper-arm", "upper arm") },
  bodies: [trailingArmBody("lower-arm", "lower arm", "lower"), trailingArmBody("upper-arm", "upper arm", "upper")],
  joints: [trailingArmJoint("lower-arm", "lower arm"), trailingArmJoint("upper-arm", "upper arm")],
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
