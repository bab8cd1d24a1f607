import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, minus } from "../../kinematics/math.ts";
import { Pose, Side } from "../../kinematics/slots.ts";
import { drawnSpin } from "../../kinematics/upright.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Body } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";
import { type Marks, type Motion, moved, standing, still } from "./motion.ts";

/** A body's motion from its drawn place to that of a pose, whose side starts at `at`; its numbers are good until the next pose. */
type Move = (poses: Float64Array, at: number) => Motion;

/** How every body of one corner moves. */
export interface CornerBodies {
  readonly wheel: Wheel;
  /** The linkage's own parts beside the upright. */
  readonly parts: readonly Body[];
  /** A drawn place of the corner, by its path below it; the tie rod's inner end is "tie-rod.inner". */
  readonly place: (path: string) => Point;
  /** How a body moves, by its name: "frame", "upright", "steering", or a part's. */
  readonly move: (body: string) => Move;
}

function slot(poses: Float64Array, at: number): Point {
  return { x: poses[at], y: poses[at + 1], z: poses[at + 2] };
}

/** The other corner's place, seen in this corner's frame. */
function across({ x, y, z }: Point): Point {
  return { x, y: -y, z };
}

/**
 * Does something once a pose, though it may be asked for often: a pose of one front end is nothing but its input and its
 * travel.
 */
export function oncePose(write: (poses: Float64Array, at: number) => void): (poses: Float64Array, at: number) => void {
  let [input, travel] = [Number.NaN, Number.NaN];
  return (poses, at) => {
    if (poses[at + Side.Input] === input && poses[at + Side.Travel] === travel) return;
    input = poses[at + Side.Input];
    travel = poses[at + Side.Travel];
    write(poses, at);
  };
}

function moverOf(drawn: Marks, marksIn: (poses: Float64Array, at: number) => Marks): Move {
  const from = standing(drawn);
  const motion = still();
  const write = oncePose((poses, at) => moved(from, marksIn(poses, at), motion));
  return (poses, at) => {
    write(poses, at);
    return motion;
  };
}

const standsStill: Move = () => nowhere;
const nowhere = still();

/** Turns about an axis on the frame, so far that its joint is where the end of the steering axis is. */
function turner(origin: Point, axis: Point, joint: Point, end: "lower" | "upper"): Move {
  const at = end === "lower" ? Side.Lower : Side.Upper;
  const marks = (place: Point): Marks => ({ first: axis, second: minus(place, origin), place: origin });
  return moverOf(marks(joint), (poses, side) => marks(slot(poses, side + at)));
}

/** The upright, by its wheel centre, its spin axis and whichever of its joints lies further off that. */
function uprightMove(study: Study, wheel: Wheel, place: CornerBodies["place"]): Move {
  const corner = study.drawn[wheel];
  const spin = drawnSpin(corner);
  const off = (p: Point) => {
    const across = cross(minus(p, corner.wheelCenter), spin);
    return dot(across, across);
  };
  const lower = "lowerJoint" in study.drawn.linkage[wheel] ? study.drawn.linkage[wheel].lowerJoint : corner.wheelCenter;
  const outer = place("tie-rod.outer");
  const byLower = off(lower) > off(outer);
  const at = byLower ? Side.Lower : Side.TieRodOuter;
  const marks = (p: Point, a: Point, centre: Point): Marks => ({ first: a, second: minus(p, centre), place: centre });
  return moverOf(marks(byLower ? lower : outer, spin, corner.wheelCenter), (poses, side) =>
    marks(slot(poses, side + at), slot(poses, side + Side.Spin), slot(poses, side + Side.WheelCenter)),
  );
}

/**
 * What carries the tie rod's inner end: a rack slides without turning, a plate turns about the column, a centre link goes
 * where its two eyes are and keeps square to the pitman's shaft what was so.
 */
function steeringMove(study: Study, wheel: Wheel, place: CornerBodies["place"]): Move {
  const { mechanism } = study.drawn;
  const eye = place("tie-rod.inner");
  const hand = wheel === "left" ? 1 : -1;
  if (mechanism.kind === "steering-plate") {
    const foot = { ...mechanism.foot, y: hand * mechanism.foot.y };
    const axis = { x: -Math.cos(mechanism.rake), y: 0, z: Math.sin(mechanism.rake) };
    const marks = (p: Point): Marks => ({ first: axis, second: minus(p, foot), place: p });
    return moverOf(marks(eye), (poses, side) => marks(slot(poses, side + Side.TieRodInner)));
  }
  if (mechanism.kind === "relay") {
    const other = (at: number) => (wheel === "left" ? at + Pose.Right : at - Pose.Right);
    const shaft = { ...mechanism.pitmanAxis, y: hand * mechanism.pitmanAxis.y };
    const marks = (p: Point, q: Point): Marks => ({ first: minus(q, p), second: shaft, place: p });
    const ride = study.ridePose(study.straightAhead);
    const opposite = across(slot(ride, other(wheel === "left" ? Pose.Left : Pose.Right) + Side.TieRodInner));
    if (dot(minus(opposite, eye), minus(opposite, eye)) < 1) return slideFrom(eye);
    return moverOf(marks(eye, opposite), (poses, side) =>
      marks(slot(poses, side + Side.TieRodInner), across(slot(poses, other(side) + Side.TieRodInner))),
    );
  }
  return slideFrom(eye);
}

function slideFrom(eye: Point): Move {
  const motion = still();
  return (poses, side) => {
    const now = slot(poses, side + Side.TieRodInner);
    motion[9] = now.x - eye.x;
    motion[10] = now.y - eye.y;
    motion[11] = now.z - eye.z;
    return motion;
  };
}

function partMove({ moves }: Body, place: CornerBodies["place"], upright: () => Move): Move {
  if (moves === "with the upright") return upright();
  if ("across" in moves) return turner(place(moves.across), { x: 0, y: 1, z: 0 }, place(moves.joint), moves.end);
  const [from, to] = moves.about.map(place);
  return turner(from, minus(to, from), place(moves.joint), moves.end);
}

/** How every body of a study's corner moves from where it is drawn. */
export function bodiesOf(study: Study, wheel: Wheel): CornerBodies {
  const { numbers, form } = study.car;
  const side = wheel === "left" ? Pose.Left : Pose.Right;
  const inner = slot(study.ridePose(study.straightAhead), side + Side.TieRodInner);
  const place = (path: string) => (path === "tie-rod.inner" ? inner : pointAt(`${wheel}.${path}`)(numbers));
  const parts: readonly Body[] = linkageOf(form.linkage).bodies;
  const made = new Map<string, Move>();
  const make = (body: string): Move => {
    if (body === "upright") return uprightMove(study, wheel, place);
    if (body === "steering") return steeringMove(study, wheel, place);
    const part = parts.find(({ name }) => name === body);
    return part === undefined ? standsStill : partMove(part, place, () => move("upright"));
  };
  // A search asks for few of them, of cars by the thousand.
  const move = (body: string): Move => {
    const known = made.get(body) ?? make(body);
    made.set(body, known);
    return known;
  };
  return { wheel, parts, place, move };
}
