import { readFileSync } from "node:fs";
import { type Study, studyOf } from "../../src/measures/study.ts";
import type { Car } from "../../src/vehicle/car.ts";
import { readCar } from "../../src/vehicle/read.ts";

/** Car files of every linkage and mechanism, as builders write them. */

export function carOf(text: string): Car {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints.map(({ part, message }) => `${part}: ${message}`).join("; "));
  return car;
}

export function studied(text: string): Study {
  const study = studyOf(carOf(text));
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

export function presetText(name: string): string {
  return readFileSync(new URL(`../../presets/${name}.yaml`, import.meta.url), "utf8");
}

/** What every one of these texts begins with, mm. */
export const head = `units: mm
wheelbase: 2000
tire: { radius: 300 }
`;

/** A point in braces. */
export const at = (ahead: number, out: number, up: number): string => `{ ahead: ${ahead}, out: ${out}, up: ${up} }`;
