import type { Mechanism, Point, Relay, SteeringPlate } from "../../kinematics/drawn.ts";
import type { Place } from "../points.ts";
import type { Stick } from "./stick.ts";

/** What moves both inner eyes, as it stands: where they are in a solved pose, and the input that put them there. */
interface Moved {
  readonly input: number;
  readonly left: Place;
  readonly right: Place;
}

type Sticks<Kind> = (drawn: Extract<Mechanism, { kind: Kind }>, moved: Moved) => readonly Stick[];

/** Length of the piece of a shaft or column that is drawn, mm. */
const shaft = 150;

const bar = (places: readonly Place[]): Stick => ({ wheel: null, part: "steering", places });
const fixed = (places: readonly Place[]): Stick => ({ wheel: null, part: "fixed", places });

/** The bodies of each mechanism: a new one is one entry here. */
const BODIES: { readonly [Kind in Mechanism["kind"]]: Sticks<Kind> } = {
  rack: (_, { left, right }) => [bar([left, right])],
  "centre-rack": (_, { left, right }) => [bar([left, right])],
  "steering-plate": plateSticks,
  relay: relaySticks,
};

/** The bodies of a steering mechanism in a solved pose, in the vehicle's frame, mm. */
export function mechanismSticks(mechanism: Mechanism, moved: Moved): readonly Stick[] {
  const bodies = BODIES[mechanism.kind] as Sticks<Mechanism["kind"]>;
  return bodies(mechanism, moved);
}

function place({ x, y, z }: Point): Place {
  return [x, y, z];
}

function minus(a: Place, b: Place): Place {
  return [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
}

function plus(a: Place, b: Place, times = 1): Place {
  return [a[0] + times * b[0], a[1] + times * b[1], a[2] + times * b[2]];
}

function dot(a: Place, b: Place): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Place, b: Place): Place {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}

function unit(a: Place): Place {
  const size = Math.sqrt(dot(a, a));
  return [a[0] / size, a[1] / size, a[2] / size];
}

/** A vector turned about a unit axis (Rodrigues' rotation formula). */
function turned(a: Place, axis: Place, angle: number): Place {
  const along = dot(a, axis) * (1 - Math.cos(angle));
  return plus(
    plus([a[0] * Math.cos(angle), a[1] * Math.cos(angle), a[2] * Math.cos(angle)], cross(axis, a), Math.sin(angle)),
    axis,
    along,
  );
}

/** The plate from eye to eye by way of the column, and a piece of the column. */
function plateSticks({ foot, rake }: SteeringPlate, { left, right }: Moved): readonly Stick[] {
  const axis: Place = [-Math.cos(rake), 0, Math.sin(rake)];
  const middle = plus(left, minus(right, left), 0.5);
  const centre = plus(place(foot), axis, dot(minus(middle, place(foot)), axis));
  return [bar([left, centre, right]), fixed([centre, plus(centre, axis, shaft)])];
}

/** Both arms, the centre link between their joints with the eyes on it, and their shafts. */
function relaySticks(relay: Relay, { input, left, right }: Moved): readonly Stick[] {
  const pitmanAxis = unit(place(relay.pitmanAxis));
  const pivot = place(relay.pitmanPivot);
  const pitman = plus(pivot, turned(minus(place(relay.pitmanJoint), pivot), pitmanAxis, input * relay.turn));
  const idler = idlerJoint(relay, pitmanAxis, pitman, { left, right });
  const idlerPivot = place(relay.idlerPivot);
  return [
    bar([pivot, pitman]),
    bar([pitman, idler]),
    bar([idlerPivot, idler]),
    bar([left, right]),
    fixed([pivot, plus(pivot, pitmanAxis, shaft)]),
    fixed([idlerPivot, plus(idlerPivot, unit(place(relay.idlerAxis)), shaft)]),
  ];
}

/**
 * The idler arm's joint, from where the centre link has carried the eye that is further from the pitman arm: the link
 * keeps its share along the pitman's axis and turns about it (parallel shafts), or the eye lies on the link's own line.
 */
function idlerJoint(relay: Relay, axis: Place, pitman: Place, now: Pick<Moved, "left" | "right">): Place {
  const drawnPitman = place(relay.pitmanJoint);
  const link = minus(place(relay.idlerJoint), drawnPitman);
  const arms = (
    [
      [place(relay.leftEye), now.left],
      [place(relay.rightEye), now.right],
    ] as const
  ).map(([drawn, here]) => [minus(drawn, drawnPitman), minus(here, pitman)] as const);
  const [was, is] = [...arms].sort(([a], [b]) => dot(b, b) - dot(a, a))[0] ?? [link, link];
  const share = dot(was, link) / dot(link, link);
  const off = plus(was, link, -share);
  if (dot(off, off) <= 1e-12 * dot(link, link)) return plus(pitman, is, 1 / share);
  const flat = (a: Place) => plus(a, axis, -dot(a, axis));
  const [from, to] = [flat(was), flat(is)];
  return plus(pitman, turned(link, axis, Math.atan2(dot(cross(from, to), axis), dot(from, to))));
}
