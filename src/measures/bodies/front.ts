import { readSide } from "../../kinematics/face.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { type Place, pointsOf } from "../points.ts";
import type { Study } from "../study.ts";
import { linkageSticks } from "./linkage.ts";
import { mechanismSticks } from "./mechanism.ts";
import type { Stick } from "./stick.ts";
import { wheelSticks } from "./wheel.ts";

const tireWidth = indexOf("tire.width");

/** All bodies of a front end in a solved pose, as lines in the vehicle's frame, mm; null when a side does not close. */
export function frontSticks(study: Study, pose: Float64Array, input: number): readonly Stick[] | null {
  const left = pointsOf(pose, "left", study.tireRadius);
  const right = pointsOf(pose, "right", study.tireRadius);
  if (left === null || right === null) return null;
  const width = study.car.numbers[tireWidth] ?? 0;
  return [
    ...linkageSticks(study.drawn.linkage, "left", left),
    ...linkageSticks(study.drawn.linkage, "right", right),
    ...mechanismSticks(study.drawn.mechanism, { input, left: left.tieRodInner, right: right.tieRodInner }),
    ...wheelSticks(pose, "left", study.tireRadius, width),
    ...wheelSticks(pose, "right", study.tireRadius, width),
  ];
}

/**
 * The lines through both wheel centres along their spin axes, in plan, to the line of the rear axle: where they meet it
 * tells how nearly the wheels turn about one centre. None of a wheel whose line runs along the rear axle.
 */
export function spindleLines(study: Study, pose: Float64Array): readonly Stick[] {
  return (["left", "right"] as const).flatMap((wheel): readonly Stick[] => {
    const side = readSide(pose, 0, wheel);
    if (!side.closes || side.spin.x === 0) return [];
    const { x, y } = side.wheelCenter;
    const reach = (-study.wheelbase - x) / side.spin.x;
    const meets: Place = [-study.wheelbase, y + reach * side.spin.y, 0];
    return [{ wheel, part: "fixed", places: [[x, y, 0], meets] }];
  });
}
