import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Refused } from "../vehicle/read.ts";
import { shown } from "../vehicle/shown.ts";
import { aboutOf, type Preset, presetsFolder } from "./presets.ts";
import { reasonOf } from "./reason.ts";

/** Where the example sheets of readings are: beside the example cars, which they are none of. */
function sheetsFolder(): string {
  return join(presetsFolder(), "sheets");
}

/** The names of the example sheets of readings, in order of the alphabet. */
export function sheetNames(): readonly string[] {
  try {
    const files = readdirSync(sheetsFolder()).filter((file) => file.endsWith(".yaml"));
    return files.map((file) => file.slice(0, -".yaml".length)).sort();
  } catch {
    return [];
  }
}

/** All example sheets, with their titles and what is odd about each. */
export function listSheets(): readonly Preset[] {
  return sheetNames().flatMap((name) => {
    const loaded = loadSheet(name);
    if ("complaints" in loaded) return [];
    const [, title = name] = /^title: *(.+)$/m.exec(loaded.text) ?? [];
    return [{ name, title, about: aboutOf(loaded.text) }];
  });
}

/** An example sheet's text, or a complaint when there is none of that name. */
export function loadSheet(name: string): { readonly name: string; readonly text: string } | Refused {
  const complaint = (message: string): Refused => ({ complaints: [{ line: null, column: null, part: "", message }] });
  if (!sheetNames().includes(name)) return complaint(`no example sheet is called ${shown(name)}`);
  try {
    return { name, text: readFileSync(join(sheetsFolder(), `${name}.yaml`), "utf8") };
  } catch (error) {
    return complaint(`the example sheet ${name} cannot be read: ${reasonOf(error)}`);
  }
}
