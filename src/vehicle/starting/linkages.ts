import type { LinkageName } from "../linkages.ts";
import type { Wheel } from "../words.ts";
import { type At, between, pointStarts, type Start } from "./place.ts";
import { type SteeringAxis, steeringAxisOf, topMount, upperJoint } from "./steering-axis.ts";

/** What a linkage's starting values are made from: a wheel's steering axis, and where its upper joint would be. */
interface Given {
  readonly axis: SteeringAxis;
  readonly upper: At;
  /** The tie rod's inner joint. */
  readonly eye: At;
  readonly numbers: Float64Array;
}

/** Half of the spread of an arm's pivots, and how far an arm trails, mm. */
const spread = 125;
const trail = 220;

/** An arm on two pivots, level, reaching in to this share of its joint's distance from the centreline. */
function arm(name: string, joint: At, share: number): readonly Start[] {
  const pivot = (ahead: number): At => ({ ahead: joint.ahead + ahead, side: joint.side * share, up: joint.up });
  return [
    ...pointStarts(`${name}.front`, pivot(spread)),
    ...pointStarts(`${name}.rear`, pivot(-spread)),
    ...pointStarts(`${name}.joint`, joint),
  ];
}

function trailingArm(name: string, joint: At): readonly Start[] {
  const pivot = { ahead: joint.ahead + trail, side: joint.side - 60, up: joint.up + 10 };
  return [...pointStarts(`${name}.pivot`, pivot), ...pointStarts(`${name}.joint`, joint)];
}

function kingPin({ axis, upper }: Given): readonly Start[] {
  return [...pointStarts("king-pin.lower", axis.lower), ...pointStarts("king-pin.upper", upper)];
}

/**
 * A beam braced from well behind, its pivot abreast of the king pin. Its axis goes through the tie rod's inner joint, so
 * that the rod swings as the beam does and does not steer the wheel.
 */
function beam(given: Given): readonly Start[] {
  const { ahead, side } = between(given.axis.lower, given.upper, 0.5);
  const across = (at: number) => given.eye.side - (at - given.eye.ahead) * beamSlant;
  const on = (at: number): At => ({ ahead: at, side: across(at), up: given.eye.up });
  return [
    ...pointStarts("beam.pivot", on(ahead)),
    ...pointStarts("beam.brace", on(ahead - 0.9 * side)),
    ...kingPin(given),
  ];
}

/** How far in from its brace a beam's pivot stands for each mm that it is ahead of it. */
const beamSlant = 0.5;

/** Of each linkage, all that its points would be on a given steering axis, by their ids without the wheel. */
const STARTS: { readonly [Name in LinkageName]: (given: Given) => readonly Start[] } = {
  "double-arm": ({ axis, upper }) => [...arm("lower-arm", axis.lower, 0.35), ...arm("upper-arm", upper, 0.45)],
  "trailing-arms": ({ axis, upper }) => [...trailingArm("lower-arm", axis.lower), ...trailingArm("upper-arm", upper)],
  strut: ({ axis, upper, numbers }) => [
    ...arm("lower-arm", axis.lower, 0.35),
    ...pointStarts("strut.top", topMount(axis, numbers)),
    ...pointStarts("strut.bottom", upper),
  ],
  "pivoting-beam": beam,
  "fixed-kingpin": kingPin,
};

/**
 * What a linkage's points could be on one wheel of a car that has another linkage: its steering axis stays.
 *
 * @param eye the tie rod's inner joint, in the corner's own frame
 */
export function linkageStarts(
  numbers: Float64Array,
  from: LinkageName,
  to: LinkageName,
  wheel: Wheel,
  eye: At,
): readonly Start[] {
  const axis = steeringAxisOf(numbers, from, wheel);
  const given = { axis, upper: upperJoint(axis, from, numbers), eye, numbers };
  return STARTS[to](given).map(({ id, value }) => ({ id: `${wheel}.${id}`, value }));
}
