import type { Drawn, Linkage, Mechanism, Point } from "./drawn.ts";
import type { Carry, Front, InnerEyes, Joints, ReadyCorner, Refusal } from "./front.ts";
import { linkages } from "./linkages.ts";
import { compileCentreRack, compileRack, rackEyes } from "./mechanisms/rack.ts";
import { compileRelay, relayEyes } from "./mechanisms/relay.ts";
import { compileSteeringPlate, plateEyes } from "./mechanisms/steeringPlate.ts";
import { approach, evaluate, reach } from "./settle.ts";
import { Corner, Own, Work } from "./slots.ts";
import { fitStart } from "./start.ts";
import { compileUpright } from "./upright.ts";

/** How near the height is brought, as a share of the car's half width: 1e-8 mm on a metre. */
const NEAR = 1e-11;
/** The same where a start is fitted, which is no better than 1e-6 itself. */
const NEAR_FIT = 1e-8;
/** Rise of the wheel, mm per rad of its arm, as a share of the car's half width: below this it counts as none. */
const NO_RISE = 1e-6;
/** Half the arm's angle between two places of the fit, at most: Newton is not trusted to go farther. */
const NEIGHBOUR = 0.25;

/** Makes a drawn front end ready to solve, or says why it is no mechanism. See Front and Refusal. */
export function compile(drawn: Drawn): Front | Refusal {
  const carry = linkages[drawn.linkage.kind].carry;
  const room = new Float64Array(Own.Mechanism + 2 * CORNER);
  const mechanism = room.subarray(0, Own.Mechanism);
  const innerEyes = compileMechanism(drawn.mechanism, mechanism);
  if ("refused" in innerEyes) return innerEyes;
  const front: Front = {
    drawn,
    left: cornerIn(room, Own.Mechanism, carry),
    right: cornerIn(room, Own.Mechanism + CORNER, carry),
    carry,
    mechanism,
    innerEyes,
  };
  return compileCorner(front, "left") ?? compileCorner(front, "right") ?? front;
}

/** What one corner needs of a front's numbers, which are one buffer, since to get and to clear away many costs a search dear. */
const CORNER = Corner.Stride + Work.Stride + Own.Linkage;

function cornerIn(room: Float64Array, at: number, { axisTurnsInUpright }: Carry): ReadyCorner {
  const constants = room.subarray(at, at + Corner.Stride);
  const work = room.subarray(at + Corner.Stride, at + Corner.Stride + Work.Stride);
  const linkage = room.subarray(at + Corner.Stride + Work.Stride, at + CORNER);
  return { constants, linkage, work, places: axisTurnsInUpright ? work.subarray(Work.Upright) : constants };
}

function compileMechanism(mechanism: Mechanism, own: Float64Array): InnerEyes | Refusal {
  switch (mechanism.kind) {
    case "rack":
      compileRack(mechanism, own);
      return rackEyes;
    case "centre-rack":
      compileCentreRack(mechanism, own);
      return rackEyes;
    case "steering-plate":
      return compileSteeringPlate(mechanism, own) ?? plateEyes;
    case "relay":
      return compileRelay(mechanism, own) ?? relayEyes;
  }
}

function compileCorner(front: Front, wheel: "left" | "right"): Refusal | null {
  const { drawn, mechanism } = front;
  const corner = front[wheel];
  const { constants, work } = corner;
  const hand = wheel === "left" ? 1 : -1;
  const own = drawn[wheel];
  const eyes = (input: number): void => front.innerEyes(mechanism, input, front.left.work, front.right.work);
  const joints = compileLinkage(drawn.linkage, wheel, corner.linkage, own);
  if ("refused" in joints) return joints;
  eyes(drawn.mechanism.straightAhead);
  const eye: Point = { x: work[Work.Eye], y: work[Work.Eye + 1], z: work[Work.Eye + 2] };
  const refusal = compileUpright(own, joints, eye, wheel, constants);
  if (refusal) return refusal;
  const size = Math.abs(own.wheelCenter.y);
  constants[Corner.Tolerance] = NEAR * size;
  if (!linkages[drawn.linkage.kind].hasTravel) return null;

  const rate = drawnRise(front, corner, own.tieRodOuter, eye);
  if (!(Math.abs(rate) > NO_RISE * size)) return { refused: "wheel-does-not-rise", wheel };
  constants[Corner.Rise] = rate > 0 ? 1 : -1;

  const { inputLow, inputHigh, travelLow, travelHigh } = drawn.range;
  const travel = middle(travelLow, travelHigh);
  const input = middle(inputLow, inputHigh);
  constants[Corner.Start] = travel.middle;
  constants[Corner.Start + 1] = 1 / travel.half;
  constants[Corner.Start + 2] = hand * input.middle;
  constants[Corner.Start + 3] = 1 / input.half;
  constants[Corner.Tolerance] = NEAR_FIT * size;
  // The scratch holds the neighbour that was solved last: at first, the drawn pose.
  fitStart(constants, (z, s) => {
    eyes(input.middle + hand * (s * input.half));
    const target = own.wheelCenter.z + travel.middle + z * travel.half;
    const t = work[Work.HalfAngle];
    work[Work.PerHeight] = (1 + t * t) / (2 * work[Work.HeightRate]);
    return approach(front, corner, NEIGHBOUR, target) ? work[Work.HalfAngle] : reach(front, corner, target);
  });
  constants[Corner.Tolerance] = NEAR * size;
  return null;
}

function compileLinkage(
  linkage: Linkage,
  wheel: "left" | "right",
  own: Float64Array,
  drawn: Drawn["left"],
): Joints | Refusal {
  switch (linkage.kind) {
    case "double-arm":
      return linkages["double-arm"].compile(linkage[wheel], wheel, own, drawn);
    case "trailing-arms":
      return linkages["trailing-arms"].compile(linkage[wheel], wheel, own, drawn);
    case "strut":
      return linkages.strut.compile(linkage[wheel], wheel, own, drawn);
    case "pivoting-beam":
      return linkages["pivoting-beam"].compile(linkage[wheel], wheel, own, drawn);
    case "fixed-kingpin":
      return linkages["fixed-kingpin"].compile(linkage[wheel], wheel, own, drawn);
  }
}

/** Rise of the wheel per rad of its arm in the drawn pose, which closes with the rod it would be cut to, mm/rad. */
function drawnRise(front: Front, corner: ReadyCorner, outer: Point, eye: Point): number {
  const { constants, work } = corner;
  const given = constants[Corner.RodLength];
  constants[Corner.RodLength] = Math.sqrt((outer.x - eye.x) ** 2 + (outer.y - eye.y) ** 2 + (outer.z - eye.z) ** 2);
  evaluate(front, corner, 0);
  constants[Corner.RodLength] = given;
  return work[Work.HeightRate];
}

/** A range as its middle and half its width; a range of nothing counts as one unit each way. */
function middle(low: number, high: number): { readonly middle: number; readonly half: number } {
  const half = 0.5 * (high - low);
  return { middle: 0.5 * (low + high), half: half > 0 ? half : 1 };
}
