import type { DoubleArmCar, Places, SideName } from "./corner.ts";
import { cross, dot, minus, plus, point, times, unit, type Vector } from "./vectors.ts";

/**
 * How an upright between two arms moves at a pose, from lines and planes alone. Each arm lets its joint move square to its
 * own plane (the one through both pivots and the joint), which is what a turn about any line in that plane does. So an
 * upright between two arms turns about the line in which the planes meet, and beside that about its king pin; the two
 * turns stand to each other as leaves the tie rod's length what it is. Elementary geometry (screws of freedom).
 */
export interface ArmPlanes {
  /** The line in which both planes meet: a place on it, and its direction. */
  readonly place: Vector;
  readonly along: Vector;
  /** Velocity of a place fixed to the upright, for one mm of the wheel centre's rise. */
  readonly velocity: (place: Vector) => Vector;
}

export function armPlanes(drawn: DoubleArmCar, side: SideName, at: Places): ArmPlanes {
  const { lowerFront, lowerRear, upperFront, upperRear } = drawn.linkage[side];
  const lower = cross(minus(lowerRear, lowerFront), minus(at.lower, lowerFront));
  const upper = cross(minus(upperRear, upperFront), minus(at.upper, upperFront));
  const along = cross(lower, upper);
  const toLower = times(cross(upper, along), dot(lower, lowerFront) / dot(along, along));
  const toUpper = times(cross(along, lower), dot(upper, upperFront) / dot(along, along));
  const place = plus(toLower, toUpper);
  const aboutLine = (p: Vector) => cross(unit(along), minus(p, place));
  const aboutKingPin = (p: Vector) => cross(unit(minus(at.upper, at.lower)), minus(p, at.lower));
  const rod = minus(at.tieRodOuter, at.tieRodInner);
  const share = -dot(aboutLine(at.tieRodOuter), rod) / dot(aboutKingPin(at.tieRodOuter), rod);
  const moves = (p: Vector) => plus(aboutLine(p), times(aboutKingPin(p), share));
  const rise = moves(at.wheelCenter).z;
  return { place, along, velocity: (p) => times(moves(p), 1 / rise) };
}

/** The lowest place of a wheel's disc. */
export function contactOf({ wheelCenter, spin }: Places, radius: number): Vector {
  return plus(wheelCenter, times(unit(minus(times(spin, spin.z), point(0, 0, 1))), radius));
}

/** Where the arms' planes, cut across the car at the wheel's centre, meet: the instant centre of the drawing board. */
export function cutAtWheel({ place, along }: ArmPlanes, ahead: number): Vector {
  return plus(place, times(along, (ahead - place.x) / along.x));
}
