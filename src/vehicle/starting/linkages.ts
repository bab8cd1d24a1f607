import type { LinkageName } from "../linkages.ts";
import type { Wheel } from "../words.ts";
import { type At, between, pointStarts, type Start } from "./place.ts";
import { type SteeringAxis, steeringAxisOf, topMount, upperJoint } from "./steering-axis.ts";

/** What a linkage's starting values are made from: a wheel's steering axis, and where its upper joint would be. */
interface Given {
  readonly axis: SteeringAxis;
  readonly upper: At;
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

/** A beam whose pivot is across the centreline, braced from well behind. */
function beam(given: Given): readonly Start[] {
  const middle = between(given.axis.lower, given.upper, 0.5);
  const { side } = middle;
  return [
    ...pointStarts("beam.pivot", { ...middle, side: -0.15 * side }),
    ...pointStarts("beam.brace", { ahead: middle.ahead - 0.9 * side, side: 0.45 * side, up: middle.up }),
    ...kingPin(given),
  ];
}

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

/** What a linkage's points could be on one wheel of a car that has another linkage: its steering axis stays. */
export function linkageStarts(
  numbers: Float64Array,
  from: LinkageName,
  to: LinkageName,
  wheel: Wheel,
): readonly Start[] {
  const axis = steeringAxisOf(numbers, from, wheel);
  const given = { axis, upper: upperJoint(axis, from, numbers), numbers };
  return STARTS[to](given).map(({ id, value }) => ({ id: `${wheel}.${id}`, value }));
}
