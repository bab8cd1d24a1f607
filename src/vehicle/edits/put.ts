import { isMap, isScalar, type Node } from "yaml";
import { type Entry, type Mapping, pairAt, type Tree } from "../tree.ts";
import { flowBelow, flowMap } from "./flow.ts";
import { afterColon, endOf, endOfValue, indentOf, isNothing, lineEnd, lineStart, lineStop, startOf } from "./spans.ts";

function spliced(text: string, start: number, end: number, by: string): string {
  return text.slice(0, start) + by + text.slice(end);
}

/** Another text for a pair's value; all around it stays. */
function withValue(text: string, pair: Entry, value: string): string {
  if (pair.value === null || isNothing(pair.value)) {
    const { offset, colon } = afterColon(text, pair);
    return spliced(text, offset, offset, colon ? ` ${value}` : `: ${value}`);
  }
  return spliced(text, pair.value.range?.[0] ?? 0, endOfValue(text, pair.value), value);
}

/** One number that stood for both ways becomes one for each. */
function eachWay(text: string, pair: Entry, node: Node, way: string, value: string): string {
  const old = text.slice(node.range?.[0], endOfValue(text, node));
  const ways = ["left", "right"].map((each) => [each, each === way ? value : old] as const);
  return withValue(text, pair, flowMap(ways));
}

/** A new last key of a mapping; null where its layout is none that a line or an item can be added to. */
function withKey(text: string, map: Mapping, key: string, value: string): string | null {
  const last = map.items.at(-1) as Entry | undefined;
  if (last === undefined) {
    const inside = (map.range?.[0] ?? 0) + 1;
    return spliced(text, inside, inside, ` ${key}: ${value}${text[inside] === "}" ? " " : ""}`);
  }
  if (map.flow) return spliced(text, endOf(text, last), endOf(text, last), `, ${key}: ${value}`);
  const indent = indentOf(text, map);
  if (indent === null) return null;
  const at = lineStop(text, endOf(text, last));
  return spliced(text, at, at, `${lineEnd(text)}${indent}${key}: ${value}`);
}

/** A new first key of the whole file; null where its layout has no room for one. */
export function withFirstKey(tree: Tree, key: string, value: string): string | null {
  const { text, root } = tree;
  const first = root.items[0] as Entry | undefined;
  if (first === undefined) return null;
  if (root.flow) return spliced(text, startOf(first), startOf(first), `${key}: ${value}, `);
  if (indentOf(text, root) === null) return null;
  const marked = text.charCodeAt(0) === 0xfeff ? 1 : 0;
  const at = Math.max(lineStart(text, startOf(first)), marked);
  return spliced(text, at, at, `${indentOf(text, root)}${key}: ${value}${lineEnd(text)}`);
}

/** The text with a value at a path, keys added where they are missing; null where the layout does not let it. */
export function put(tree: Tree, path: readonly string[], value: string): string | null {
  let map = tree.root;
  for (const [depth, key] of path.entries()) {
    const rest = path.slice(depth + 1);
    const pair = pairAt(map, key);
    if (pair === null) return withKey(tree.text, map, key, flowBelow(rest, value));
    if (rest.length === 0) return withValue(tree.text, pair, value);
    if (isMap(pair.value)) map = pair.value;
    else if (isScalar(pair.value) && pair.value.value !== null)
      return eachWay(tree.text, pair, pair.value, rest[0] ?? "", value);
    else return withValue(tree.text, pair, flowBelow(rest, value));
  }
  return null;
}
