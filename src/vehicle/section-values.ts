import { isMap, isScalar, type Node } from "yaml";
import type { Car } from "./car.ts";
import { changed } from "./edits/change.ts";
import { scalar } from "./edits/written.ts";
import { linkages } from "./linkages.ts";
import { fieldAt, sectionNames } from "./sections.ts";
import { sourceAt, spotAt, type Tree } from "./tree.ts";
import type { Range } from "./worth.ts";
import { readYaml } from "./yaml.ts";

/** A single value that stands in an optional section of a car file. */
export interface SectionValue {
  /** Its keys from the root of the file. */
  readonly path: readonly string[];
  /** Its text as the file has it. */
  readonly source: string;
  /** One line: what it is, from where it is measured, its sign. */
  readonly help: string;
  /** What may stand there, in a builder's words. */
  readonly expected: string;
  /** Its sensible range, mm, rad or bare; null where it is a word or a text. */
  readonly range: Range | null;
}

/** The paths of all single values below a path, in the order of the file. */
function leaves(node: Node | null | undefined, path: readonly string[]): readonly (readonly string[])[] {
  if (isScalar(node)) return [path];
  return isMap<Node, Node | null>(node)
    ? node.items.flatMap(({ key, value }) => leaves(value, [...path, String(key)]))
    : [];
}

const known = new WeakMap<object, readonly SectionValue[]>();

/** Every single value that stands in the car's optional sections, in the order of the sections and of the file. */
export function sectionValues(car: Pick<Car, "text" | "form">): readonly SectionValue[] {
  const done = known.get(car);
  if (done !== undefined) return done;
  const tree = readYaml(car.text);
  const values = "complaints" in tree ? [] : valuesIn(tree, car);
  known.set(car, values);
  return values;
}

function valuesIn(tree: Tree, { form }: Pick<Car, "form">): readonly SectionValue[] {
  const linked = linkages.filter(({ name }) => name === form.linkage);
  return sectionNames.flatMap((name) =>
    leaves(spotAt(tree, [name])?.full, [name]).flatMap((path): readonly SectionValue[] => {
      const field = fieldAt(path, linked);
      const source = sourceAt(tree, path);
      if (field === undefined || source === null) return [];
      const { help, expected, range = null } = field;
      return [{ path, source, help, expected, range }];
    }),
  );
}

/** The car's text with another text for one of those values; everything else stays. Reading it says whether it can be. */
export function withSectionValue(car: Pick<Car, "text">, path: readonly string[], text: string): string {
  return changed(car.text, [{ path, text: scalar(text.trim()) }]);
}
