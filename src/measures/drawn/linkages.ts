import type { Linkage, Point } from "../../kinematics/drawn.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { LinkageName } from "../../vehicle/linkages.ts";
import { pointAt } from "./places.ts";

/** How to read one corner's points: the kernel's name of each, and its path below the corner in the car file. */
function cornerAt<Name extends string>(points: Readonly<Record<Name, string>>, wheel: Wheel) {
  const read = (Object.keys(points) as Name[]).map((name) => [name, pointAt(`${wheel}.${points[name]}`)] as const);
  return (numbers: Float64Array) =>
    Object.fromEntries(read.map(([name, at]) => [name, at(numbers)])) as Record<Name, Point>;
}

function linkage<Kind extends LinkageName, Name extends string>(kind: Kind, points: Readonly<Record<Name, string>>) {
  const left = cornerAt(points, "left");
  const right = cornerAt(points, "right");
  return (numbers: Float64Array) => ({ kind, left: left(numbers), right: right(numbers) });
}

type Draw<Kind> = (numbers: Float64Array) => Extract<Linkage, { kind: Kind }>;

/** Which of a corner's points in the car file is which of the kernel's: a new linkage is one entry here. */
const DRAW: { readonly [Kind in LinkageName]: Draw<Kind> } = {
  "double-arm": linkage("double-arm", {
    lowerFront: "lower-arm.front",
    lowerRear: "lower-arm.rear",
    lowerJoint: "lower-arm.joint",
    upperFront: "upper-arm.front",
    upperRear: "upper-arm.rear",
    upperJoint: "upper-arm.joint",
  }),
  "trailing-arms": linkage("trailing-arms", {
    lowerPivot: "lower-arm.pivot",
    lowerJoint: "lower-arm.joint",
    upperPivot: "upper-arm.pivot",
    upperJoint: "upper-arm.joint",
  }),
  strut: linkage("strut", {
    lowerFront: "lower-arm.front",
    lowerRear: "lower-arm.rear",
    lowerJoint: "lower-arm.joint",
    top: "strut.top",
    bottom: "strut.bottom",
  }),
  "pivoting-beam": linkage("pivoting-beam", {
    beamFront: "beam.pivot",
    beamRear: "beam.brace",
    lowerJoint: "king-pin.lower",
    upperJoint: "king-pin.upper",
  }),
  "fixed-kingpin": linkage("fixed-kingpin", { lowerJoint: "king-pin.lower", upperJoint: "king-pin.upper" }),
};

/** A car's linkage as the kernel takes it, from its numbers. */
export function linkageOf(name: LinkageName, numbers: Float64Array): Linkage {
  return DRAW[name](numbers);
}
