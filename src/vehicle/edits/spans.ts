import { isMap, isScalar, type Node } from "yaml";
import type { Entry, Mapping } from "../tree.ts";

/** What ends the lines of a text. */
export function lineEnd(text: string): "\n" | "\r\n" {
  return text.includes("\r\n") ? "\r\n" : "\n";
}

/** Where the line of an offset starts. */
export function lineStart(text: string, offset: number): number {
  return text.lastIndexOf("\n", offset - 1) + 1;
}

/** Where the line of an offset ends, before its line break. */
export function lineStop(text: string, offset: number): number {
  const at = text.indexOf("\n", offset);
  const end = at < 0 ? text.length : at;
  return text[end - 1] === "\r" && end > offset ? end - 1 : end;
}

/** Where a pair's key starts. */
export function startOf(pair: Entry): number {
  return pair.key.range?.[0] ?? 0;
}

/** Just after the colon of a pair, or after its key where it has none; `colon` tells which. */
export function afterColon(text: string, pair: Entry): { offset: number; colon: boolean } {
  const end = pair.key.range?.[1] ?? 0;
  const gap = /^\s*:/.exec(text.slice(end));
  return gap === null ? { offset: end, colon: false } : { offset: end + gap[0].length, colon: true };
}

/** Whether a node takes no room in the text: a key with nothing after it. */
export function isNothing(node: Node | null): boolean {
  return node === null || !node.range || node.range[0] === node.range[1];
}

/** Where a value's own text ends: before its comment and its line break. */
export function endOfValue(text: string, node: Node): number {
  if (isMap(node) && !node.flow) {
    const last = node.items.at(-1) as Entry | undefined;
    if (last !== undefined) return endOf(text, last);
  }
  let end = node.range?.[1] ?? 0;
  const isBlock = isScalar(node) && (node.type === "BLOCK_LITERAL" || node.type === "BLOCK_FOLDED");
  while (isBlock && (text[end - 1] === "\n" || text[end - 1] === "\r")) end -= 1;
  return end;
}

/** Where a pair's own text ends. */
export function endOf(text: string, pair: Entry): number {
  if (pair.value === null || isNothing(pair.value)) return afterColon(text, pair).offset;
  return endOfValue(text, pair.value);
}

/** The spaces before the keys of a mapping that has a line for each; null where something else stands there. */
export function indentOf(text: string, map: Mapping): string | null {
  const first = map.items[0] as Entry | undefined;
  if (first === undefined || map.flow) return null;
  const indent = text.slice(lineStart(text, startOf(first)), startOf(first)).replace(/^\ufeff/, "");
  return /^ *$/.test(indent) ? indent : null;
}
