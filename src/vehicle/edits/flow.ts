import { type Alias, isAlias, isMap, isNode, isScalar, type Node } from "yaml";
import { pairAt, resolved, type Tree } from "../tree.ts";

/** A mapping of these keys on one line, each with its text. */
export function flowMap(entries: readonly (readonly [key: string, text: string])[]): string {
  return `{ ${entries.map(([key, text]) => `${key}: ${text}`).join(", ")} }`;
}

/** A value's text below a path of keys, on one line. */
export function flowBelow(path: readonly string[], text: string): string {
  return path.reduceRight((inner, key) => flowMap([[key, inner]]), text);
}

/** A node's text on one line, with whatever it refers to written out. */
function flowOf(tree: Tree, node: Node | null): string {
  const full = resolved(node, tree);
  if (isMap(full))
    return flowMap(full.items.map((pair) => [String(pair.key), flowOf(tree, pair.value as Node | null)] as const));
  if (!isScalar(full)) return "null";
  const plain = full.range && (full.type === "PLAIN" || full.type === "QUOTE_DOUBLE" || full.type === "QUOTE_SINGLE");
  const source = plain && full.range ? tree.text.slice(full.range[0], full.range[1]) : "";
  return source !== "" && !/[\r\n,]/.test(source) ? source : JSON.stringify(full.value);
}

/** Whether a node is a reference (*name), or can be referred to (&name). */
function isReferable(node: unknown): boolean {
  return isAlias(node) || (isNode(node) && (node as { anchor?: string }).anchor !== undefined);
}

function holdsReferable(node: Node | null): boolean {
  if (isReferable(node)) return true;
  return isMap(node) && node.items.some((pair) => holdsReferable(pair.value as Node | null));
}

/** Whether a change at a path could change something else too, because a part on the way is shared (&name, *name). */
export function isReferredTo(tree: Tree, path: readonly string[]): boolean {
  if (!tree.hasAnchors) return false;
  let node: Node | null = tree.root;
  for (const key of path) {
    if (isReferable(node)) return true;
    if (!isMap(node)) return false;
    node = pairAt(node, key)?.value ?? null;
  }
  return holdsReferable(node);
}

function referencesIn(node: unknown): Alias[] {
  if (isAlias(node)) return [node];
  return isMap(node) ? node.items.flatMap((pair) => referencesIn(pair.value)) : [];
}

/** The same text with every reference (*name) written out, so that each part stands alone. */
export function withoutReferences(tree: Tree): string {
  return referencesIn(tree.root)
    .sort((a, b) => (b.range?.[0] ?? 0) - (a.range?.[0] ?? 0))
    .reduce((text, alias) => {
      const [start, end] = alias.range ?? [0, 0];
      return text.slice(0, start) + flowOf(tree, alias) + text.slice(end);
    }, tree.text);
}
