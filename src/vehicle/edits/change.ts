import { Document, parse, parseDocument } from "yaml";
import type { Tree } from "../tree.ts";
import { readYaml } from "../yaml.ts";
import { drop } from "./drop.ts";
import { isReferredTo, withoutReferences } from "./flow.ts";
import { put } from "./put.ts";

/** One change of a text: a value's YAML text at a path, or (null) nothing there any more. */
export interface Change {
  readonly path: readonly string[];
  readonly text: string | null;
}

type Data = { [key: string]: unknown };

function isData(value: unknown): value is Data {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** The plain data with a value set; a number that stands for both ways becomes one for each. */
function withPut(data: Data, [key = "", ...rest]: readonly string[], value: unknown): Data {
  if (rest.length === 0) return { ...data, [key]: value };
  const old = data[key];
  const below: Data = isData(old) ? old : old === null || old === undefined ? {} : { left: old, right: old };
  return { ...data, [key]: withPut(below, rest, value) };
}

/** The plain data without a value, nor any mapping that is left empty. */
function withDrop(data: Data, [key = "", ...rest]: readonly string[]): Data {
  const below = data[key];
  const left = rest.length > 0 && isData(below) ? withDrop(below, rest) : {};
  if (rest.length > 0 && (!isData(below) || left === below)) return data;
  if (rest.length === 0 && !(key in data)) return data;
  const { [key]: _, ...others } = data;
  return Object.keys(left).length === 0 ? others : { ...data, [key]: left };
}

function same(a: unknown, b: unknown): boolean {
  if (!isData(a) || !isData(b)) return Object.is(a, b) || JSON.stringify(a) === JSON.stringify(b);
  const keys = Object.keys(a);
  return keys.length === Object.keys(b).length && keys.every((key) => key in b && same(a[key], b[key]));
}

function treeOf(text: string): Tree | null {
  const tree = readYaml(text);
  return "complaints" in tree ? null : tree;
}

/** Another text for one value, everything else byte for byte as it was; null where the layout does not let it. */
function spliced(text: string, change: Change): string | null {
  const tree = treeOf(text);
  if (tree === null) return null;
  if (isReferredTo(tree, change.path)) {
    const alone = treeOf(withoutReferences(tree));
    return alone === null ? null : splicedAlone(alone, change);
  }
  return splicedAlone(tree, change);
}

function splicedAlone(tree: Tree, { path, text }: Change): string | null {
  return text === null ? drop(tree, path) : put(tree, path, text);
}

/** The same by printing the whole file anew: its layout is lost, but every value is right. */
function printed(text: string, changes: readonly Change[], wanted: Data): string {
  const tree = treeOf(text);
  const document = parseDocument(tree?.hasAnchors ? withoutReferences(tree) : text);
  for (const { path } of changes) {
    const value = path.reduce<unknown>((data, key) => (isData(data) ? data[key] : undefined), wanted);
    if (value !== undefined) document.setIn(path, value);
    else document.deleteIn(path);
  }
  const now: unknown = document.toJS();
  return same(now, wanted) ? String(document) : new Document(wanted).toString();
}

/**
 * The text after these changes, made one after the other: only the changed values' own ranges differ, and comments and
 * layout stay. What the text then says is compared with what it should say; should a layout ever defeat that, the file is
 * printed anew, since a lost layout is better than a wrong number.
 */
export function changed(text: string, changes: readonly Change[]): string {
  const before = treeOf(text);
  if (before === null || !isData(before.data)) return text;
  const wanted = changes.reduce<Data>(
    (data, { path, text: value }) => (value === null ? withDrop(data, path) : withPut(data, path, parse(value))),
    before.data,
  );
  const result = changes.reduce<string | null>((so, change) => (so === null ? null : spliced(so, change)), text);
  const after = result === null ? null : treeOf(result);
  return result !== null && after !== null && same(after.data, wanted) ? result : printed(text, changes, wanted);
}
