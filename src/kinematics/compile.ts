import type { Drawn, Linkage, Mechanism, Point } from "./drawn.ts";
import type { Front, InnerEyes, Joints, Refusal } from "./front.ts";
import { linkages } from "./linkages.ts";
import { compileCentreRack, compileRack, rackEyes } from "./mechanisms/rack.ts";
import { compileRelay, relayEyes } from "./mechanisms/relay.ts";
import { compileSteeringPlate, plateEyes } from "./mechanisms/steeringPlate.ts";
import { approach, evaluate, settle } from "./settle.ts";
import { Corner, Work } from "./slots.ts";
import { fitStart } from "./start.ts";
import { compileUpright } from "./upright.ts";

/** How near the height is brought, as a share of the car's half width: 1e-8 mm on a metre. */
const NEAR = 1e-11;
/** Rise of the wheel, mm per rad of its arm, as a share of the car's half width: below this it counts as none. */
const NO_RISE = 1e-6;
/** Half the arm's angle between two places of the fit, at most: Newton is not trusted to go farther. */
const NEIGHBOUR = 0.25;

/** Makes a drawn front end ready to solve, or says why it is no mechanism. See Front and Refusal. */
export function compile(drawn: Drawn): Front | Refusal {
  const constants = new Float64Array(Corner.Mechanism + Corner.MechanismStride);
  const linkage = linkages[drawn.linkage.kind];
  const innerEyes = compileMechanism(drawn.mechanism, constants);
  if ("refused" in innerEyes) return innerEyes;
  const front: Front = {
    drawn,
    constants,
    work: new Float64Array(2 * Work.Stride),
    carry: linkage.carry,
    axisTurnsInUpright: linkage.axisTurnsInUpright,
    innerEyes,
  };
  return compileCorner(front, "left") ?? compileCorner(front, "right") ?? front;
}

function compileMechanism(mechanism: Mechanism, constants: Float64Array): InnerEyes | Refusal {
  switch (mechanism.kind) {
    case "rack":
      compileRack(mechanism, constants);
      return rackEyes;
    case "centre-rack":
      compileCentreRack(mechanism, constants);
      return rackEyes;
    case "steering-plate":
      return compileSteeringPlate(mechanism, constants) ?? plateEyes;
    case "relay":
      return compileRelay(mechanism, constants) ?? relayEyes;
  }
}

function compileCorner(front: Front, wheel: "left" | "right"): Refusal | null {
  const { drawn, constants, work } = front;
  const [corner, at, hand] = wheel === "left" ? ([0, 0, 1] as const) : ([Corner.Stride, Work.Stride, -1] as const);
  const joints = compileLinkage(drawn.linkage, wheel, constants, corner, drawn[wheel]);
  if ("refused" in joints) return joints;
  front.innerEyes(constants, drawn.mechanism.straightAhead, work);
  const eye: Point = { x: work[at + Work.Eye], y: work[at + Work.Eye + 1], z: work[at + Work.Eye + 2] };
  const own = drawn[wheel];
  const refusal = compileUpright(own, joints, eye, wheel, constants, corner);
  if (refusal) return refusal;
  const size = Math.abs(own.wheelCenter.y);
  constants[corner + Corner.Tolerance] = NEAR * size;
  if (!linkages[drawn.linkage.kind].hasTravel) return null;

  const rate = drawnRise(front, corner, at, own.tieRodOuter, eye);
  if (!(Math.abs(rate) > NO_RISE * size)) return { refused: "wheel-does-not-rise", wheel };
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
    front.innerEyes(constants, input.middle + hand * (s * input.half), work);
    const target = own.wheelCenter.z + travel.middle + z * travel.half;
    last = approach(front, corner, at, last, NEIGHBOUR, target)
      ? work[at + Work.HalfAngle]
      : settle(front, corner, at, target);
    return last;
  });
  return null;
}

function compileLinkage(
  linkage: Linkage,
  wheel: "left" | "right",
  constants: Float64Array,
  corner: number,
  drawn: Drawn["left"],
): Joints | Refusal {
  switch (linkage.kind) {
    case "double-arm":
      return linkages["double-arm"].compile(linkage[wheel], wheel, constants, corner, drawn);
    case "trailing-arms":
      return linkages["trailing-arms"].compile(linkage[wheel], wheel, constants, corner, drawn);
    case "strut":
      return linkages.strut.compile(linkage[wheel], wheel, constants, corner, drawn);
    case "pivoting-beam":
      return linkages["pivoting-beam"].compile(linkage[wheel], wheel, constants, corner, drawn);
    case "fixed-kingpin":
      return linkages["fixed-kingpin"].compile(linkage[wheel], wheel, constants, corner, drawn);
  }
}

/** Rise of the wheel per rad of its arm in the drawn pose, which closes with the rod it would be cut to, mm/rad. */
function drawnRise(front: Front, corner: number, at: number, outer: Point, eye: Point): number {
  const { constants, work } = front;
  const given = constants[corner + Corner.RodLength];
  constants[corner + Corner.RodLength] = Math.sqrt(
    (outer.x - eye.x) ** 2 + (outer.y - eye.y) ** 2 + (outer.z - eye.z) ** 2,
  );
  evaluate(front, corner, at, 0);
  constants[corner + Corner.RodLength] = given;
  return work[at + Work.HeightRate];
}

/** A range as its middle and half its width; a range of nothing counts as one unit each way. */
function middle(low: number, high: number): { readonly middle: number; readonly half: number } {
  const half = 0.5 * (high - low);
  return { middle: 0.5 * (low + high), half: half > 0 ? half : 1 };
}
