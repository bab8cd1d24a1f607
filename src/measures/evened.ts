import type { Corner, Drawn, Mechanism, Point } from "../kinematics/drawn.ts";
import type { Setting } from "./front.ts";
import type { Pair } from "./span.ts";
import type { Stops, WheelStops } from "./stops.ts";

// One cause of unequal locks taken out of a front end at a time: both sides get the mean of what they have.

/** A front end as drawn, and what it is used over. */
export interface Case {
  readonly drawn: Drawn;
  readonly setting: Setting;
}

function mean(a: number, b: number): number {
  return (a + b) / 2;
}

function evenPair({ left, right }: Pair<number>): Pair<number> {
  const both = mean(left, right);
  return { left: both, right: both };
}

/** The rack's or column's middle with the wheels straight. */
export function onItsMiddle({ drawn, setting }: Case): Case {
  return { drawn: { ...drawn, mechanism: { ...drawn.mechanism, straightAhead: 0 } }, setting };
}

function evenEyes(left: Point, right: Point): { readonly leftEye: Point; readonly rightEye: Point } {
  const y = mean(left.y, right.y);
  return { leftEye: { ...left, y }, rightEye: { ...right, y } };
}

function centred(mechanism: Mechanism): Mechanism {
  if (mechanism.kind === "rack") return { ...mechanism, offset: 0 };
  if (mechanism.kind === "centre-rack") return { ...mechanism, ...evenEyes(mechanism.leftEye, mechanism.rightEye) };
  if (mechanism.kind === "steering-plate") {
    const eyes = evenEyes(mechanism.leftEye, mechanism.rightEye);
    return { ...mechanism, ...eyes, foot: { ...mechanism.foot, y: 0 } };
  }
  // The relay's eyes are in the vehicle's frame: y to the driver's left.
  const y = mean(mechanism.leftEye.y, -mechanism.rightEye.y);
  return { ...mechanism, leftEye: { ...mechanism.leftEye, y }, rightEye: { ...mechanism.rightEye, y: -y } };
}

/** How far the midpoint of the inner eyes is off the centreline, mm, to the driver's left positive. */
export function offsetOf(mechanism: Mechanism): number {
  if (mechanism.kind === "rack") return mechanism.offset;
  if (mechanism.kind === "relay") return mean(mechanism.leftEye.y, mechanism.rightEye.y);
  return mean(mechanism.leftEye.y, -mechanism.rightEye.y);
}

/** The inner eyes alike on both sides of the centreline. */
export function withoutOffset({ drawn, setting }: Case): Case {
  return { drawn: { ...drawn, mechanism: centred(drawn.mechanism) }, setting };
}

function less(a: Point, b: Point): Point {
  return { x: a.x - b.x, y: a.y - b.y, z: a.z - b.z };
}

/** Where each tab is from its upright's lower joint, in its own corner's frame. */
export function tabsOf({ linkage, left, right }: Drawn): Pair<Point> {
  return {
    left: less(left.tieRodOuter, linkage.left.lowerJoint),
    right: less(right.tieRodOuter, linkage.right.lowerJoint),
  };
}

/** Each tab at the mean of both tabs' places from their lower joints. */
export function withLikeTabs({ drawn, setting }: Case): Case {
  const { left, right } = tabsOf(drawn);
  const at = { x: mean(left.x, right.x), y: mean(left.y, right.y), z: mean(left.z, right.z) };
  const moved = (corner: Corner, lower: Point): Corner => ({
    ...corner,
    tieRodOuter: { x: lower.x + at.x, y: lower.y + at.y, z: lower.z + at.z },
  });
  const { linkage } = drawn;
  return {
    drawn: {
      ...drawn,
      left: moved(drawn.left, linkage.left.lowerJoint),
      right: moved(drawn.right, linkage.right.lowerJoint),
    },
    setting,
  };
}

/** A stop that only one wheel has is taken away; two are made alike. */
function evenTurns({ left, right }: Pair<number>): Pair<number> {
  return left === 0 || right === 0 ? { left: 0, right: 0 } : evenPair({ left, right });
}

function evenWheels({ inner, outer }: WheelStops): WheelStops {
  return { inner: evenTurns(inner), outer: evenTurns(outer) };
}

function evenStops({ collar, upright, tyreRub }: Stops): Stops {
  return { collar: evenPair(collar), upright: evenWheels(upright), tyreRub: evenWheels(tyreRub) };
}

/** Both ends of the steering's travel, and all that stops it sooner, alike. */
export function withLikeStops({ drawn, setting }: Case): Case {
  return {
    drawn,
    setting: { ...setting, inputTravel: evenPair(setting.inputTravel), stops: evenStops(setting.stops) },
  };
}
