import { nearest } from "../vehicle/nearest.ts";
import { type Refused, readCar } from "../vehicle/read.ts";
import { shown } from "../vehicle/shown.ts";
import { exampleNames, exampleText } from "./examples.ts";
import { reasonOf } from "./reason.ts";

/** An example car that comes with the program. */
export interface Preset {
  /** What it is called on the command line: its file's name without .yaml. */
  readonly name: string;
  /** What the car itself is called. */
  readonly title: string;
  /** What is odd about it: the first paragraph of its comments, on one line. */
  readonly about: string;
}

/** The names of the example cars, in order of the alphabet. */
export function presetNames(): readonly string[] {
  return exampleNames("cars");
}

/** What is odd about an example: the first paragraph of the comments at the top of its text, on one line. */
export function aboutOf(text: string): string {
  const lines = text.split(/\r?\n/);
  const end = lines.findIndex((line) => !/^# *\S/.test(line));
  return lines
    .slice(0, end < 0 ? lines.length : end)
    .map((line) => line.replace(/^# */, ""))
    .join(" ");
}

/** An example car's text, or a complaint when there is none of that name. */
export function loadPreset(name: string): { readonly name: string; readonly text: string } | Refused {
  const names = presetNames();
  if (!names.includes(name)) {
    const near = nearest(name, names);
    const advice = near === null ? `the command "rackwright presets" lists them` : `did you mean ${near}?`;
    const message = `no example car is called ${shown(name)}: ${advice}`;
    return { complaints: [{ line: null, column: null, part: "", message }] };
  }
  try {
    return { name, text: exampleText("cars", name) };
  } catch (error) {
    const message = `the example car ${name} cannot be read: ${reasonOf(error)}`;
    return { complaints: [{ line: null, column: null, part: "", message }] };
  }
}

/**
 * An example car's text as a new car's: the comments at its top tell of the example, and would be untrue of what is made of
 * it, so that in their place stands where it began.
 */
export function begunFrom({ name, text }: { readonly name: string; readonly text: string }): string {
  return `# Begun from the example car "${name}".\n${text.replace(/^(?:#.*\r?\n)+/, "")}`;
}

/** All example cars. */
export function listPresets(): readonly Preset[] {
  return presetNames().flatMap((name) => {
    const loaded = loadPreset(name);
    if ("complaints" in loaded) return [];
    const car = readCar(loaded.text);
    return [{ name, title: "complaints" in car ? name : car.title, about: aboutOf(loaded.text) }];
  });
}
