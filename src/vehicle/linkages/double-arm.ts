import type { Fault, Linkage } from "../linkage.ts";
import { distance, distanceFromLine, type Place, samePlace } from "../places.ts";
import type { Role } from "../quantity.ts";
import { type Groups, pointValues, type Value } from "../value.ts";

const roles: readonly Role[] = ["build", "uncertain"];

/** The three points of one arm. */
function armValues(arm: string, label: string): readonly Value[] {
  const words = label.toLowerCase();
  return [
    ...pointValues([arm, "front"], `${label}, front pivot`, `Front pivot of the ${words} on the frame`, roles),
    ...pointValues([arm, "rear"], `${label}, rear pivot`, `Rear pivot of the ${words} on the frame`, roles),
    ...pointValues([arm, "joint"], `${label}, joint`, `Joint of the ${words} at the upright`, roles),
  ];
}

function armGroups(arm: string, label: string): Groups {
  return {
    [arm]: `The ${label}: two pivots on the frame and the joint at the upright.`,
    [`${arm}.front`]: `Front pivot of the ${label} on the frame.`,
    [`${arm}.rear`]: `Rear pivot of the ${label} on the frame.`,
    [`${arm}.joint`]: `Joint of the ${label} at the upright.`,
  };
}

function armFaults(arm: string, place: (path: string) => Place): readonly Fault[] {
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

/** Two arms that each turn about an axis on the frame and carry the upright between their joints. */
export const doubleArm = {
  name: "double-arm",
  help: "An upper and a lower arm, each on two pivots on the frame, with the upright between their joints.",
  values: [...armValues("lower-arm", "Lower arm"), ...armValues("upper-arm", "Upper arm")],
  groups: { ...armGroups("lower-arm", "lower arm"), ...armGroups("upper-arm", "upper arm") },
  faults: (place) => {
    const [lower, upper, outer] = [place("lower-arm.joint"), place("upper-arm.joint"), place("tie-rod.outer")];
    const faults = [...armFaults("lower-arm", place), ...armFaults("upper-arm", place)];
    if (distance(lower, upper) < samePlace)
      faults.push({
        path: ["upper-arm", "joint"],
        message: "the upper and the lower joint are at the same place, so that there is no steering axis",
      });
    else if (distanceFromLine(outer, lower, upper) < samePlace)
      faults.push({
        path: ["tie-rod", "outer"],
        message: "the tie rod's outer joint lies on the steering axis, so that the rod cannot turn the wheel",
      });
    return faults;
  },
} as const satisfies Linkage;
