import type { Linkage, Point } from "../../kinematics/drawn.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { LinkageName } from "../../vehicle/linkages.ts";
import type { Place, WheelPoints } from "../points.ts";
import type { Stick } from "./stick.ts";

/** The points of one corner of a linkage of that kind, by the kernel's names. */
type PointsOf<Kind extends LinkageName> = keyof Extract<Linkage, { kind: Kind }>["left"];

/**
 * The arms of each linkage: lines through its points as drawn. Joints on the upright are taken from the solved pose, all
 * other points are on the frame. A new linkage is one entry here.
 */
const ARMS: { readonly [Kind in LinkageName]: readonly (readonly PointsOf<Kind>[])[] } = {
  "double-arm": [
    ["lowerFront", "lowerJoint", "lowerRear"],
    ["upperFront", "upperJoint", "upperRear"],
  ],
  "trailing-arms": [
    ["lowerPivot", "lowerJoint"],
    ["upperPivot", "upperJoint"],
  ],
  strut: [["lowerFront", "lowerJoint", "lowerRear"]],
  "pivoting-beam": [["beamFront", "lowerJoint", "beamRear"]],
  "fixed-kingpin": [],
};

function inVehicle({ x, y, z }: Point, wheel: Wheel): Place {
  return [x, wheel === "left" ? y : -y, z];
}

/** The arms and the upright of one wheel in a solved pose. */
export function linkageSticks(linkage: Linkage, wheel: Wheel, pose: WheelPoints): readonly Stick[] {
  const drawn: Readonly<Record<string, Point>> = { ...linkage[wheel] };
  const moving: Readonly<Partial<Record<string, Place>>> = { ...pose };
  const placeOf = (name: string): readonly Place[] => {
    const here = moving[name];
    if (here !== undefined) return [here];
    const point = drawn[name];
    return point === undefined ? [] : [inVehicle(point, wheel)];
  };
  const arms: readonly (readonly string[])[] = ARMS[linkage.kind];
  return [
    ...arms.map((names): Stick => ({ wheel, part: "arm", places: names.flatMap(placeOf) })),
    { wheel, part: "upright", places: [pose.lowerJoint, pose.upperJoint] },
    { wheel, part: "upright", places: [onAxis(pose, pose.wheelCenter), pose.wheelCenter] },
    { wheel, part: "upright", places: [onAxis(pose, pose.tieRodOuter), pose.tieRodOuter] },
    { wheel, part: "tie-rod", places: [pose.tieRodInner, pose.tieRodOuter] },
  ];
}

/** The place of the steering axis nearest to a place. */
function onAxis({ lowerJoint: a, upperJoint: b }: WheelPoints, [x, y, z]: Place): Place {
  const along = [b[0] - a[0], b[1] - a[1], b[2] - a[2]] as const;
  const size = along[0] ** 2 + along[1] ** 2 + along[2] ** 2;
  const share = ((x - a[0]) * along[0] + (y - a[1]) * along[1] + (z - a[2]) * along[2]) / size;
  return [a[0] + share * along[0], a[1] + share * along[1], a[2] + share * along[2]];
}
