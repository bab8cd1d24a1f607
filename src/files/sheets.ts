import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import type { Refused } from "../vehicle/read.ts";
import { shown } from "../vehicle/shown.ts";
import { aboutOf, type Preset, presetsFolder } from "./presets.ts";
import { reasonOf } from "./reason.ts";

/**
 * The folders of example sheets, beside the example cars, which they are none of: readings with a tape that a car is made of,
 * and readings on a car that was built.
 */
export type SheetFolder = "sheets" | "readings";

function sheetsFolder(folder: SheetFolder): string {
  return join(presetsFolder(), folder);
}

/** The names of the example sheets of a folder, in order of the alphabet. */
export function sheetNames(folder: SheetFolder): readonly string[] {
  try {
    const files = readdirSync(sheetsFolder(folder)).filter((file) => file.endsWith(".yaml"));
    return files.map((file) => file.slice(0, -".yaml".length)).sort();
  } catch {
    return [];
  }
}

/** All example sheets of a folder, with their titles and what is odd about each. */
export function listSheets(folder: SheetFolder): readonly Preset[] {
  return sheetNames(folder).flatMap((name) => {
    const loaded = loadSheet(folder, name);
    if ("complaints" in loaded) return [];
    const [, title = name] = /^title: *(.+)$/m.exec(loaded.text) ?? [];
    return [{ name, title, about: aboutOf(loaded.text) }];
  });
}

/** An example sheet's text, or a complaint when there is none of that name. */
export function loadSheet(
  folder: SheetFolder,
  name: string,
): { readonly name: string; readonly text: string } | Refused {
  const complaint = (message: string): Refused => ({ complaints: [{ line: null, column: null, part: "", message }] });
  if (!sheetNames(folder).includes(name)) return complaint(`no example sheet is called ${shown(name)}`);
  try {
    return { name, text: readFileSync(join(sheetsFolder(folder), `${name}.yaml`), "utf8") };
  } catch (error) {
    return complaint(`the example sheet ${name} cannot be read: ${reasonOf(error)}`);
  }
}
