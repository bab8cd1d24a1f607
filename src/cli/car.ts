import { existsSync, readdirSync, readFileSync } from "node:fs";
import { type Study, studyOf } from "../measures/study.ts";
import type { Car } from "../vehicle/car.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { nearest } from "../vehicle/nearest.ts";
import { readCar } from "../vehicle/read.ts";
import { safe } from "../vehicle/shown.ts";
import { commandNames } from "./commandNames.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";

/** What a name on the command line stands for: a car file that is there, or else a preset. */
export type Found = { readonly file: string } | { readonly preset: string };

const dir = new URL("../presets/", import.meta.url);
const dirs = existsSync(dir) ? dir : new URL("../../presets/", import.meta.url);
function listPresets() {
  return readdirSync(dirs).map((f) => ({ name: f.replace(".yaml", "") }));
}
function loadPreset(name: string) {
  return { text: readFileSync(new URL(`${name}.yaml`, dirs), "utf8") };
}
function loadText(path: string): { text: string } | { complaints: Complaint[] } {
  try {
    return { text: readFileSync(path, "utf8") };
  } catch (e) {
    return { complaints: [{ line: null, column: null, part: "", message: String(e) }] };
  }
}

/** The car that a name stands for, the first preset where there is no name. A file wins over a preset of its name. */
export function findCar(name: string | undefined): Found {
  const presets = listPresets().map((preset) => preset.name);
  if (name === undefined) return { preset: presets[0] };
  if (existsSync(name)) return { file: name };
  if (presets.includes(name)) return { preset: name };
  const meant = nearest(name, [...commandNames, ...presets]);
  const advice = meant === null ? `The presets are ${presets.join(", ")}.` : `Did you mean "${meant}"?`;
  throw new Ended(Exit.badInput, `there is no file "${safe(name)}", and no preset of that name. ${advice}`);
}

/** True when a name stands for a car file that is there, or for a preset. */
export function isCar(name: string): boolean {
  return existsSync(name) || listPresets().some((preset) => preset.name === name);
}

/** The study of the car that a name stands for; says which it is where that may be in doubt, and the car's warnings. */
export function openStudy(desk: Desk, name: string | undefined): Study {
  const found = findCar(name);
  const source = "file" in found ? found.file : `preset ${found.preset}`;
  if (name !== undefined && "preset" in found) desk.note(`note: the preset "${name}"; there is no file of that name.`);
  if ("file" in found && listPresets().some((preset) => preset.name === name)) {
    desk.note(`note: the file "${found.file}", not the preset of that name.`);
  }
  const loaded = "file" in found ? loadText(found.file) : loadPreset(found.preset);
  if ("complaints" in loaded) throw refusal(source, loaded.complaints);
  const car = readCar(loaded.text);
  if ("complaints" in car) throw refusal(source, car.complaints);
  for (const warning of car.warnings) desk.note(`warning: ${complaintText(source, warning)}`);
  return studied(source, car);
}

function studied(source: string, car: Car): Study {
  const study = studyOf(car);
  if ("refused" in study) throw new Ended(Exit.badInput, `${source}: ${study.refused}`);
  return study;
}

function refusal(source: string, complaints: readonly Complaint[]): Ended {
  return new Ended(Exit.badInput, complaints.map((each) => complaintText(source, each)).join("\n"));
}

/** A complaint with its place as compilers write it, so that editors can jump there: "car.yaml:12:5: ...". */
function complaintText(source: string, { line, column, message }: Complaint): string {
  const place = [source, line, column].filter((each) => each !== null).join(":");
  return `${place}: ${message}`;
}
