import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, length, minus, plus, times } from "../../kinematics/math.ts";
import { drawnSpin } from "../../kinematics/upright.ts";
import { numberAt, pointAt } from "../../measures/drawn/places.ts";
import type { Car, Wheel } from "../../vehicle/car.ts";
import type { LinkageName } from "../../vehicle/linkages.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { uprightPoints } from "../adjusters/redraw.ts";

/** A linear map of directions; applied to a vector. */
type Turn = (v: Point) => Point;

/** About the unit vector `axis` by an angle, rad (Rodrigues' formula). */
function turnAbout(axis: Point, angle: number): Turn {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return (v) => plus(plus(times(v, c), times(cross(axis, v), s)), times(axis, dot(axis, v) * (1 - c)));
}

const unit = (v: Point) => times(v, 1 / length(v));

/** The angle nearest to 0, rad, at which a cos t + b sin t = c; null where there is none. */
function angleWhere(a: number, b: number, c: number): number | null {
  const size = Math.hypot(a, b);
  if (!(Math.abs(c) <= size) || size === 0) return null;
  const [middle, half] = [Math.atan2(b, a), Math.acos(c / size)];
  const near = (angle: number) => Math.atan2(Math.sin(angle), Math.cos(angle));
  const [one, other] = [near(middle - half), near(middle + half)];
  return Math.abs(one) <= Math.abs(other) ? one : other;
}

/** How far a vector has to be turned about a unit axis for its part along `along` to be `target`; the least such angle. */
function turnUntil(v: Point, axis: Point, along: Point, target: number): number | null {
  const still = times(axis, dot(axis, v));
  const turning = minus(v, still);
  return angleWhere(dot(turning, along), dot(cross(axis, turning), along), target - dot(still, along));
}

/** The way a corner is built, and how it has to be set, in the corner's own frame: mm, rad. */
interface Corner {
  readonly at: (path: string) => Point;
  /** The spin axis as it came out, and the one with camber and toe as drawn. */
  readonly spin: Point;
  readonly drawnSpin: Point;
  readonly toe: number;
  readonly caster: number;
  /** The wheel centre's height as drawn. */
  readonly height: number;
}

/** Where the upright goes: a place of it, and a direction. */
interface Carry {
  readonly place: (p: Point) => Point;
  readonly turn: Turn;
}

const upward: Point = { x: 0, y: 0, z: 1 };
const across: Point = { x: 0, y: 1, z: 0 };

/** The carry that turns about a place, which itself goes to another. */
function carryAbout(from: Point, to: Point, turn: Turn): Carry {
  return { place: (p) => plus(to, turn(minus(p, from))), turn };
}

/** The turn that brings one unit vector to another the shortest way. */
function shortest(from: Point, to: Point): Turn {
  const axis = cross(from, to);
  const sine = length(axis);
  return sine === 0 ? (v) => v : turnAbout(times(axis, 1 / sine), Math.atan2(sine, dot(from, to)));
}

/** The turn about the steering axis k that brings the toe to what is drawn: the spin axis then has no part across it. */
function toToe({ toe }: Pick<Corner, "toe">, k: Point, spin: Point): Turn | null {
  const angle = turnUntil(spin, k, { x: Math.cos(toe), y: -Math.sin(toe), z: 0 }, 0);
  return angle === null ? null : turnAbout(k, angle);
}

/** An arm's joint, swung about its axis until the wheel centre, carried with it, is as high as drawn. */
function atHeight({ at, height }: Corner, arm: Arm, turn: Turn): Carry | null {
  const joint = at("lower-arm.joint");
  const rise = turn(minus(at("wheel.center"), joint)).z;
  const angle = turnUntil(minus(joint, arm.on), arm.axis, upward, height - rise - arm.on.z);
  if (angle === null) return null;
  return carryAbout(joint, plus(arm.on, turnAbout(arm.axis, angle)(minus(joint, arm.on))), turn);
}

/** The axis that an arm turns about: a place on it, and its unit vector. */
interface Arm {
  readonly on: Point;
  readonly axis: Point;
}

/**
 * Both legs of the upper arm are made longer or shorter: the upright turns until the spin axis is as drawn (camber, and toe by
 * the rod), and then about the spin axis until the steering axis has its caster.
 */
function doubleArm(corner: Corner): Carry | null {
  const { at, caster } = corner;
  const first = shortest(corner.spin, corner.drawnSpin);
  const k = first(minus(at("upper-arm.joint"), at("lower-arm.joint")));
  const angle = turnUntil(k, corner.drawnSpin, { x: Math.cos(caster), y: 0, z: Math.sin(caster) }, 0);
  if (angle === null) return null;
  const second = turnAbout(corner.drawnSpin, angle);
  const [front, rear] = [at("lower-arm.front"), at("lower-arm.rear")];
  return atHeight(corner, { on: front, axis: unit(minus(rear, front)) }, (v) => second(first(v)));
}

/** The upper arm is made longer or shorter for caster; both joints stay where they are across the car, and so camber stays. */
function trailingArms(corner: Corner): Carry | null {
  const { at, caster, spin } = corner;
  const k = minus(at("upper-arm.joint"), at("lower-arm.joint"));
  // Turning about the axis across the car by an angle leans the top back by it.
  const first = turnAbout(across, Math.atan2(-k.x, k.z) - caster);
  const second = toToe(corner, unit(first(k)), first(spin));
  if (second === null) return null;
  return atHeight(corner, { on: at("lower-arm.pivot"), axis: across }, (v) => second(first(v)));
}

const strutRounds = 40;

/** Both legs of the lower arm are made longer or shorter: the strut's line still goes through its top mount. */
function strut(corner: Corner): Carry | null {
  const { at, caster, height } = corner;
  const [top, bottom, joint, center] = [at("strut.top"), at("strut.bottom"), at("lower-arm.joint"), at("wheel.center")];
  const first = shortest(corner.spin, corner.drawnSpin);
  const carried = (angle: number): Carry => {
    const second = turnAbout(corner.drawnSpin, angle);
    const turn: Turn = (v) => second(first(v));
    const line = turn(minus(top, bottom));
    const foot = height - turn(minus(center, bottom)).z;
    return carryAbout(bottom, minus(top, times(line, (top.z - foot) / line.z)), turn);
  };
  const off = (carry: Carry) => {
    const k = minus(top, carry.place(joint));
    return Math.atan2(-k.x, k.z) - caster;
  };
  // Secant: the caster changes very nearly as the turn does.
  let [before, here] = [carried(0), carried(1e-3)];
  let [angle, step] = [1e-3, 1e-3];
  for (let round = 0; round < strutRounds; round++) {
    const [was, is] = [off(before), off(here)];
    if (Math.abs(is) < 1e-13 || is === was) break;
    step = (-is * step) / (is - was);
    angle += step;
    [before, here] = [here, carried(angle)];
  }
  return Math.abs(off(here)) < 1e-9 ? here : null;
}

/** Nothing but the toe can be set: the upright turns about its steering axis. */
function toeAlone(corner: Corner, lower: Point, upper: Point): Carry | null {
  const turn = toToe(corner, unit(minus(upper, lower)), corner.spin);
  return turn === null ? null : carryAbout(lower, lower, turn);
}

/** The ends of the steering axis of each linkage. */
const axisEnds: Readonly<Record<LinkageName, readonly [lower: string, upper: string]>> = {
  "double-arm": ["lower-arm.joint", "upper-arm.joint"],
  "trailing-arms": ["lower-arm.joint", "upper-arm.joint"],
  strut: ["lower-arm.joint", "strut.top"],
  "pivoting-beam": ["king-pin.lower", "king-pin.upper"],
  "fixed-kingpin": ["king-pin.lower", "king-pin.upper"],
};

const setting: Readonly<Partial<Record<LinkageName, (corner: Corner) => Carry | null>>> = {
  "double-arm": doubleArm,
  "trailing-arms": trailingArms,
  strut,
};

/** What can be set again at a linkage's arms, and by what, in a builder's words; null where there is nothing. */
export const armsSet: Readonly<Record<LinkageName, { readonly what: string; readonly by: string } | null>> = {
  "double-arm": { what: "camber and caster", by: "both legs of the upper arm, at its rod ends" },
  "trailing-arms": { what: "caster", by: "the upper arm's rod end (camber stays as it was welded)" },
  strut: { what: "camber and caster", by: "both legs of the lower arm, at its rod ends" },
  "pivoting-beam": null,
  "fixed-kingpin": null,
};

/** Sets one corner of a car that was built to some numbers again, in those numbers; false where it cannot be. */
export type SetCorner = (numbers: Float64Array) => boolean;

interface Places {
  readonly read: (numbers: Float64Array) => Point;
  readonly first: number;
  readonly second: number;
  readonly third: number;
}

function placesOf(id: string): Places {
  const [first, second, third] = [indexOf(`${id}.ahead`), indexOf(`${id}.out`), indexOf(`${id}.up`)];
  return { read: pointAt(id), first, second, third };
}

/** All points of a corner that setting it reads, by their path. */
const pointsRead: Readonly<Record<LinkageName, readonly string[]>> = {
  "double-arm": ["lower-arm.front", "lower-arm.rear"],
  "trailing-arms": ["lower-arm.pivot"],
  strut: ["strut.top"],
  "pivoting-beam": [],
  "fixed-kingpin": ["king-pin.lower", "king-pin.upper"],
};

/**
 * How one wheel of a car is set again once all is welded: its toe, as drawn, by its tie rod; and, where `arms`, camber and
 * caster, as drawn, at the arms; with the wheel centre as high as drawn where an arm lets it. The upright is one rigid piece
 * as it was welded: it is carried there whole, and written where it then is, so that the tie rod which is cut to fit holds
 * that toe.
 */
export function setCornerOf(
  { numbers: drawn, form }: Pick<Car, "numbers" | "form">,
  wheel: Wheel,
  arms: boolean,
): SetCorner {
  const { linkage } = form;
  const [lower, upper] = axisEnds[linkage];
  const moved = uprightPoints(linkage);
  const places = new Map(
    [...moved, ...pointsRead[linkage], lower, upper].map((path) => [path, placesOf(`${wheel}.${path}`)]),
  );
  const camberAt = numberAt(`${wheel}.wheel.camber`);
  const toeAt = numberAt(`${wheel}.wheel.toe`);
  const [camberIndex, toeIndex] = [indexOf(`${wheel}.wheel.camber`), indexOf(`${wheel}.wheel.toe`)];
  const pointIn = (numbers: Float64Array) => (path: string) => {
    const known = places.get(path);
    if (known === undefined) throw new Error(`${path} is no point of this corner`);
    return known.read(numbers);
  };
  const from = pointIn(drawn);
  const axis = minus(from(upper), from(lower));
  const toe = toeAt(drawn);
  const fixed = {
    toe,
    caster: Math.atan2(-axis.x, axis.z),
    height: from("wheel.center").z,
    drawnSpin: drawnSpin({ camber: camberAt(drawn), toe }),
  };
  const set = arms ? setting[linkage] : undefined;
  return (numbers) => {
    const at = pointIn(numbers);
    const spin = drawnSpin({ camber: camberAt(numbers), toe: toeAt(numbers) });
    const corner: Corner = { ...fixed, at, spin };
    const carry = set === undefined ? toeAlone(corner, at(lower), at(upper)) : set(corner);
    if (carry === null) return false;
    const now = moved.map((path) => carry.place(at(path)));
    for (const [i, path] of moved.entries()) {
      const to = places.get(path);
      if (to === undefined) continue;
      [numbers[to.first], numbers[to.second], numbers[to.third]] = [now[i].x, now[i].y, now[i].z];
    }
    const a = carry.turn(spin);
    numbers[camberIndex] = Math.atan2(-a.z, Math.hypot(a.x, a.y));
    numbers[toeIndex] = Math.atan2(a.x, a.y);
    return true;
  };
}
