import { CircleSlot, circleAbout, putCircle } from "../circle.ts";
import type { Point, SteeringPlate } from "../drawn.ts";
import type { InnerEyes, Refusal } from "../front.ts";
import { Corner, Work } from "../slots.ts";

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
export function compileSteeringPlate(plate: SteeringPlate, constants: Float64Array): Refusal | null {
  const axis = { x: -Math.cos(plate.rake), y: 0, z: Math.sin(plate.rake) };
  const { foot, leftEye, rightEye } = plate;
  const left = circleAbout(foot, axis, leftEye);
  if (typeof left === "string") return { refused: "eye-on-column-axis", wheel: "left" };
  const right = circleAbout(foot, axis, mirrored(rightEye));
  if (typeof right === "string") return { refused: "eye-on-column-axis", wheel: "right" };
  putCircle(constants, Corner.Mechanism + Plate.Left, left);
  putCircle(constants, Corner.Mechanism + Plate.Right, right);
  return null;
}

/** From the right corner's frame to the vehicle's, and back. */
function mirrored(a: Point): Point {
  return { x: a.x, y: -a.y, z: a.z };
}

/** Both inner eyes at a column angle, rad, positive as the steering wheel is turned left. See InnerEyes. */
export const plateEyes: InnerEyes = (c, input, w) => {
  const cos = Math.cos(input);
  const sin = Math.sin(input);
  const left = Corner.Mechanism + Plate.Left;
  const right = Corner.Mechanism + Plate.Right;
  for (let i = 0; i < 3; i++) {
    const eye = c[right + i] + (c[right + CircleSlot.U + i] * cos + c[right + CircleSlot.V + i] * sin);
    w[Work.Eye + i] = c[left + i] + (c[left + CircleSlot.U + i] * cos + c[left + CircleSlot.V + i] * sin);
    w[Work.Stride + Work.Eye + i] = i === 1 ? -eye : eye;
  }
};
