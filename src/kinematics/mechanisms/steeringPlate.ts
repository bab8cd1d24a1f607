import { CircleSlot, circleAbout, putCircle } from "../circle.ts";
import type { Point, SteeringPlate } from "../drawn.ts";
import type { InnerEyes, Refusal } from "../front.ts";
import { Work } from "../slots.ts";

/**
 * A plate on the steering column carries both inner eyes around the column's axis a = (−cos rake, 0, sin rake), which
 * points up toward the driver: a left turn of the steering wheel is then positive by the right hand about a. In the
 * vehicle's frame  eye(δ) = C + u cos δ + v sin δ,  v = a × u.
 */
const enum Plate {
  Left = 0,
  Right = 9,
}

/** Writes the mechanism's constants, or refuses a tie rod on the column's own axis. */
export function compileSteeringPlate(plate: SteeringPlate, own: Float64Array): Refusal | null {
  const axis = { x: -Math.cos(plate.rake), y: 0, z: Math.sin(plate.rake) };
  const { foot, leftEye, rightEye } = plate;
  const left = circleAbout(foot, axis, leftEye);
  if (typeof left === "string") return { refused: "eye-on-column-axis", wheel: "left" };
  const right = circleAbout(foot, axis, mirrored(rightEye));
  if (typeof right === "string") return { refused: "eye-on-column-axis", wheel: "right" };
  putCircle(own, Plate.Left, left);
  putCircle(own, Plate.Right, right);
  return null;
}

/** From the right corner's frame to the vehicle's, and back. */
function mirrored(a: Point): Point {
  return { x: a.x, y: -a.y, z: a.z };
}

/** Both inner eyes at a column angle, rad, positive as the steering wheel is turned left. See InnerEyes. */
export const plateEyes: InnerEyes = (own, input, left, right) => {
  const cos = Math.cos(input);
  const sin = Math.sin(input);
  for (let i = 0; i < 3; i++) {
    const l = Plate.Left + i;
    const r = Plate.Right + i;
    const eye = own[r] + (own[r + CircleSlot.U] * cos + own[r + CircleSlot.V] * sin);
    left[Work.Eye + i] = own[l] + (own[l + CircleSlot.U] * cos + own[l + CircleSlot.V] * sin);
    right[Work.Eye + i] = i === 1 ? -eye : eye;
  }
};
