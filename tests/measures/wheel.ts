import type { Point } from "../../src/kinematics/drawn.ts";
import { newPoses } from "../../src/kinematics/poses.ts";
import { Side } from "../../src/kinematics/slots.ts";
import { cross, dot, minus, plus, times, unit } from "../oracles/vectors.ts";

/** A wheel on its upright, made by hand in a corner's own frame: x forward, y outboard, z up. */
export interface Wheel {
  readonly lower: Point;
  readonly upper: Point;
  readonly wheelCenter: Point;
  readonly spin: Point;
  readonly tieRodOuter: Point;
  readonly tieRodInner: Point;
}

/** Writes a wheel into the side of a pose buffer that starts at `at`. */
export function poseOfWheel(wheel: Wheel, at = 0): Float64Array {
  const poses = newPoses(1);
  const axis = unit(minus(wheel.upper, wheel.lower));
  put(poses, at + Side.Lower, wheel.lower);
  put(poses, at + Side.Upper, wheel.upper);
  put(poses, at + Side.Axis, axis);
  put(poses, at + Side.WheelCenter, wheel.wheelCenter);
  put(poses, at + Side.Spin, unit(wheel.spin));
  put(poses, at + Side.TieRodOuter, wheel.tieRodOuter);
  put(poses, at + Side.TieRodInner, wheel.tieRodInner);
  const rod = unit(minus(wheel.tieRodInner, wheel.tieRodOuter));
  poses[at + Side.Lever] = dot(cross(minus(wheel.tieRodOuter, wheel.lower), rod), axis);
  return poses;
}

function put(poses: Float64Array, at: number, p: Point): void {
  poses.set([p.x, p.y, p.z], at);
}

/** The spin axis of a wheel of that camber (top outward positive) and toe (toe-in positive), rad, outboard. */
export function spinOf(camber: number, toe: number): Point {
  return {
    x: Math.cos(camber) * Math.sin(toe),
    y: Math.cos(camber) * Math.cos(toe),
    z: -Math.sin(camber),
  };
}

/** A place on the rim of the disc of that radius, `round` rad from where one starts. */
export function onDisc(wheel: Wheel, radius: number, round: number): Point {
  const spin = unit(wheel.spin);
  const across = unit(cross(spin, { x: 0, y: 0, z: 1 }));
  const down = cross(spin, across);
  return plus(wheel.wheelCenter, plus(times(across, radius * Math.cos(round)), times(down, radius * Math.sin(round))));
}

/** A wheel turned bodily about the vertical through the origin. */
export function turned(wheel: Wheel, by: number): Wheel {
  const turn = ({ x, y, z }: Point): Point => ({
    x: x * Math.cos(by) - y * Math.sin(by),
    y: x * Math.sin(by) + y * Math.cos(by),
    z,
  });
  return {
    lower: turn(wheel.lower),
    upper: turn(wheel.upper),
    wheelCenter: turn(wheel.wheelCenter),
    spin: turn(wheel.spin),
    tieRodOuter: turn(wheel.tieRodOuter),
    tieRodInner: turn(wheel.tieRodInner),
  };
}

/** A wheel without camber or toe on an upright king pin, 50 mm inboard of it and 20 mm behind the pin. */
export const plainWheel: Wheel = {
  lower: { x: 20, y: 600, z: 200 },
  upper: { x: 20, y: 600, z: 400 },
  wheelCenter: { x: 0, y: 650, z: 300 },
  spin: { x: 0, y: 1, z: 0 },
  tieRodOuter: { x: -80, y: 600, z: 250 },
  tieRodInner: { x: -80, y: 250, z: 250 },
};
