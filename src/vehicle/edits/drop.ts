import { isMap } from "yaml";
import { type Entry, type Mapping, pairAt, type Tree } from "../tree.ts";
import { endOf, indentOf, lineStart, lineStop, startOf } from "./spans.ts";

interface Found {
  readonly map: Mapping;
  readonly pair: Entry;
}

/** The pair at a path, or the highest one above it that would hold nothing without it; null where there is none. */
function lastReason(tree: Tree, path: readonly string[]): Found | null {
  let map = tree.root;
  let top: Found | null = null;
  for (const [depth, key] of path.entries()) {
    const pair = pairAt(map, key);
    if (pair === null) return null;
    if (top === null || map.items.length > 1) top = { map, pair };
    if (depth === path.length - 1) return top;
    if (!isMap(pair.value)) return null;
    map = pair.value;
  }
  return null;
}

/** Takes an item and one of its commas out of a mapping in braces. */
function withoutItem(text: string, { map, pair }: Found): string {
  const [start, end] = [startOf(pair), endOf(text, pair)];
  const comma = /^\s*,[ \t]*/.exec(text.slice(end));
  if (comma !== null) return text.slice(0, start) + text.slice(end + comma[0].length);
  const before = map.items[map.items.indexOf(pair as (typeof map.items)[number]) - 1] as Entry | undefined;
  const from = before === undefined ? start : endOf(text, before);
  const between = text.slice(from, start);
  return text.slice(0, /^\s*,\s*$/.test(between) ? from : start) + text.slice(end).replace(/^[ \t]+(?=[\r\n])/, "");
}

/** Takes the lines of a pair out; lines that hold nothing but a comment stay. */
function withoutLines(text: string, { map, pair }: Found): string | null {
  if (indentOf(text, map) === null) return null;
  const start = lineStart(text, startOf(pair));
  const stop = lineStop(text, endOf(text, pair));
  const end = text[stop] === "\r" ? stop + 2 : stop + 1;
  const kept = text
    .slice(start, end)
    .split(/(?<=\n)/)
    .filter((line) => /^\s*#/.test(line));
  const after = text.slice(0, start) + kept.join("") + text.slice(end);
  return text.endsWith("\n") ? after : after.replace(/\r?\n$/, "");
}

/** The text without the value at a path, nor any mapping that is left empty; null where the layout does not let it. */
export function drop(tree: Tree, path: readonly string[]): string | null {
  const found = lastReason(tree, path);
  if (found === null) return tree.text;
  return found.map.flow ? withoutItem(tree.text, found) : withoutLines(tree.text, found);
}
