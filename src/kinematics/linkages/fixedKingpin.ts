import type { FixedKingpinPoints } from "../drawn.ts";
import type { Carry, Joints, Refusal } from "../front.ts";
import { length, minus, put, times } from "../math.ts";
import { Corner, Work } from "../slots.ts";

/** A king pin fixed to the body. Its wheel has no travel: solve blames any that is asked for. */
const enum Pin {
  Lower = 0,
  Upper = 3,
  Axis = 6,
  Stride = 9,
}

/** Writes a corner's king pin into its constants. Gives its ends, or a refusal. */
export function compileFixedKingpin(
  points: FixedKingpinPoints,
  wheel: Refusal["wheel"],
  constants: Float64Array,
  corner: number,
): Joints | Refusal {
  const { lowerJoint: lower, upperJoint: upper } = points;
  const pin = minus(upper, lower);
  const span = length(pin);
  if (span === 0) return { refused: "joints-coincide", wheel };
  const own = corner + Corner.Linkage;
  put(constants, own + Pin.Lower, lower);
  put(constants, own + Pin.Upper, upper);
  put(constants, own + Pin.Axis, times(pin, 1 / span));
  return { lower, upper };
}

/** The steering axis, which never moves. See Carry. */
export const carryFixedKingpin: Carry = (c, corner, _t, w, at) => {
  for (let i = 0; i < Pin.Stride; i++) w[at + Work.Lower + i] = c[corner + Corner.Linkage + i];
  for (let i = 0; i < 3; i++) {
    w[at + Work.LowerRate + i] = 0;
    w[at + Work.Lean + i] = 0;
  }
  w[at + Work.UprightGap] = 0;
};
