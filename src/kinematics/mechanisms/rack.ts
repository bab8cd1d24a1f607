import type { CentreRack, Point, Rack } from "../drawn.ts";
import type { InnerEyes } from "../front.ts";
import { put } from "../math.ts";
import { Work } from "../slots.ts";

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
export function compileRack(rack: Rack, own: Float64Array): void {
  const half = 0.5 * rack.eyeToEye;
  const eye = (hand: number): Point => ({
    x: rack.ahead,
    y: hand * rack.offset + half * Math.cos(rack.tilt),
    z: rack.up + half * (hand * Math.sin(rack.tilt)),
  });
  putSlides(eye(1), eye(-1), rack.tilt, own);
}

/** Tie rods on a bar at the rack's middle: eyes wherever the bar has them. Writes the mechanism's constants. */
export function compileCentreRack(rack: CentreRack, own: Float64Array): void {
  putSlides(rack.leftEye, rack.rightEye, rack.tilt, own);
}

function putSlides(left: Point, right: Point, tilt: number, own: Float64Array): void {
  put(own, Slide.Eye, left);
  put(own, Slide.Path, { x: 0, y: Math.cos(tilt), z: Math.sin(tilt) });
  put(own, Slide.Right + Slide.Eye, right);
  put(own, Slide.Right + Slide.Path, { x: 0, y: Math.cos(tilt), z: -Math.sin(tilt) });
}

/** Both inner eyes at a rack displacement, mm, positive to the driver's left. See InnerEyes. */
export const rackEyes: InnerEyes = (own, input, left, right) => {
  left[Work.Eye] = own[Slide.Eye];
  left[Work.Eye + 1] = own[Slide.Eye + 1] + own[Slide.Path + 1] * input;
  left[Work.Eye + 2] = own[Slide.Eye + 2] + own[Slide.Path + 2] * input;
  right[Work.Eye] = own[Slide.Right];
  right[Work.Eye + 1] = own[Slide.Right + 1] - own[Slide.Right + Slide.Path + 1] * input;
  right[Work.Eye + 2] = own[Slide.Right + 2] - own[Slide.Right + Slide.Path + 2] * input;
};
