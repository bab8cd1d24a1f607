import type { Car } from "../car.ts";
import { sourceAt } from "../tree.ts";
import { readLength } from "../units/length.ts";
import { readYaml } from "../yaml.ts";
import { type Change, changed } from "./change.ts";
import { written } from "./written.ts";

/** Whether the number at a path of an optional section, such as shock.both.top.up, is one that is shifted. */
export type Chosen = (path: readonly string[]) => boolean;

function leavesOf(data: unknown, path: readonly string[]): readonly (readonly string[])[] {
  if (typeof data !== "object" || data === null || Array.isArray(data)) return [path];
  return Object.entries(data).flatMap(([key, below]) => leavesOf(below, [...path, key]));
}

/**
 * The car's text with so much, mm, added to every length of its optional sections that is chosen, wherever it is written:
 * at both, at left or at right.
 */
export function shiftLengths(car: Pick<Car, "text" | "form">, by: number, chosen: Chosen): string {
  const tree = readYaml(car.text);
  if ("complaints" in tree || by === 0) return car.text;
  const { units } = car.form;
  const changes = leavesOf(tree.data, []).flatMap((path): readonly Change[] => {
    if (!chosen(path)) return [];
    const now = sourceAt(tree, path);
    const read = now === null ? null : readLength(now, units);
    if (read === null || !("mm" in read)) return [];
    return [{ path, text: written({ kind: "length", value: read.mm + by, units, now }) }];
  });
  return changed(car.text, changes);
}
