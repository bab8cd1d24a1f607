import type * as z from "zod/mini";
import type { Complaint } from "./complaint.ts";
import { mechanisms } from "./mechanisms.ts";
import { nearest } from "./nearest.ts";
import { quantities } from "./quantities.ts";
import { shown } from "./shown.ts";
import { complaintAt, complaintAtKey, type Tree } from "./tree.ts";

type Issue = z.core.$ZodIssue;

/** Every place that a car file can have something at, from the root. */
const places: readonly (readonly string[])[] = [
  ["title"],
  ["notes"],
  ["units"],
  ["front", "linkage"],
  ["steering", "mechanism"],
  ...quantities.flatMap((quantity) => (quantity.shared === null ? [quantity.path] : [quantity.path, quantity.shared])),
  ...mechanisms.flatMap((mechanism) => mechanism.choices.map((choice) => ["steering", ...choice.path])),
];

function starts(path: readonly string[], start: readonly string[]): boolean {
  return start.every((key, depth) => path[depth] === key);
}

/** The keys that may stand below a path. */
function keysBelow(path: readonly string[]): readonly string[] {
  const below = places.filter((place) => place.length > path.length && starts(place, path));
  return [...new Set(below.map((place) => place[path.length] ?? ""))];
}

/** What stands at these paths is told by their schema. */
const wordKeys: Readonly<Record<string, string>> = {
  units: "in or mm",
  title: "text on one line",
  notes: "text",
};

function quantityAt(path: readonly string[]) {
  return quantities.find((each) => [each.path, each.shared].some((place) => place?.join() === path.join()));
}

/** What is expected at a path, in a builder's words. */
function expected(path: readonly string[]): string {
  const quantity = quantityAt(path);
  const keys = keysBelow(path);
  if (quantity?.kind === "angle") return "an angle in degrees, such as 0.5";
  const length = 'a length such as 14.375, "14 3/8" or "365 mm"';
  if (quantity !== undefined) return keys.length === 0 ? length : `${length}, or the keys ${keys.join(" and ")}`;
  if (keys.length > 0) return `the keys ${keys.join(", ")}`;
  return wordKeys[path.join(".")] ?? "one of the words that are known here";
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) value = typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;
  return value;
}

/** A key that is not known: points at the key itself, and names the nearest known one. */
function unknownKey(tree: Tree, above: readonly string[], key: string): Complaint {
  const known = keysBelow(above);
  const near = nearest(key, known);
  const advice = near === null ? `expected one of ${known.join(", ")}` : `did you mean "${near}"?`;
  return complaintAtKey(tree, [...above, key], `unknown key ${shown(key)}: ${advice}`);
}

function complaintsFor(tree: Tree, issue: Issue): readonly Complaint[] {
  const path = issue.path.map(String);
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(tree, path, key));
  const value = valueAt(tree.data, issue.path);
  if (issue.code === "invalid_union") {
    const nested = issue.errors.flat().filter((each) => each.path.length > 0 || each.code === "unrecognized_keys");
    const isGroup = typeof value === "object" && value !== null && !Array.isArray(value);
    if (isGroup && nested.length > 0)
      return nested.flatMap((each) => complaintsFor(tree, { ...each, path: [...issue.path, ...each.path] }));
  }
  if (value === undefined) {
    const help = quantityAt(path)?.help ?? `expected ${expected(path)}`;
    return [complaintAt(tree, path, `missing: ${help}`)];
  }
  if (issue.code === "invalid_value") {
    const choices = issue.values.map(String).join(" or ");
    return [complaintAt(tree, path, `found ${shown(value)}, expected ${choices}`)];
  }
  if (issue.code === "invalid_format")
    return [complaintAt(tree, path, `found ${shown(value)}, expected text without control characters`)];
  if (issue.code === "too_big") return [complaintAt(tree, path, `expected at most ${issue.maximum} characters`)];
  return [complaintAt(tree, path, `found ${shown(value)}, expected ${expected(path)}`)];
}

/** What a file has that a car file has not, or the other way round: unknown keys, wrong kinds of value, missing parts. */
export function complaintsOf(tree: Tree, schema: z.ZodMiniType): readonly Complaint[] {
  const result = schema.safeParse(tree.data);
  if (result.success) return [];
  return result.error.issues.flatMap((issue) => complaintsFor(tree, issue));
}
