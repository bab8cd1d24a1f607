import type { Refused } from "../vehicle/read.ts";
import { shown } from "../vehicle/shown.ts";
import { type ExampleKind, exampleNames, exampleText } from "./examples.ts";
import { aboutOf, type Preset } from "./presets.ts";
import { reasonOf } from "./reason.ts";

/** The kinds of examples that are sheets. */
export type SheetKind = Exclude<ExampleKind, "cars">;

/** The names of the example sheets of a kind, in order of the alphabet. */
export function sheetNames(kind: SheetKind): readonly string[] {
  return exampleNames(kind);
}

/** All example sheets of a kind, with their titles and what is odd about each. */
export function listSheets(kind: SheetKind): readonly Preset[] {
  return sheetNames(kind).flatMap((name) => {
    const loaded = loadSheet(kind, name);
    if ("complaints" in loaded) return [];
    const [, title = name] = /^title: *(.+)$/m.exec(loaded.text) ?? [];
    return [{ name, title, about: aboutOf(loaded.text) }];
  });
}

/** An example sheet's text, or a complaint when there is none of that name. */
export function loadSheet(kind: SheetKind, name: string): { readonly name: string; readonly text: string } | Refused {
  const complaint = (message: string): Refused => ({ complaints: [{ line: null, column: null, part: "", message }] });
  if (!sheetNames(kind).includes(name)) return complaint(`no example sheet is called ${shown(name)}`);
  try {
    return { name, text: exampleText(kind, name) };
  } catch (error) {
    return complaint(`the example sheet ${name} cannot be read: ${reasonOf(error)}`);
  }
}
