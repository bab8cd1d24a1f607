import { minus } from "../../kinematics/math.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";

/** How the line through the two pivots of an arm runs, going ahead: outward seen from above, and upward seen square from the side; rad. */
export interface PivotLine {
  readonly arm: string;
  readonly outward: number;
  readonly upward: number;
}

/** Of each arm that turns about two pivots on the frame; none in front ends without such arms. */
export function pivotLines({ car }: Pick<Study, "car">, wheel: Wheel): readonly PivotLine[] {
  const place = (id: string) => pointAt(`${wheel}.${id}`)(car.numbers);
  return linkageOf(car.form.linkage).bodies.flatMap(({ label, moves }) => {
    if (moves === "with the upright" || !("about" in moves)) return [];
    const [from, to] = moves.about.map(place);
    if (from === undefined || to === undefined) return [];
    const along = to.x >= from.x ? minus(to, from) : minus(from, to);
    return [{ arm: label, outward: Math.atan2(along.y, along.x), upward: Math.atan2(along.z, Math.abs(along.x)) }];
  });
}
