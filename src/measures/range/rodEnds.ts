import type { Point } from "../../kinematics/drawn.ts";
import { cross, dot, minus, plus, times } from "../../kinematics/math.ts";
import { Side } from "../../kinematics/slots.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { Joint } from "../../vehicle/linkage.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import type { Direction, DirectionName, RodEnd } from "../../vehicle/sections/rod-ends.ts";
import { tieRodJoints } from "../../vehicle/sections/rod-ends.ts";
import type { Study } from "../study.ts";
import type { CornerBodies } from "./bodies.ts";
import { turned, turnedBack } from "./motion.ts";

/** A rod end of one corner, ready to be asked how it stands in a pose. */
export interface RodEndInPlace {
  readonly wheel: Wheel;
  readonly joint: Joint;
  readonly end: RodEnd;
  /** The bolt's direction as drawn, a unit vector in the corner's frame. */
  readonly bolt: Point;
  /** The shank's direction as drawn. */
  readonly shank: Point;
  /** Where the shank points in a pose, as seen from the body that carries the bolt: a unit vector. */
  readonly shankIn: (poses: Float64Array, at: number) => Point;
}

/**
 * Swing of a rod end, rad, from 0 to a right angle: asin|e·b|, e along the shank and b along the bolt, both unit vectors. 0
 * while the shank is square to the bolt. Definition, as ISO 12240-4 gives a rod end's tilt. By atan2, since asin loses
 * digits near a right angle.
 */
export function swing(e: Point, b: Point): number {
  const across = cross(e, b);
  return Math.atan2(Math.abs(dot(e, b)), Math.sqrt(dot(across, across)));
}

function unit(a: Point): Point {
  const size = Math.sqrt(dot(a, a));
  return size > 0 ? times(a, 1 / size) : a;
}

const up: Point = { x: 0, y: 0, z: 1 };

/** A direction by its name, for a shank that points along e as drawn. */
export function namedDirection(name: DirectionName, e: Point): Point {
  if (name === "vertical") return up;
  if (name === "fore-and-aft") return { x: 1, y: 0, z: 0 };
  if (name === "crosswise") return { x: 0, y: 1, z: 0 };
  const flat = cross(e, up);
  // Square to an upright shank there is no more upright direction than another: fore and aft is taken.
  const level = dot(flat, flat) > 1e-12 ? unit(flat) : { x: 1, y: 0, z: 0 };
  return name === "square-flat" ? level : unit(cross(level, e));
}

function vectorOf({ ahead, out, up: rise }: Direction): Point {
  return { x: ahead, y: out, z: rise };
}

function middle(points: readonly Point[]): Point {
  return times(
    points.reduce((sum, p) => plus(sum, p), { x: 0, y: 0, z: 0 }),
    1 / points.length,
  );
}

/** How the shank stands in a pose, in the corner's frame: along the tie rod, or turned with its body. */
function shankIn(bodies: CornerBodies, joint: Joint, body: string, drawn: Point) {
  if (body === "tie-rod") {
    const sign = joint.path[1] === "outer" ? 1 : -1;
    return (poses: Float64Array, at: number) =>
      unit({
        x: sign * (poses[at + Side.TieRodOuter] - poses[at + Side.TieRodInner]),
        y: sign * (poses[at + Side.TieRodOuter + 1] - poses[at + Side.TieRodInner + 1]),
        z: sign * (poses[at + Side.TieRodOuter + 2] - poses[at + Side.TieRodInner + 2]),
      });
  }
  const move = bodies.move(body);
  return (poses: Float64Array, at: number) => turned(move(poses, at), drawn);
}

function inPlace(bodies: CornerBodies, joint: Joint, end: RodEnd): RodEndInPlace | null {
  const carrier = end["bolt-on"] ?? joint.boltOn;
  const holder = carrier === joint.boltOn ? joint.shankOn : joint.boltOn;
  const place = bodies.place(joint.path.join("."));
  const shank = unit(end.shank === null ? minus(place, middle(joint.from.map(bodies.place))) : vectorOf(end.shank));
  const bolt = unit(typeof end.bolt === "string" ? namedDirection(end.bolt, shank) : vectorOf(end.bolt));
  if (dot(shank, shank) === 0 || dot(bolt, bolt) === 0) return null;
  const inCorner = shankIn(bodies, joint, holder, shank);
  const move = bodies.move(carrier);
  return {
    wheel: bodies.wheel,
    joint,
    end,
    bolt,
    shank,
    shankIn: (poses, at) => turnedBack(move(poses, at), inCorner(poses, at)),
  };
}

/** The rod ends that the file has at one corner. */
export function rodEndsAt(study: Study, bodies: CornerBodies): readonly RodEndInPlace[] {
  const given = study.car.sections["rod-ends"]?.[bodies.wheel] ?? null;
  if (given === null) return [];
  const joints: readonly Joint[] = [...tieRodJoints, ...linkageOf(study.car.form.linkage).joints];
  return joints.flatMap((joint) => {
    const end = given[joint.path[0]]?.[joint.path[1]] ?? null;
    const ready = end === null ? null : inPlace(bodies, joint, end);
    return ready === null ? [] : [ready];
  });
}
