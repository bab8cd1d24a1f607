import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  type Pair,
  visit,
  type YAMLMap,
} from "yaml";
import type { Complaint } from "./complaint.ts";
import { safe } from "./shown.ts";

/** A mapping in a car file, its keys plain words. */
export type Mapping = YAMLMap;

/** A key and its value, as they stand. */
export type Entry = Pair<Node, Node | null>;

/** What stands at a path. */
export interface Spot {
  readonly key: Node;
  /** The value as it stands, which may be a reference (*name); null where nothing is written. */
  readonly node: Node | null;
  /** The value itself, references followed. */
  readonly full: Node | null;
}

/** A car file's text as YAML: nodes that know where they stand, and the same as plain data. */
export interface Tree {
  readonly text: string;
  readonly root: Mapping;
  readonly document: Document.Parsed;
  /** What each reference (*name) stands for. */
  readonly targets: Targets;
  /** Plain data for the schema. */
  readonly data: unknown;
  readonly spots: ReadonlyMap<string, Spot>;
  /** Whether any part can be referred to (&name). */
  readonly hasAnchors: boolean;
  /** Line and column of an offset, as editors count. */
  readonly place: (offset: number) => { line: number; column: number };
}

/** The nodes that references stand for. */
type Targets = ReadonlyMap<Alias, Node>;

/** What is gathered from a document. */
export type Gathered = Pick<Tree, "data" | "spots" | "hasAnchors" | "targets">;

/** More parts than this, references followed, are not a car but an attack. */
const mostParts = 5000;

/** Deeper than any car file, and far from what could exhaust the program. */
const deepest = 32;

/**
 * What every reference of a document stands for: the part that was given its name last before it. In one walk: asked one
 * by one, each reference walks over the whole document, so that a small file of nothing else would take minutes.
 */
function targetsIn(document: Document.Parsed): Targets {
  const latest = new Map<string, Node>();
  const targets = new Map<Alias, Node>();
  visit(document, {
    Node: (_, node) => {
      const target = isAlias(node) ? latest.get(node.source) : undefined;
      if (isAlias(node) && target !== undefined) targets.set(node, target);
      if ("anchor" in node && typeof node.anchor === "string") latest.set(node.anchor, node);
    },
  });
  return targets;
}

/** The node that a node stands for: a reference gives what it refers to. */
export function resolved(node: unknown, { targets }: Pick<Tree, "targets">): Node | null {
  if (isAlias(node)) return targets.get(node) ?? null;
  return (node ?? null) as Node | null;
}

/** Why a document cannot be gathered: it has no end, refers to a part that is not there, or has a key twice. */
export type Endless = "too many parts" | "too deep" | { readonly unnamed: Alias } | { readonly twice: Node };

const none: Targets = new Map();

/** One walk over a document, references followed: its data, and what stands where. */
export function gather(root: Mapping, document: Document.Parsed): Gathered | Endless {
  let targets: Targets | null = null;
  const spots = new Map<string, Spot>();
  let parts = 0;
  let hasAnchors = false;
  let fault: Endless | null = null;

  const followed = (node: unknown): Node | null => {
    if (isAlias(node)) targets ??= targetsIn(document);
    const full = resolved(node, { targets: targets ?? none });
    if (isAlias(node) && full === null) fault ??= { unnamed: node };
    return full;
  };

  const dataOf = (node: Node | null, path: string, depth: number): unknown => {
    parts += 1;
    if (parts > mostParts) fault ??= "too many parts";
    if (depth > deepest) fault ??= "too deep";
    if (fault !== null) return null;
    hasAnchors ||= node !== null && "anchor" in node && node.anchor !== undefined;
    if (isScalar(node)) return node.value;
    if (isSeq(node)) return node.items.map((item) => dataOf(followed(item), `${path}\0-`, depth + 1));
    if (!isMap(node)) return null;
    const data: Record<string, unknown> = Object.create(null);
    for (const { key, value } of node.items as Entry[]) {
      const name = isScalar(key) ? String(key.value) : "";
      if (name in data) fault ??= { twice: key };
      if (fault !== null) return null;
      const below = depth === 0 ? name : `${path}\0${name}`;
      const full = followed(value);
      spots.set(below, { key, node: value, full });
      data[name] = dataOf(full, below, depth + 1);
    }
    return data;
  };

  const data = dataOf(root, "", 0);
  return fault ?? { data, spots, hasAnchors, targets: targets ?? none };
}

/** The pair under a key of a mapping, as it stands; null where there is none. */
export function pairAt(map: Mapping, key: string): Entry | null {
  for (const pair of map.items) if (isScalar(pair.key) && pair.key.value === key) return pair as Entry;
  return null;
}

/** What stands at a path from the root; undefined where nothing does. */
export function spotAt({ spots }: Tree, path: readonly string[]): Spot | undefined {
  return spots.get(path.join("\0"));
}

/** Whether a file says anything at a path: a key with nothing behind it says nothing. */
export function isSaid(tree: Tree, path: readonly string[]): boolean {
  const full = spotAt(tree, path)?.full ?? null;
  return full !== null && !(isScalar(full) && full.value === null);
}

/** The text of a single value at a path, without its quotes; null where there is no value. */
export function sourceAt(tree: Tree, path: readonly string[]): string | null {
  const node = spotAt(tree, path)?.full ?? null;
  if (!isScalar(node) || node.value === null) return null;
  return typeof node.value === "string" ? node.value : (node.source ?? String(node.value));
}

/** The word at a path, if the file has one there. */
export function wordAt(tree: Tree, path: readonly string[]): string | null {
  const node = spotAt(tree, path)?.full;
  return isScalar(node) && typeof node.value === "string" ? node.value : null;
}

/** The offset at which to point for a path: its value, else its key, else the key of the nearest part above it. */
function offsetOf(tree: Tree, path: readonly string[]): number {
  const value = spotAt(tree, path)?.node?.range;
  if (value) return value[0];
  for (let depth = path.length; depth > 0; depth--) {
    const key = spotAt(tree, path.slice(0, depth))?.key.range;
    if (key) return key[0];
  }
  return tree.root.range?.[0] ?? 0;
}

/** A complaint about what stands, or should stand, at a path. */
export function complaintAt(tree: Tree, path: readonly string[], message: string): Complaint {
  return { ...tree.place(offsetOf(tree, path)), part: path.map(safe).join("."), message };
}

/** A complaint about the last key of a path itself. */
export function complaintAtKey(tree: Tree, path: readonly string[], message: string): Complaint {
  return { ...tree.place(spotAt(tree, path)?.key.range?.[0] ?? 0), part: path.map(safe).join("."), message };
}
