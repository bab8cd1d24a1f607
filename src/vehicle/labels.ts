import type { Car } from "./car.ts";
import { setTitle } from "./edit.ts";
import { changed } from "./edits/change.ts";
import { wordAt } from "./tree.ts";
import { readYaml } from "./yaml.ts";

/** What a file says of whose car it is and of what was built: no number of it depends on these. */
export const labelNames = ["title", "job", "date", "as-built"] as const;
export type LabelName = (typeof labelNames)[number];

/** A car's labels as they stand in its file; "" where there is none. */
export function labelsOf(car: Pick<Car, "text">): Readonly<Record<LabelName, string>> {
  const tree = readYaml(car.text);
  const of = (name: LabelName) => ("complaints" in tree ? "" : (wordAt(tree, [name]) ?? "").trimEnd());
  return { title: of("title"), job: of("job"), date: of("date"), "as-built": of("as-built") };
}

/** The car's text with another label; with none, its key goes too. A car always keeps some title. */
export function withLabel(car: Pick<Car, "text">, name: LabelName, words: string): string {
  const line = words.trim();
  if (name === "title") return line === "" ? car.text : setTitle(car, line);
  // A text in JSON's quotes is one in YAML's double quotes too: a date stays a text.
  return changed(car.text, [{ path: [name], text: line === "" ? null : JSON.stringify(line) }]);
}
