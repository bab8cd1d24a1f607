import type { CentreRack, Point, Rack } from "../drawn.ts";
import type { InnerEyes } from "../front.ts";
import { put } from "../math.ts";
import { Corner, Work } from "../slots.ts";

/**
 * A rack slides along its own axis, which is level across the car but for its tilt (left end up positive), and carries
 * both inner eyes along. In the frame of a corner, hand = +1 on the left and −1 on the right, the axis is
 * (0, cos tilt, hand·sin tilt) and the eye has moved along it by hand × rack.
 */
const enum Slide {
  Eye = 0,
  Path = 3,
  /** The left corner's come first. */
  Right = 6,
}

/** Tie rods on the rack's ends: eyes at hand·offset + ½ eye-to-eye along the axis. Writes the mechanism's constants. */
export function compileRack(rack: Rack, constants: Float64Array): void {
  const half = 0.5 * rack.eyeToEye;
  const eye = (hand: number): Point => ({
    x: rack.ahead,
    y: hand * rack.offset + half * Math.cos(rack.tilt),
    z: rack.up + half * (hand * Math.sin(rack.tilt)),
  });
  putSlides(eye(1), eye(-1), rack.tilt, constants);
}

/** Tie rods on a bar at the rack's middle: eyes wherever the bar has them. Writes the mechanism's constants. */
export function compileCentreRack(rack: CentreRack, constants: Float64Array): void {
  putSlides(rack.leftEye, rack.rightEye, rack.tilt, constants);
}

function putSlides(left: Point, right: Point, tilt: number, constants: Float64Array): void {
  const own = Corner.Mechanism;
  put(constants, own + Slide.Eye, left);
  put(constants, own + Slide.Path, { x: 0, y: Math.cos(tilt), z: Math.sin(tilt) });
  put(constants, own + Slide.Right + Slide.Eye, right);
  put(constants, own + Slide.Right + Slide.Path, { x: 0, y: Math.cos(tilt), z: -Math.sin(tilt) });
}

/** Both inner eyes at a rack displacement, mm, positive to the driver's left. See InnerEyes. */
export const rackEyes: InnerEyes = (c, input, w) => {
  const own = Corner.Mechanism;
  const right = own + Slide.Right;
  w[Work.Eye] = c[own];
  w[Work.Eye + 1] = c[own + 1] + c[own + Slide.Path + 1] * input;
  w[Work.Eye + 2] = c[own + 2] + c[own + Slide.Path + 2] * input;
  w[Work.Stride + Work.Eye] = c[right];
  w[Work.Stride + Work.Eye + 1] = c[right + 1] - c[right + Slide.Path + 1] * input;
  w[Work.Stride + Work.Eye + 2] = c[right + 2] - c[right + Slide.Path + 2] * input;
};
