import type { Point } from "../../kinematics/drawn.ts";
import { drawnSpin } from "../../kinematics/upright.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { LinkageName } from "../../vehicle/linkages.ts";
import { quantityOf } from "../../vehicle/quantities.ts";

/** Where the upright is carried from where it is drawn: a place of it, and a direction. In the corner's own frame. */
export interface Carry {
  readonly place: (p: Point) => Point;
  readonly turn: (d: Point) => Point;
}

/** The points of a linkage that go with the upright, beside its tab and its wheel. A new linkage is one entry here. */
const onUpright: Readonly<Record<LinkageName, readonly string[]>> = {
  "double-arm": ["lower-arm.joint", "upper-arm.joint"],
  "trailing-arms": ["lower-arm.joint", "upper-arm.joint"],
  strut: ["lower-arm.joint", "strut.bottom"],
  "pivoting-beam": ["king-pin.lower", "king-pin.upper"],
  "fixed-kingpin": [],
};

/** The paths below a corner of all the points that go with its upright. */
export function uprightPoints(linkage: LinkageName): readonly string[] {
  return [...onUpright[linkage], "tie-rod.outer", "wheel.center"];
}

/** A point of a corner as it is drawn. */
export function drawnPoint({ car }: Study, wheel: Wheel, path: string): Point {
  const [x, y, z] = ["ahead", "out", "up"].map((key) => car.numbers[quantityOf(`${wheel}.${path}.${key}`).index]);
  return { x, y, z };
}

/** What the numbers of one corner are once its upright is drawn where it was carried: points, camber and toe. */
export function redrawn(study: Study, wheel: Wheel, carry: Carry): Readonly<Record<string, number>> {
  const points = uprightPoints(study.car.form.linkage).flatMap((path) => {
    const { x, y, z } = carry.place(drawnPoint(study, wheel, path));
    return [
      [`${wheel}.${path}.ahead`, x],
      [`${wheel}.${path}.out`, y],
      [`${wheel}.${path}.up`, z],
    ] as const;
  });
  const a = carry.turn(drawnSpin(study.drawn[wheel]));
  return {
    ...Object.fromEntries(points),
    // As measures/camber.ts and measures/toe.ts have them.
    [`${wheel}.wheel.camber`]: Math.atan2(-a.z, Math.hypot(a.x, a.y)),
    [`${wheel}.wheel.toe`]: Math.atan2(a.x, a.y),
  };
}
