import { isMap, isScalar, isSeq, type Node, type YAMLMap } from "yaml";
import type { Car } from "../car.ts";
import type { Complaint } from "../complaint.ts";
import { nearest } from "../nearest.ts";
import { safe } from "../shown.ts";
import { type Entry, pairAt, resolved, type Tree } from "../tree.ts";
import type { LengthUnit } from "../words.ts";

/** A file of readings while it is read: what is wrong with it gathers in `complaints`. */
export interface Sheet {
  readonly tree: Tree;
  readonly units: LengthUnit;
  readonly car: Pick<Car, "form" | "numbers">;
  readonly complaints: Complaint[];
}

/** A part of the file: what stands there, where a complaint about it points, and its name in words. */
export interface Part {
  readonly node: Node | null;
  readonly offset: number;
  readonly name: string;
}

export function complain({ tree, complaints }: Sheet, { offset, name }: Part, message: string): void {
  complaints.push({ ...tree.place(offset), part: name, message });
}

/** The 1-based line of a part. */
export function lineOf({ tree }: Sheet, { offset }: Part): number {
  return tree.place(offset).line;
}

/** What stands under a key of a mapping; null where the key is not there or has nothing after it. */
export function below({ tree }: Sheet, map: YAMLMap, key: string, name: string): Part | null {
  const pair = pairAt(map, key);
  if (pair === null) return null;
  const node = resolved(pair.value, tree);
  if (node === null || (isScalar(node) && node.value === null)) return null;
  return {
    node,
    offset: pair.value?.range?.[0] ?? pair.key.range?.[0] ?? 0,
    name: name === "" ? key : `${name}.${key}`,
  };
}

/** A part as a mapping that has these keys and no others; null with a complaint where it is none. */
export function mappingOf(sheet: Sheet, part: Part, keys: readonly string[]): YAMLMap | null {
  if (!isMap(part.node)) {
    complain(sheet, part, `expected the keys ${keys.join(", ")}`);
    return null;
  }
  for (const { key } of part.node.items as Entry[]) {
    const found = isScalar(key) ? String(key.value) : "";
    if (keys.includes(found)) continue;
    const near = nearest(found, keys);
    const advice = near === null ? `expected one of ${keys.join(", ")}` : `did you mean "${near}"?`;
    complain(sheet, { ...part, offset: key.range?.[0] ?? part.offset }, `unknown key "${safe(found)}": ${advice}`);
  }
  return part.node;
}

/** The rows of a part, which is a list. */
export function rowsOf(sheet: Sheet, part: Part): readonly Part[] {
  if (!isSeq(part.node)) {
    complain(sheet, part, "expected rows, each on a line of its own that begins with a hyphen");
    return [];
  }
  return part.node.items.map((item, i) => {
    const node = resolved(item, sheet.tree);
    return { node, offset: node?.range?.[0] ?? part.offset, name: `${part.name} row ${i + 1}` };
  });
}

/** The text of a single value, without its quotes; null with a complaint where it is none. */
export function textOf(sheet: Sheet, part: Part): string | null {
  const { node } = part;
  if (isScalar(node) && node.value !== null)
    return typeof node.value === "string" ? node.value.trim() : (node.source ?? String(node.value));
  complain(sheet, part, "expected one reading");
  return null;
}
