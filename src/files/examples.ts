import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/*
 * Where the example files are. The program that is one file (bin/single.js) holds their texts itself: there another module
 * with the same exports stands in this one's place.
 */

/**
 * What kind of example a file is: a car, a sheet of readings with a tape that a car is made of, or readings on a car that was
 * built. The sheets are in folders of their own beside the cars, which they are none of.
 */
export type ExampleKind = "cars" | "sheets" | "readings";

/** The folder of the example cars, beside the built program's folder as beside the sources; null where there is none. */
export function presetsFolder(): string | null {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "presets", "balanced-two-seater.yaml"))) {
    if (dirname(folder) === folder) return null;
    folder = dirname(folder);
  }
  return join(folder, "presets");
}

function folderOf(kind: ExampleKind): string {
  return join(presetsFolder() ?? "presets", kind === "cars" ? "" : kind);
}

/** The names of the examples of a kind, in order of the alphabet. */
export function exampleNames(kind: ExampleKind): readonly string[] {
  try {
    const files = readdirSync(folderOf(kind)).filter((file) => file.endsWith(".yaml"));
    return files.map((file) => file.slice(0, -".yaml".length)).sort();
  } catch {
    return [];
  }
}

/** The text of one of them. Throws what the system throws. */
export function exampleText(kind: ExampleKind, name: string): string {
  return readFileSync(join(folderOf(kind), `${name}.yaml`), "utf8");
}
