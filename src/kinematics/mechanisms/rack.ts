import type { Point, Rack } from "../drawn.ts";
import { put } from "../math.ts";
import { Corner, Work } from "../slots.ts";

/**
 * A rack slides along its own axis, which is level across the car but for its tilt (left end up positive). In the frame
 * of a corner, hand = +1 on the left and −1 on the right, and the corner's own input is hand × rack:
 *     eye = (ahead, hand·offset + (½ eye-to-eye + input) cos tilt, up + hand (½ eye-to-eye + input) sin tilt).
 */
export function compileRack(rack: Rack, hand: 1 | -1, constants: Float64Array, corner: number): void {
  const along = { x: 0, y: Math.cos(rack.tilt), z: hand * Math.sin(rack.tilt) };
  const half = 0.5 * rack.eyeToEye;
  put(constants, corner + Corner.Eye, {
    x: rack.ahead,
    y: hand * rack.offset + half * along.y,
    z: rack.up + half * along.z,
  });
  put(constants, corner + Corner.EyePath, along);
}

/** Where a corner's inner eye is at the corner's own input, mm, into its scratch. */
export function innerEye(c: Float64Array, corner: number, input: number, w: Float64Array, at: number): void {
  w[at + Work.Eye] = c[corner + Corner.Eye] + c[corner + Corner.EyePath] * input;
  w[at + Work.Eye + 1] = c[corner + Corner.Eye + 1] + c[corner + Corner.EyePath + 1] * input;
  w[at + Work.Eye + 2] = c[corner + Corner.Eye + 2] + c[corner + Corner.EyePath + 2] * input;
}

/** The eye that the scratch holds, as a point. */
export function eyeOf(w: Float64Array, at: number): Point {
  return { x: w[at + Work.Eye], y: w[at + Work.Eye + 1], z: w[at + Work.Eye + 2] };
}
