import { existsSync, lstatSync } from "node:fs";
import { loadText } from "../files/load.ts";
import { loadPreset, presetNames } from "../files/presets.ts";
import { sheetNames } from "../files/sheets.ts";
import { type Study, studyOf } from "../measures/study.ts";
import { assumedWords } from "../output/assumed.ts";
import { printable } from "../output/printable.ts";
import { steersBackwards, wildToe } from "../output/words.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { nearest } from "../vehicle/nearest.ts";
import { readCar } from "../vehicle/read.ts";
import { complaintOn } from "../vehicle/sound.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { commandNames } from "./commandNames.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";

/** What a name on the command line stands for: a car file that is there, or else a preset. */
export type Found = { readonly file: string } | { readonly preset: string };

/** What the screen opens by that name: a car, or else an example of a sheet of readings, which has a form of its own. */
export function findForScreen(name: string | undefined): Found | { readonly sheet: string } {
  const isExample = name !== undefined && sheetNames("sheets").includes(name);
  return isExample && !isCar(name) && !isNamed(name) ? { sheet: name } : findCar(name);
}

/** The preset that is taken where no car is named: the first of them, a sound one. */
export function firstPreset(): string {
  const [first] = presetNames();
  if (first === undefined) {
    throw new Ended(Exit.badInput, "the presets are missing from this installation: name a car file.");
  }
  return first;
}

/**
 * The car that a name stands for, the first preset where there is no name. A file of that name, with or
 * without .yaml, wins over a preset.
 */
export function findCar(name: string | undefined): Found {
  if (name === undefined) return { preset: firstPreset() };
  const presets = presetNames();
  if (isNamed(name)) return { file: name };
  if (existsSync(`${name}.yaml`)) return { file: `${name}.yaml` };
  if (presets.includes(name)) return { preset: name };
  if (sheetNames("sheets").includes(name))
    throw new Ended(
      Exit.badInput,
      `"${name}" is an example of a sheet of readings, not a car: rackwright tape ${name} finds its points; with --out my-car it writes the car.`,
    );
  if (sheetNames("readings").includes(name))
    throw new Ended(
      Exit.badInput,
      `"${name}" is an example of readings on a car that was built, not a car: give it after one, as in rackwright match CAR ${name}.`,
    );
  throw new Ended(
    Exit.badInput,
    `there is no file "${printable(name)}", and no preset of that name. ${advice(name, presets)}`,
  );
}

/** Whether something has this name. True also for a link that leads nowhere: what is wrong with it is told when it is read. */
export function isNamed(name: string): boolean {
  try {
    return lstatSync(name, { throwIfNoEntry: false }) !== undefined;
  } catch {
    return existsSync(name);
  }
}

function advice(name: string, presets: readonly string[]): string {
  const meant = nearest(name, [...commandNames, ...presets]);
  return meant === null
    ? `The presets are:\n${presets.map((each) => `  ${each}`).join("\n")}`
    : `Did you mean "${meant}"?`;
}

/** True when a name stands for a car file that is there, or for a preset. */
export function isCar(name: string): boolean {
  return existsSync(name) || presetNames().includes(name) || existsSync(`${name}.yaml`);
}

/**
 * The study of the car that a name stands for. Notes which car it is where that may be in doubt, and what must not be
 * overlooked of the car, unless the report itself says it.
 */
export async function openStudy(
  desk: Desk,
  name: string | undefined,
  warnings: "note" | "leave" = "note",
): Promise<Study> {
  const found = findCar(name);
  tellWhich(desk, found, name);
  const source = printable("file" in found ? found.file : found.preset);
  const loaded = "file" in found ? loadText(found.file) : loadPreset(found.preset);
  if ("complaints" in loaded) throw refusal(source, loaded.complaints);
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  const car = readCar(loaded.text);
  if ("complaints" in car) throw refusal(source, car.complaints);
  if (warnings === "note") for (const warning of car.warnings) desk.note(`warning: ${complaintText(source, warning)}`);
  const assumed = assumedWords(car);
  if (warnings === "note" && assumed !== null) desk.note(`note: ${assumed}.`);
  const study = studyOf(car);
  if ("refused" in study) throw refusal(source, [complaintOn(car.text, study.part, study.refused)]);
  if (warnings === "note") {
    for (const words of [steersBackwards(study), wildToe(study)]) if (words !== null) desk.note(`warning: ${words}.`);
  }
  return study;
}

function tellWhich(desk: Desk, found: Found, name: string | undefined): void {
  if ("preset" in found) {
    if (name !== undefined) desk.note(`note: the preset "${name}"; there is no file of that name here.`);
  } else if (presetNames().includes(found.file)) {
    desk.note(`note: the file "${found.file}" here, not the preset of that name.`);
  }
}

/** The end of a command whose file is refused, each complaint on a line with its place. */
export function refusal(source: string, complaints: readonly Complaint[]): Ended {
  return new Ended(Exit.badInput, complaints.map((each) => complaintText(source, each)).join("\n"), true);
}

/** A complaint with its place as compilers write it, so that editors can jump there: "car.yaml:12:5: tire.radius: ...". */
function complaintText(source: string, { line, column, part, message }: Complaint): string {
  const place = [source, line, column].filter((each) => each !== null).join(":");
  return part === "" ? `${place}: ${message}` : `${place}: ${part}: ${message}`;
}
