import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  LineCounter,
  type Node,
  type Pair,
  parseDocument,
  type YAMLMap,
} from "yaml";
import type { Complaint } from "./complaint.ts";
import { safe } from "./shown.ts";

/** The most that a car file may hold, in characters: many times what any car needs. */
export const largestText = 256 * 1024;

/** More aliases than this, once unfolded, are not a car but an attack. */
const mostAliases = 100;

/** A mapping in a car file, its keys plain words. */
export type Mapping = YAMLMap;

/** A key and its value, as they stand. */
export type Entry = Pair<Node, Node | null>;

/** A car file's text as YAML: nodes that know where they stand, and the same as plain data. */
export interface Tree {
  readonly text: string;
  readonly root: Mapping;
  /** Plain data for the schema. */
  readonly data: unknown;
  readonly hasAnchors: boolean;
  readonly document: Document.Parsed;
  /** Line and column of an offset, as editors count. */
  readonly place: (offset: number) => { line: number; column: number };
}

/** What YAML's own complaints mean to a builder, by their code. */
const words: Readonly<Record<string, string>> = {
  BAD_INDENT: "the indentation does not fit, or a bracket or brace is not closed",
  BLOCK_AS_IMPLICIT_KEY: "the indentation does not fit, or a second colon stands on the line",
  MULTILINE_IMPLICIT_KEY: "a key has no colon after it, or the indentation does not fit",
  TAB_AS_INDENT: "there is a tab in the indentation: use spaces",
  DUPLICATE_KEY: "the same key stands here a second time: keep one of them",
  MISSING_CHAR: "a quote, bracket, brace, comma or colon is missing",
  MULTIPLE_DOCS: "a second document begins here: a file holds one car",
  BAD_ALIAS: "a reference (*name) is not written properly",
  NON_STRING_KEY: "a key is not a plain word",
  RESOURCE_EXHAUSTION: "the keys are nested too deeply",
  TAG_RESOLVE_FAILED: "tags (!name) are not used in car files",
  UNEXPECTED_TOKEN: "something stands here that does not belong",
};

function wholeFile(message: string): { complaints: readonly Complaint[] } {
  return { complaints: [{ line: null, column: null, part: "", message }] };
}

/** The first character that no text file holds: a control character, or what broken bytes turn into. */
function binaryAt(text: string): number {
  return text.search(/[\0-\x08\x0b\x0c\x0e-\x1f\x7f\ufffd\ufffe\uffff]/);
}

/** The node that a node stands for: an alias gives what it refers to. */
export function resolved(node: unknown, document: Document.Parsed): Node | null {
  if (isAlias(node)) return node.resolve(document) ?? null;
  return isMap(node) || isScalar(node) ? node : ((node ?? null) as Node | null);
}

/** The pair under a key of a mapping, as it stands; null where there is none. */
export function pairAt(map: Mapping, key: string): Entry | null {
  for (const pair of map.items) if (isScalar(pair.key) && pair.key.value === key) return pair as Entry;
  return null;
}

/** The node at a path from the root, aliases followed; null where nothing is. */
export function nodeAt(tree: Tree, path: readonly string[]): Node | null {
  let node: Node | null = tree.root;
  for (const key of path) {
    const map = resolved(node, tree.document);
    if (!isMap(map)) return null;
    node = pairAt(map, key)?.value ?? null;
  }
  return node;
}

/** The offset at which to point for a path: its value, else its key, else the nearest mapping above it. */
export function offsetOf(tree: Tree, path: readonly string[]): number {
  const node = nodeAt(tree, path);
  if (node?.range) return node.range[0];
  for (let depth = path.length - 1; depth > 0; depth--) {
    const above = nodeAt(tree, path.slice(0, depth - 1));
    const map = resolved(above, tree.document);
    const pair = isMap(map) ? pairAt(map, path[depth - 1] ?? "") : null;
    if (pair?.key.range) return pair.key.range[0];
  }
  return tree.root.range?.[0] ?? 0;
}

/** A complaint about what stands, or should stand, at a path. */
export function complaintAt(tree: Tree, path: readonly string[], message: string): Complaint {
  return { ...tree.place(offsetOf(tree, path)), part: path.join("."), message };
}

/** The word under a path, if the file has one there. */
export function wordAt(tree: Tree, path: readonly string[]): string | null {
  const node = resolved(nodeAt(tree, path), tree.document);
  return isScalar(node) && typeof node.value === "string" ? node.value : null;
}

function parsed(text: string): Tree | { complaints: readonly Complaint[] } {
  const lines = new LineCounter();
  const place = (offset: number) => {
    const { line, col } = lines.linePos(offset);
    const marked = line === 1 && text.charCodeAt(0) === 0xfeff;
    return { line: Math.max(line, 1), column: Math.max(marked ? col - 1 : col, 1) };
  };
  const document = parseDocument(text, {
    lineCounter: lines,
    version: "1.2",
    schema: "core",
    merge: false,
    stringKeys: true,
    prettyErrors: false,
    logLevel: "silent",
  });
  const fault = document.errors[0] ?? document.warnings[0];
  if (fault !== undefined) {
    const reason = words[fault.code] ?? `it cannot be read as YAML: ${safe(fault.message)}`;
    return { complaints: [{ ...place(fault.pos[0]), part: "", message: reason }] };
  }
  const root = document.contents;
  if (root === null) return wholeFile("the file holds nothing but comments; a car file begins with title: and units:");
  if (!isMap(root))
    return wholeFile("this is not a car file: it should be keys and values, such as units: in and wheelbase: 68");
  let hasAnchors = false;
  const data: unknown = document.toJS({
    maxAliasCount: mostAliases,
    onAnchor: () => {
      hasAnchors = true;
    },
  });
  return { text, root, data, hasAnchors, document, place };
}

/** The text of a car file as YAML, or what keeps it from being that. Never throws, whatever the text. */
export function readYaml(text: string): Tree | { complaints: readonly Complaint[] } {
  if (text.length > largestText)
    return wholeFile(`the file is too large for a car: more than ${largestText / 1024} KiB`);
  if (text.trim() === "") return wholeFile("the file is empty; a car file begins with title: and units:");
  const binary = binaryAt(text);
  if (binary >= 0) {
    const before = text.slice(0, binary).split("\n");
    const column = (before.at(-1)?.length ?? 0) + 1;
    const message = "this is not a text file: it holds a character that no car file has";
    return { complaints: [{ line: before.length, column, part: "", message }] };
  }
  try {
    return parsed(text);
  } catch (error) {
    if (error instanceof RangeError) return wholeFile("the keys are nested too deeply for a car file");
    const aliases = error instanceof ReferenceError && /alias/i.test(error.message);
    if (!aliases) return wholeFile("the file cannot be read as YAML");
    const many = /excessive/i.test(error.message);
    return wholeFile(
      many
        ? "the file refers to its own parts (&name, *name) too many times over"
        : "the file refers to a part (*name) that is not named (&name) before",
    );
  }
}
