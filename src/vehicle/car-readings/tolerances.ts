import { inch } from "../units/length.ts";
import { degree } from "../value.ts";
import type { LengthUnit } from "../words.ts";

/** The kinds of gauge, by the sections of a file of readings. */
export type Gauge = "turn-plates" | "bump-gauge" | "toe" | "camber" | "caster" | "rods" | "straight-ahead" | "lengths";

/** What a tape is good to in a shop: 1/16 in or 1 mm (common practice, no source). */
export function tapeTolerance(units: LengthUnit): number {
  return units === "in" ? inch / 16 : 1;
}

/** What angles are built and measured to with an angle finder (common practice, no source). */
export const builtAngle = degree / 2;

/**
 * What each gauge is good to unless the file says otherwise, mm or rad: turn plates half a degree, a bump gauge a tenth of
 * one, toe by a tape across both tyres a tenth of one a wheel, camber a quarter and caster a half by an angle finder, where a
 * column stands a degree, all lengths what a tape is good to (common practice, no source).
 */
export function usualTolerance(gauge: Gauge, units: LengthUnit, input: "rack" | "column"): number {
  if (gauge === "straight-ahead" && input === "column") return degree;
  if (gauge === "turn-plates" || gauge === "caster") return degree / 2;
  if (gauge === "bump-gauge" || gauge === "toe") return degree / 10;
  return gauge === "camber" ? degree / 4 : tapeTolerance(units);
}
