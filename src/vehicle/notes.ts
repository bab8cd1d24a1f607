import type { Car } from "./car.ts";
import { changed } from "./edits/change.ts";
import { wordAt } from "./tree.ts";
import { readYaml } from "./yaml.ts";

/** What the builder keeps with a car, as it stands in its file; "" where there is nothing. */
export function notesOf(car: Pick<Car, "text">): string {
  const tree = readYaml(car.text);
  return "complaints" in tree ? "" : (wordAt(tree, ["notes"]) ?? "").trimEnd();
}

/** The car's text with other notes; with none, the key goes too. */
export function withNotes(car: Pick<Car, "text">, notes: string): string {
  // A text in JSON's quotes is one in YAML's double quotes too.
  return changed(car.text, [{ path: ["notes"], text: notes.trim() === "" ? null : JSON.stringify(notes.trim()) }]);
}
