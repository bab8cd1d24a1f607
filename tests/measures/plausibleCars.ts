import fc from "fast-check";
import type { Study } from "../../src/measures/study.ts";
import { studyOf } from "../../src/measures/study.ts";
import { readCar } from "../../src/vehicle/read.ts";
import { at } from "./carTexts.ts";

/** A buggy's front end with two arms a side and a rack, as a builder could have made it. Lengths mm, angles degrees. */
export interface Plausible {
  readonly wheelbase: number;
  readonly radius: number;
  /** The steering axis at the hub's height: out from the centreline, and ahead of the hub. */
  readonly axisOut: number;
  readonly axisAhead: number;
  readonly caster: number;
  readonly inclination: number;
  readonly camber: number;
  readonly toe: number;
  /** Joints below and above the hub. */
  readonly below: number;
  readonly above: number;
  /** How much higher the inner pivots are than the joints, and how far the arms' axes are from parallel to the centreline. */
  readonly lowerRise: number;
  readonly upperRise: number;
  readonly splay: number;
  /** From the steering axis at the tab's own height: back (ahead negative), in. */
  readonly tabBack: number;
  readonly tabIn: number;
  readonly tabUp: number;
  readonly eyeBehind: number;
  readonly eyeRise: number;
  readonly eyeToEye: number;
  readonly offset: number;
  readonly travel: number;
  readonly straightAhead: number;
}

/** Spread evenly: fc.double spreads over doubles, half of which are smaller than one, and fast-check leans to the ends. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((share) => min + ((max - min) * share) / 1_000_000);

/**
 * The range that such cars are built in (common practice, no source): caster 5 to 12, inclination 6 to 13, camber 0 to -2
 * degrees, toe as a tape sets it, a steering lever of 3 to 5 in, a rack up to 70 mm off the centreline.
 */
export const plausible: fc.Arbitrary<Plausible> = fc
  .record({
    wheelbase: between(1600, 2200),
    radius: between(240, 300),
    axisOut: between(480, 620),
    axisAhead: between(-12, 12),
    caster: between(5, 12),
    inclination: between(6, 13),
    camber: between(-2, 0),
    toe: between(0, 0.25),
    below: between(75, 110),
    above: between(75, 110),
    lowerRise: between(-15, 30),
    upperRise: between(-40, 15),
    splay: between(-15, 25),
    lever: between(80, 125),
    isAhead: fc.noBias(fc.boolean()),
    tabIn: between(5, 45),
    tabUp: between(-60, 20),
    eyeBehind: between(-10, 50),
    eyeRise: between(-15, 15),
    eyeToEye: between(250, 400),
    offset: between(-70, 70),
    travel: between(45, 58),
    straightAhead: between(-3, 3),
  })
  .map(({ lever, isAhead, tabIn, ...each }) => ({
    ...each,
    // Ahead of the axis the tab stands outboard, for the inner wheel to turn more.
    tabBack: isAhead ? -lever : lever,
    tabIn: isAhead ? -tabIn : tabIn,
  }));

/** Its car file, rods cut to fit. */
export function textOf(car: Plausible): string {
  const tan = (degrees: number) => Math.tan((degrees * Math.PI) / 180);
  const axis = (up: number) => ({
    ahead: car.axisAhead - tan(car.caster) * (up - car.radius),
    out: car.axisOut - tan(car.inclination) * (up - car.radius),
  });
  const arm = (name: string, up: number, rise: number) => {
    const joint = axis(up);
    const out = joint.out * 0.35;
    return [
      `    ${name}:`,
      `      front: ${at(joint.ahead + 110, out + car.splay, up + rise)}`,
      `      rear: ${at(joint.ahead - 120, out - car.splay, up + rise)}`,
      `      joint: ${at(joint.ahead, joint.out, up)}`,
    ];
  };
  const tabUp = car.radius + car.tabUp;
  const tab = { ahead: axis(tabUp).ahead - car.tabBack, out: axis(tabUp).out - car.tabIn };
  return [
    "units: mm",
    `wheelbase: ${car.wheelbase}`,
    `tire: { radius: ${car.radius}, width: 180 }`,
    "wheel-travel: { bump: 75, droop: 75 }",
    "front:",
    "  linkage: double-arm",
    "  both:",
    ...arm("lower-arm", car.radius - car.below, car.lowerRise),
    ...arm("upper-arm", car.radius + car.above, car.upperRise),
    `    tie-rod: { outer: ${at(tab.ahead, tab.out, tabUp)} }`,
    `    wheel: { center: ${at(0, car.axisOut + 70, car.radius)}, camber: ${car.camber}, toe: ${car.toe} }`,
    "steering:",
    "  mechanism: rack",
    `  rack: { ahead: ${tab.ahead - car.eyeBehind}, up: ${tabUp + car.eyeRise}, eye-to-eye: ${car.eyeToEye}, offset: ${car.offset}, travel: ${car.travel}, straight-ahead: ${car.straightAhead} }`,
    "",
  ].join("\n");
}

/** Locks that such a car has: outside of these nobody would build it. */
const leastLock = (18 * Math.PI) / 180;
const mostLock = (45 * Math.PI) / 180;

/** Its study, where it goes together and turns as far as such cars do both ways; else null. */
export function built(car: Plausible): Study | null {
  const read = readCar(textOf(car));
  if ("complaints" in read) return null;
  const study = studyOf(read);
  if ("refused" in study) return null;
  const turns = (["left", "right"] as const).flatMap((side) => [study.locks[side]?.inner, study.locks[side]?.outer]);
  return turns.every((turn) => turn != null && turn > leastLock && turn < mostLock) ? study : null;
}
