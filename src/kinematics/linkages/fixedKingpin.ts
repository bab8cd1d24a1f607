import type { FixedKingpinPoints } from "../drawn.ts";
import type { Carry, Joints } from "../front.ts";
import { length, minus, put, times } from "../math.ts";
import { Work } from "../slots.ts";

/** A king pin fixed to the body. Its wheel has no travel: solve blames any that is asked for. */
const enum Pin {
  Lower = 0,
  Upper = 3,
  Axis = 6,
  Stride = 9,
}

/** Writes a corner's king pin into its constants. Gives its ends: whether they are apart is the upright's to say. */
export function compileFixedKingpin(points: FixedKingpinPoints, _wheel: unknown, own: Float64Array): Joints {
  const { lowerJoint: lower, upperJoint: upper } = points;
  const pin = minus(upper, lower);
  put(own, Pin.Lower, lower);
  put(own, Pin.Upper, upper);
  put(own, Pin.Axis, times(pin, 1 / length(pin)));
  return { lower, upper };
}

/** The steering axis never moves. See Carry. */
export const carryFixedKingpin: Carry = {
  place: (own, _t, w) => {
    for (let i = 0; i < Pin.Stride; i++) w[Work.Lower + i] = own[i];
    w[Work.UprightGap] = 0;
  },
  // The rates in the scratch are 0 from the start, and nobody writes others.
  rates: () => {},
  axisTurnsInUpright: false,
};
