import type { Point } from "../kinematics/drawn.ts";
import { cross, dot, minus, plus, times } from "../kinematics/math.ts";
import { Side } from "../kinematics/slots.ts";
import type { Shock } from "../vehicle/sections/shock.ts";
import type { CornerBodies } from "./range/bodies.ts";
import { placeMoved } from "./range/motion.ts";

/** A shock in one pose. Lengths mm. */
export interface ShockPlace {
  readonly length: number;
  /** Shock travel over wheel travel: see motionRatio. */
  readonly ratio: number;
}

/** A shock ready to be asked how it stands in a pose whose side starts at `at` and closes. */
export type ShockIn = (poses: Float64Array, at: number) => ShockPlace;

function slot(poses: Float64Array, at: number): Point {
  return { x: poses[at], y: poses[at + 1], z: poses[at + 2] };
}

/** Velocity, per mm of wheel travel, of a place p that a body carries. */
function velocityOf(
  bodies: CornerBodies,
  body: string,
  p: (poses: Float64Array, at: number) => Point,
): (poses: Float64Array, at: number) => Point {
  const part = bodies.parts.find(({ name }) => name === body);
  const materialAt = (poses: Float64Array, at: number, place: Point) =>
    plus(
      slot(poses, at + Side.LowerRate),
      cross(slot(poses, at + Side.Turn), minus(place, slot(poses, at + Side.Lower))),
    );
  if (part === undefined || part.moves === "with the upright")
    return (poses, at) => materialAt(poses, at, p(poses, at));
  const { moves } = part;
  const origin = bodies.place("across" in moves ? moves.across : moves.about[0]);
  const axis = "across" in moves ? { x: 0, y: 1, z: 0 } : minus(bodies.place(moves.about[1]), origin);
  const joint = moves.end === "lower" ? Side.Lower : Side.Upper;
  return (poses, at) => {
    const place = slot(poses, at + joint);
    // The joint moves at ω × r about the axis, so that ω is its velocity along axis × r over that vector's square.
    const way = cross(axis, minus(place, origin));
    const rate = dot(materialAt(poses, at, place), way) / dot(way, way);
    return times(cross(axis, minus(p(poses, at), origin)), rate);
  };
}

/**
 * A shock's length and its motion ratio: shock travel over wheel travel, positive where the shock closes in bump. Some
 * shops quote its inverse. Exact, from the foot's velocity v: −v·s, s the unit vector from the top to the foot.
 */
export function shockAt(bodies: CornerBodies, shock: Pick<Shock, "top" | "foot" | "on">): ShockIn {
  const point = ({ ahead, out, up }: Shock["top"]): Point => ({ x: ahead, y: out, z: up });
  const [top, drawn] = [point(shock.top), point(shock.foot)];
  const move = bodies.move(shock.on);
  const foot = (poses: Float64Array, at: number) => placeMoved(move(poses, at), drawn);
  const velocity = velocityOf(bodies, shock.on, foot);
  return (poses, at) => {
    const along = minus(foot(poses, at), top);
    const length = Math.sqrt(dot(along, along));
    return { length, ratio: -dot(velocity(poses, at), along) / length };
  };
}

/**
 * A wheel's rate, N/mm: how much more its spring pushes back per mm of travel. The spring's force S acts on the wheel as S r,
 * r the motion ratio, so the rate is k r² + S dr/dz: the square term (lever form in Barton and Fieldhouse, Automotive Chassis
 * Engineering, ch. 3), and what a ratio that changes with the travel z adds under load. k is in N/mm, S in N and positive
 * where the spring is squeezed, dr/dz per mm of bump.
 */
export function wheelRate(spring: number, ratio: number, force: number, ratioChange: number): number {
  return spring * ratio * ratio + force * ratioChange;
}
