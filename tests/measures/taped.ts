import { carOfTape, type TapeCar } from "../../src/measures/tapeCar.ts";
import type { Tape } from "../../src/vehicle/from-tape/readings.ts";

/**
 * Two arms a side of 450, level, one above the other and alike, so that the upright keeps its lean: the wheel rises by 450
 * times the sine of the arms' angle. The king pins are upright.
 */
const numbers: readonly (readonly [string, number])[] = [
  ["wheelbase", 2000],
  ["hub-height", 300],
  ["over-tyres", 1600],
  ["tyre-width", 200],
  ["king-pins-apart", 1300],
  ["tab-back", 120],
  ["tab-in", 20],
  ["tab-height", 250],
  ["left-eye", 170],
  ["right-eye", 170],
  ["eye-height", 250],
  ["eye-behind", 10],
  ["stroke", 100],
  ["left-stop", 50],
  ["inclination", 0],
  ["caster", 0],
  ["lower-pivot-out", 200],
  ["lower-pivot-height", 200],
  ["lower-joint-out", 650],
  ["lower-joint-height", 200],
  ["upper-pivot-out", 200],
  ["upper-pivot-height", 400],
  ["upper-joint-out", 650],
  ["upper-joint-height", 400],
];

export function tape(more: readonly (readonly [string, number])[], rest: Partial<Tape> = {}): Tape {
  return {
    title: null,
    units: "mm",
    rackGoes: "right",
    rodsAsCut: false,
    shockOn: null,
    numbers: new Map([...numbers, ...more]),
    ...rest,
  };
}

export function made(of: Tape): TapeCar {
  const car = carOfTape(of);
  if ("complaint" in car) throw new Error(car.complaint);
  return car;
}

/** Foot 300 out on the arm, top at (180, 420) from its pivot: 436.80659 long at 0°, 385.59230 at +10°, 486.00422 at −10° [D]. */
export const shock: readonly (readonly [string, number])[] = [
  ["shock-closed", 385.5923],
  ["shock-open", 486.00422],
  ["shock-top-ahead", 0],
  ["shock-top-out", 380],
  ["shock-top-height", 620],
  ["shock-foot-ahead", 0],
  ["shock-foot-out", 500],
  ["shock-foot-height", 200],
];
export const rise = 450 * Math.sin((10 * Math.PI) / 180);
