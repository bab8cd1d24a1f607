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

/** The text without the lines of a part; lines that hold nothing but a comment stay. */
function withoutLines(text: string, start: number, end: number): string {
  const from = lineStart(text, start);
  const stop = lineStop(text, end);
  const to = text[stop] === "\r" ? stop + 2 : stop + 1;
  const kept = text
    .slice(from, to)
    .split(/(?<=\n)/)
    .filter((line) => /^\s*#/.test(line));
  const after = text.slice(0, from) + kept.join("") + text.slice(to);
  return text.endsWith("\n") ? after : after.replace(/\r?\n$/, "");
}

/** Takes an item and one of its commas out of a mapping in braces: with its lines where it has them to itself. */
function withoutItem(text: string, { map, pair }: Found): string {
  const [start, end] = [startOf(pair), endOf(text, pair)];
  const comma = /^\s*,[ \t]*/.exec(text.slice(end));
  const next = comma === null ? end : end + comma[0].length;
  const before = text.slice(lineStart(text, start), start);
  const behind = text.slice(next, lineStop(text, next));
  if (before.trim() === "" && /^\s*(#.*)?$/.test(behind)) return withoutLines(text, start, next);
  if (comma !== null) return text.slice(0, start) + text.slice(next);
  const previous = map.items[map.items.indexOf(pair as (typeof map.items)[number]) - 1] as Entry | undefined;
  const from = previous === undefined ? start : endOf(text, previous);
  const onlyComma = /^\s*,\s*$/.test(text.slice(from, start));
  return text.slice(0, onlyComma ? from : start) + text.slice(end).replace(/^[ \t]+(?=[\r\n])/, "");
}

/** The text without the value at a path, nor any mapping that is left empty; null where the layout does not let it. */
export function drop(tree: Tree, path: readonly string[]): string | null {
  const found = lastReason(tree, path);
  if (found === null) return tree.text;
  const { map, pair } = found;
  if (map.flow) return withoutItem(tree.text, found);
  return indentOf(tree.text, map) === null ? null : withoutLines(tree.text, startOf(pair), endOf(tree.text, pair));
}
