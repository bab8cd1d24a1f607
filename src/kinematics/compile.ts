import type { Drawn } from "./drawn.ts";
import type { Front, Refusal } from "./front.ts";
import { carryDoubleArm, compileDoubleArm } from "./linkages/doubleArm.ts";
import { compileRack, eyeOf, innerEye } from "./mechanisms/rack.ts";
import { approach, evaluate, settle } from "./settle.ts";
import { Corner, Work } from "./slots.ts";
import { fitStart } from "./start.ts";
import { compileUpright } from "./upright.ts";

/** How near the height is brought, as a share of the car's half width: 1e-8 mm on a metre. */
const NEAR = 1e-11;

/** Half the arm's angle between two places of the fit, at most: Newton is not trusted to go farther. */
const NEIGHBOUR = 0.25;

/** Makes a drawn front end ready to solve, or says why it is no mechanism. See Front and Refusal. */
export function compile(drawn: Drawn): Front | Refusal {
  const front: Front = {
    drawn,
    constants: new Float64Array(2 * Corner.Stride),
    work: new Float64Array(2 * Work.Stride),
    carry: carryDoubleArm,
  };
  return compileCorner(front, "left") ?? compileCorner(front, "right") ?? front;
}

function compileCorner(front: Front, wheel: "left" | "right"): Refusal | null {
  const { drawn, constants, work } = front;
  const [corner, at, hand] = wheel === "left" ? ([0, 0, 1] as const) : ([Corner.Stride, Work.Stride, -1] as const);
  const joints = compileDoubleArm(drawn.linkage[wheel], wheel, constants, corner);
  if ("refused" in joints) return joints;
  compileRack(drawn.mechanism, hand, constants, corner);
  const straight = hand * drawn.mechanism.straightAhead;
  innerEye(constants, corner, straight, work, at);
  const own = drawn[wheel];
  const refusal = compileUpright(own, joints.lower, joints.upper, eyeOf(work, at), wheel, constants, corner);
  if (refusal) return refusal;
  constants[corner + Corner.Tolerance] = NEAR * Math.abs(own.wheelCenter.y);

  // The drawn pose closes with the rod it would be cut to, whatever length it is given.
  const given = constants[corner + Corner.RodLength];
  constants[corner + Corner.RodLength] = fittedRod(front, wheel);
  evaluate(front, corner, at, 0);
  const rate = work[at + Work.HeightRate];
  constants[corner + Corner.RodLength] = given;
  if (!(Math.abs(rate) > 1e-6 * Math.abs(own.wheelCenter.y))) return { refused: "wheel-does-not-rise", wheel };
  constants[corner + Corner.Rise] = rate > 0 ? 1 : -1;

  const { inputLow, inputHigh, travelLow, travelHigh } = drawn.range;
  const travel = middle(travelLow, travelHigh);
  const input = middle(inputLow, inputHigh);
  constants[corner + Corner.Start] = travel.middle;
  constants[corner + Corner.Start + 1] = 1 / travel.half;
  constants[corner + Corner.Start + 2] = hand * input.middle;
  constants[corner + Corner.Start + 3] = 1 / input.half;
  let last = 0;
  fitStart(constants, corner, (z, s) => {
    innerEye(constants, corner, hand * input.middle + s * input.half, work, at);
    const target = own.wheelCenter.z + travel.middle + z * travel.half;
    last = approach(front, corner, at, last, NEIGHBOUR, target)
      ? work[at + Work.HalfAngle]
      : settle(front, corner, at, target);
    return last;
  });
  return null;
}

/** The length, mm, that fits the drawn pose. */
function fittedRod(front: Front, wheel: "left" | "right"): number {
  const outer = front.drawn[wheel].tieRodOuter;
  const eye = eyeOf(front.work, wheel === "left" ? 0 : Work.Stride);
  return Math.sqrt((outer.x - eye.x) ** 2 + (outer.y - eye.y) ** 2 + (outer.z - eye.z) ** 2);
}

/** A range as its middle and half its width; a range of nothing counts as a millimetre each way. */
function middle(low: number, high: number): { readonly middle: number; readonly half: number } {
  const half = 0.5 * (high - low);
  return { middle: 0.5 * (low + high), half: half > 0 ? half : 1 };
}
