import { readFileSync } from "node:fs";
import { type Study, studyOf } from "../../src/measures/study.ts";
import { readCar } from "../../src/vehicle/read.ts";

/** The text of a car that comes with the program. */
export function presetText(name: string): string {
  return readFileSync(new URL(`../../presets/${name}.yaml`, import.meta.url), "utf8");
}

/** The study of a car's text; throws when it is no car or cannot stand. */
export function studyFrom(text: string): Study {
  const car = readCar(text);
  if ("complaints" in car) throw new Error(car.complaints.map(({ message }) => message).join("\n"));
  const study = studyOf(car);
  if ("refused" in study) throw new Error(study.refused);
  return study;
}

/** The example of the car file's description: an offset rack on a widened front end. */
export const widened: Study = studyFrom(presetText("widened-offset-rack"));
