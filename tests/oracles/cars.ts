import fc from "fast-check";
import type { Corner, DoubleArmPoints, Point, Rack } from "../../src/kinematics/drawn.ts";
import { type DoubleArmCar, drawnPlaces, innerEye, type Places, sides } from "./corner.ts";
import { cross, distance, dot, minus, plus, point, unit } from "./vectors.ts";

/** Random front ends that a buggy builder could draw, for property tests: 300 to 1300 mm to each wheel, sides alike or not. */

/** Runs repeat bit for bit; RACKWRIGHT_SEED in the environment tries other cars. */
export const seed = Number(process.env.RACKWRIGHT_SEED ?? 20261125);

export interface CornerDrawing {
  readonly arms: DoubleArmPoints;
  readonly corner: Corner;
  /** Where the tie rod's inner eye would best be, before the rack is put across the car. */
  readonly eye: Point;
}

export interface CarAndPose {
  readonly drawn: DoubleArmCar;
  readonly input: number;
  readonly left: number;
  readonly right: number;
}

const share = fc.double({ min: 0, max: 1, noNaN: true });
export const within = (low: number, high: number) => share.map((t) => low + (high - low) * t);
const offset = (x: number, y: number, z: number) =>
  fc.tuple(within(-x, x), within(-y, y), within(-z, z)).map(([a, b, c]) => point(a, b, c));

/** One corner with a wheel `out` mm from the centreline and its tabs behind (-1) or ahead (1) of the king pin. */
export function cornerDrawing(out: number, tabs: number): fc.Arbitrary<CornerDrawing> {
  const size = out / 700;
  const tabSize = Math.min(1.25, Math.max(0.75, size));
  return fc
    .record({
      wheelUp: within(210, 420),
      hub: within(50, 130),
      lowerDrop: within(30, 120),
      pin: within(130, 280),
      lean: within(-10, 60),
      rake: within(-15, 60),
      lowerReach: within(250, 470),
      upperReach: within(200, 400),
      lowerSlope: within(-0.22, 0.22),
      upperSlope: within(-0.22, 0.22),
      spread: within(80, 200),
      frontSkew: offset(25, 45, 18),
      rearSkew: offset(25, 45, 18),
      upperFrontSkew: offset(25, 45, 18),
      upperRearSkew: offset(25, 45, 18),
      tab: within(65, 120),
      tabOut: within(-45, 35),
      tabUp: within(0.1, 0.7),
      eyeOff: offset(45, 40, 40),
      camber: within(-0.04, 0.02),
      toe: within(-0.01, 0.01),
    })
    .map((d) => {
      const center = point(0, out, d.wheelUp);
      const lower = point(0.2 * d.rake, out - d.hub * size, d.wheelUp - d.lowerDrop);
      const upper = point(-0.8 * d.rake, lower.y - d.lean, lower.z + d.pin);
      const pivot = (joint: Point, reach: number, slope: number, ahead: number, skew: Point): Point =>
        plus(point(ahead, joint.y - reach * size, joint.z + slope * reach * size), skew);
      const tab = d.tab * tabSize;
      const eyeOut = lower.y - Math.max(d.lowerReach * size, 1.8 * tab);
      const tieRodOuter = point(tabs * tab, lower.y + d.tabOut, lower.z + d.tabUp * d.pin);
      return {
        arms: {
          lowerFront: pivot(lower, d.lowerReach, d.lowerSlope, d.spread, d.frontSkew),
          lowerRear: pivot(lower, d.lowerReach, d.lowerSlope, -d.spread, d.rearSkew),
          lowerJoint: lower,
          upperFront: pivot(upper, d.upperReach, d.upperSlope, 0.8 * d.spread, d.upperFrontSkew),
          upperRear: pivot(upper, d.upperReach, d.upperSlope, -0.8 * d.spread, d.upperRearSkew),
          upperJoint: upper,
        },
        corner: { tieRodOuter, tieRodLength: null, wheelCenter: center, camber: d.camber, toe: d.toe },
        eye: plus(point(tieRodOuter.x, eyeOut, tieRodOuter.z + d.lowerSlope * (lower.y - eyeOut)), d.eyeOff),
      };
    });
}

/** Sine of the angle between the tie rod and its tab's path about the king pin: nobody draws a car near this dead point. */
export function rodSine({ lower, upper, tieRodOuter, tieRodInner }: Omit<Places, "spin" | "wheelCenter">): number {
  const path = unit(cross(minus(upper, lower), minus(tieRodOuter, lower)));
  return Math.abs(dot(unit(minus(tieRodOuter, tieRodInner)), path));
}

/** A whole front end: cut to fit, or with rods that are up to 3 mm off. The rack goes a quarter to half of the shorter tab's reach each way. */
export const cars: fc.Arbitrary<DoubleArmCar> = fc
  .record({
    out: within(300, 1300),
    tabs: fc.constantFrom(-1, 1),
    alike: fc.boolean(),
    offset: within(-70, 70),
    tilt: within(-0.05, 0.05),
    straightAhead: within(-8, 8),
    asCut: fc.boolean(),
    rodErrors: fc.tuple(within(-3, 3), within(-3, 3)),
    rack: within(0.25, 0.55),
    droop: within(40, 140),
    bump: within(40, 140),
  })
  .chain((d) =>
    fc
      .tuple(cornerDrawing(d.out, d.tabs), cornerDrawing(d.out, d.tabs))
      .map(([left, other]) => assembled(d, left, d.alike ? left : other)),
  )
  .filter((drawn) => sides.every((side) => rodSine(drawnPlaces(drawn, side)) > 0.5));

function assembled(
  d: {
    out: number;
    offset: number;
    tilt: number;
    straightAhead: number;
    asCut: boolean;
    rodErrors: readonly [number, number];
    rack: number;
    droop: number;
    bump: number;
  },
  left: CornerDrawing,
  right: CornerDrawing,
): DoubleArmCar {
  const size = Math.min(1, d.out / 700);
  const mechanism: Rack = {
    kind: "rack",
    ahead: (left.eye.x + right.eye.x) / 2,
    up: (left.eye.z + right.eye.z) / 2,
    eyeToEye: left.eye.y + right.eye.y,
    offset: d.offset * size,
    tilt: d.tilt,
    straightAhead: d.straightAhead,
  };
  const rack = d.rack * Math.min(Math.abs(left.corner.tieRodOuter.x), Math.abs(right.corner.tieRodOuter.x));
  const range = {
    inputLow: -rack,
    inputHigh: rack,
    travelLow: -d.droop * size,
    travelHigh: d.bump * size,
  };
  const fitted: DoubleArmCar = {
    linkage: { kind: "double-arm", left: left.arms, right: right.arms },
    mechanism,
    left: left.corner,
    right: right.corner,
    range,
  };
  if (!d.asCut) return fitted;
  const cut = (side: "left" | "right", error: number): Corner => ({
    ...fitted[side],
    tieRodLength: distance(fitted[side].tieRodOuter, innerEye(fitted, side, d.straightAhead)) + error,
  });
  return { ...fitted, left: cut("left", d.rodErrors[0]), right: cut("right", d.rodErrors[1]) };
}

/** A car and a pose inside multiples of its range, of wheel travel and of rack. */
export const posed = (reach: number, rackReach = reach): fc.Arbitrary<CarAndPose> =>
  fc
    .tuple(cars, within(-rackReach, rackReach), within(-reach, reach), within(-reach, reach))
    .map(([drawn, q, l, r]) => ({
      drawn,
      input: spread(q, drawn.range.inputLow, drawn.range.inputHigh),
      left: spread(l, drawn.range.travelLow, drawn.range.travelHigh),
      right: spread(r, drawn.range.travelLow, drawn.range.travelHigh),
    }));

/** -1 is the low end of a range, 1 its high end, 0 its nought. */
function spread(t: number, low: number, high: number): number {
  return t < 0 ? -t * low : t * high;
}

/** The same car seen in a mirror: corners exchanged, everything that points to the driver's left turned round. */
export function mirrored({ linkage, mechanism, left, right, range }: DoubleArmCar): DoubleArmCar {
  return {
    linkage: { kind: "double-arm", left: linkage.right, right: linkage.left },
    mechanism: {
      ...mechanism,
      offset: -mechanism.offset,
      tilt: -mechanism.tilt,
      straightAhead: -mechanism.straightAhead,
    },
    left: right,
    right: left,
    range: { ...range, inputLow: -range.inputHigh, inputHigh: -range.inputLow },
  };
}

const angles = new Set(["camber", "toe", "tilt"]);

/** The same car with every length `factor` times as long. */
export function scaled(drawn: DoubleArmCar, factor: number): DoubleArmCar {
  return JSON.parse(JSON.stringify(drawn), (key, value) =>
    typeof value === "number" && !angles.has(key) ? value * factor : value,
  );
}
