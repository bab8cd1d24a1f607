import { type Document, isMap, parse, parseDocument } from "yaml";
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

/** Takes a value out of a document, and any mapping that is left empty. */
function dropIn(document: Document.Parsed, path: readonly string[]): void {
  if (path.length === 0 || !document.hasIn(path)) return;
  document.deleteIn(path);
  const above = path.slice(0, -1);
  const map = document.getIn(above);
  if (isMap(map) && map.items.length === 0) dropIn(document, above);
}

function valueIn(data: Data, path: readonly string[]): unknown {
  return path.reduce<unknown>((value, key) => (isData(value) ? value[key] : undefined), data);
}

/** Puts what is wanted at a path into a document, from the first part of the path that is no mapping there. */
function putIn(document: Document.Parsed, path: readonly string[], wanted: Data): void {
  const to = path.findIndex((_, depth) => !isMap(document.getIn(path.slice(0, depth + 1), true)));
  const whole = path.slice(0, to + 1);
  document.setIn(whole, valueIn(wanted, whole));
}

/** The same by printing the whole file anew: its layout is lost, but its comments stay and every value is right. */
function printed(text: string, changes: readonly Change[], wanted: Data): string {
  const tree = treeOf(text);
  const document = parseDocument(tree?.hasAnchors ? withoutReferences(tree) : text);
  for (const { path } of changes) {
    if (valueIn(wanted, path) === undefined) dropIn(document, path);
    else putIn(document, path, wanted);
  }
  return document.toString({ lineWidth: 0 });
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
