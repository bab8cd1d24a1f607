import { readSide } from "../../kinematics/face.ts";
import type { Place } from "../../measures/points.ts";
import type { Study } from "../../measures/study.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { quantityOf } from "../../vehicle/quantities.ts";

/**
 * Where a named point stands with the wheels straight ahead at ride height, in the vehicle's frame, mm; null where the front
 * end does not close there. What turns with the wheel is read from the pose, all else from the car's numbers.
 */
export function placeOf(study: Study, id: string): Place | null {
  const wheel: Wheel | null = id.startsWith("left.") ? "left" : id.startsWith("right.") ? "right" : null;
  const turning = wheel === null ? undefined : turningPoints[id.slice(wheel.length + 1)];
  if (wheel !== null && turning !== undefined) {
    if (study.zero === null) return null;
    const side = readSide(study.ridePose(study.zero), 0, wheel);
    if (!side.closes) return null;
    const { x, y, z } = side[turning];
    return [x, y, z];
  }
  const number = (key: string) => study.car.numbers[quantityOf(`${id}.${key}`).index];
  return [number("ahead"), (wheel === "right" ? -1 : 1) * number("out"), number("up")];
}

const turningPoints: Readonly<Record<string, "tieRodOuter" | "tieRodInner" | "wheelCenter">> = {
  "tie-rod.outer": "tieRodOuter",
  "tie-rod.inner": "tieRodInner",
  "wheel.center": "wheelCenter",
};
