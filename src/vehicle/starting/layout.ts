import { isMap } from "yaml";
import { type Change, changed } from "../edits/change.ts";
import { flowMap } from "../edits/flow.ts";
import { indentOf, lineEnd } from "../edits/spans.ts";
import { type Mapping, spotAt, type Tree } from "../tree.ts";
import { readYaml } from "../yaml.ts";
import { withMark } from "./marks.ts";

/** One line to write: a single value, or a point in braces. */
export interface Line {
  readonly path: readonly string[];
  readonly text: string;
  /** True for a starting value, which is to be marked as one. */
  readonly marked: boolean;
}

function treeOf(text: string): Tree | null {
  const tree = readYaml(text);
  return "complaints" in tree ? null : tree;
}

/** The deepest mapping on the way to a path that is there, and its path. */
function lastMapping(tree: Tree, path: readonly string[]): { readonly map: Mapping; readonly depth: number } {
  let [map, depth] = [tree.root, 0];
  for (let next = 1; next < path.length; next++) {
    const full = spotAt(tree, path.slice(0, next))?.full ?? null;
    if (!isMap(full)) break;
    [map, depth] = [full, next];
  }
  return { map, depth };
}

/** Lines below a new key, nested as their paths are, each mapping of them on lines of its own. */
function block(lines: readonly Line[], depth: number, indent: string, end: string): string {
  return [...new Set(lines.map((line) => line.path[depth] ?? ""))]
    .map((key) => {
      const below = lines.filter((line) => line.path[depth] === key);
      const leaf = below.find((line) => line.path.length === depth + 1);
      const value = leaf === undefined ? block(below, depth + 1, `${indent}  `, end) : ` ${leaf.text}`;
      return `${end}${indent}${key}:${value}`;
    })
    .join("");
}

function flow(lines: readonly Line[], depth: number): string {
  const keys = [...new Set(lines.map((line) => line.path[depth] ?? ""))];
  return flowMap(
    keys.map((key) => {
      const below = lines.filter((line) => line.path[depth] === key);
      const leaf = below.find((line) => line.path.length === depth + 1);
      return [key, leaf?.text ?? flow(below, depth + 1)] as const;
    }),
  );
}

/** Those of some lines that belong below the same new key as the first, and the change that writes them. */
function firstChange(text: string, lines: readonly Line[]): { change: Change; rest: readonly Line[] } | null {
  const tree = treeOf(text);
  const [first] = lines;
  if (tree === null || first === undefined) return null;
  const { map, depth } = lastMapping(tree, first.path);
  const path = first.path.slice(0, depth + 1);
  const isBelow = (line: Line) => path.every((key, at) => line.path[at] === key);
  const below = lines.filter(isBelow);
  const rest = lines.filter((line) => !isBelow(line));
  if (path.length === first.path.length) return { change: { path, text: first.text }, rest };
  const indent = indentOf(text, map);
  const value = indent === null ? flow(below, depth + 1) : block(below, depth + 1, `${indent}  `, lineEnd(text));
  return { change: { path, text: value }, rest };
}

/** The text with lines added, in block style where the file has it, starting values marked by a comment. */
export function withLines(text: string, lines: readonly Line[]): string {
  let [so, rest] = [text, lines];
  for (let next = firstChange(so, rest); next !== null; next = firstChange(so, rest)) {
    so = changed(so, [next.change]).replace(
      `${next.change.path.at(-1)}: ${lineEnd(so)}`,
      `${next.change.path.at(-1)}:${lineEnd(so)}`,
    );
    rest = next.rest;
  }
  return lines.filter((line) => line.marked).reduce((all, { path }) => withMark(all, path), so);
}
