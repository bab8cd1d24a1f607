import type * as z from "zod/mini";
import type { Complaint } from "./complaint.ts";
import { kindWords } from "./kinds.ts";
import type { Linkage } from "./linkage.ts";
import { linkages } from "./linkages.ts";
import type { Mechanism } from "./mechanism.ts";
import { mechanisms } from "./mechanisms.ts";
import { nearest } from "./nearest.ts";
import { quantities, quantitiesOf } from "./quantities.ts";
import type { Field } from "./sections/field.ts";
import { fieldAt, sectionNames } from "./sections.ts";
import { shown } from "./shown.ts";
import { complaintAt, complaintAtKey, type Tree } from "./tree.ts";

type Issue = z.core.$ZodIssue;

type Path = readonly string[];

/** What a file is checked against: its linkage and its mechanism. */
export interface Kinds {
  readonly linkage: Linkage;
  readonly mechanism: Mechanism;
}

/** Every place that a car file of these kinds can have something at, from the root. */
function placesOf({ linkage, mechanism }: Kinds): readonly Path[] {
  const numbers = quantitiesOf({ linkage: linkage.name, mechanism: mechanism.name });
  return [
    ["title"],
    ["notes"],
    ["job"],
    ["date"],
    ["as-built"],
    ["units"],
    ["front", "linkage"],
    ["steering", "mechanism"],
    ...numbers.flatMap(({ path, shared }) => (shared === null ? [path] : [path, shared])),
    ...mechanism.choices.map((choice) => ["steering", ...choice.path]),
    ...sectionNames.map((name) => [name]),
  ];
}

function starts(path: Path, start: Path): boolean {
  return start.every((key, depth) => path[depth] === key);
}

/** The part of an optional section at a path, if it is one. */
function sectionAt(path: Path, kinds: Kinds): Field<unknown> | undefined {
  return fieldAt(path, [kinds.linkage]);
}

/** The keys that may stand below a path. */
function keysBelow(path: Path, kinds: Kinds): readonly string[] {
  const field = sectionAt(path, kinds);
  if (field !== undefined) return field.keys;
  const below = placesOf(kinds).filter((place) => place.length > path.length && starts(place, path));
  return [...new Set(below.map((place) => place[path.length] ?? ""))];
}

/** What a place that these kinds do not have belongs to, in the file's own words; none where it belongs to nothing. */
function homesOf(path: Path, { linkage, mechanism }: Kinds): readonly string[] {
  const has = (kinds: Kinds) => placesOf(kinds).some((each) => starts(each, path));
  const linked = linkages.filter((each) => has({ linkage: each, mechanism })).map(({ name }) => `linkage: ${name}`);
  const steered = (mechanisms as readonly Mechanism[])
    .filter((each) => has({ linkage, mechanism: each }))
    .map(({ word, takeOff }) => (takeOff === null ? `mechanism: ${word}` : `a ${word} with take-off: ${takeOff}`));
  return [...linked, ...steered];
}

/** What stands at these paths is told by their schema. */
const wordKeys: Readonly<Record<string, string>> = {
  units: "in or mm",
  title: "text on one line",
  notes: "text",
  job: "text on one line",
  date: "text on one line, such as 2 May",
  "as-built": "text",
};

const choices = mechanisms.flatMap((mechanism: Mechanism) => mechanism.choices);

/** What a key is for, in one line; undefined where nothing is known of it. */
function helpOf(path: Path, kinds: Kinds): string | undefined {
  const choice = choices.find((each) => ["steering", ...each.path].join() === path.join());
  return quantityAt(path)?.help ?? choice?.help ?? sectionAt(path, kinds)?.help;
}

function quantityAt(path: readonly string[]) {
  return quantities.find((each) => [each.path, each.shared].some((place) => place?.join() === path.join()));
}

/** What is expected at a path, in a builder's words. */
function expected(path: Path, kinds: Kinds): string {
  const section = sectionAt(path, kinds);
  if (section !== undefined) return section.expected;
  const quantity = quantityAt(path);
  const keys = keysBelow(path, kinds);
  if (quantity !== undefined) {
    const value = kindWords[quantity.kind];
    return keys.length === 0 ? value : `${value}, or the keys ${keys.join(" and ")}`;
  }
  if (keys.length > 0) return `the keys ${keys.join(", ")}`;
  return wordKeys[path.join(".")] ?? "one of the words that are known here";
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data;
  for (const key of path) value = typeof value === "object" && value !== null ? Reflect.get(value, key) : undefined;
  return value;
}

/** A key that is not known here: points at the key itself, and says where it belongs or names the nearest known one. */
function unknownKey(tree: Tree, above: Path, key: string, kinds: Kinds): Complaint {
  const { noTravel } = kinds.linkage;
  if (noTravel !== undefined && above.length === 0 && key === "wheel-travel")
    return complaintAtKey(tree, [key], noTravel);
  const homes = homesOf([...above, key], kinds);
  if (homes.length > 0)
    return complaintAtKey(
      tree,
      [...above, key],
      `${shown(key)} does not belong here: it goes with ${homes.join(" or ")}`,
    );
  const known = keysBelow(above, kinds);
  const near = nearest(key, known);
  const advice = near === null ? `expected one of ${known.join(", ")}` : `did you mean "${near}"?`;
  return complaintAtKey(tree, [...above, key], `unknown key ${shown(key)}: ${advice}`);
}

function complaintsFor(tree: Tree, issue: Issue, kinds: Kinds): readonly Complaint[] {
  const path = issue.path.map(String);
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownKey(tree, path, key, kinds));
  const value = valueAt(tree.data, issue.path);
  if (issue.code === "invalid_union") {
    const nested = issue.errors.flat().filter((each) => each.path.length > 0 || each.code === "unrecognized_keys");
    const isGroup = typeof value === "object" && value !== null && !Array.isArray(value);
    if (isGroup && nested.length > 0)
      return nested.flatMap((each) => complaintsFor(tree, { ...each, path: [...issue.path, ...each.path] }, kinds));
  }
  if (value === undefined) {
    const help = helpOf(path, kinds) ?? `expected ${expected(path, kinds)}`;
    return [complaintAt(tree, path, `missing: ${help}`)];
  }
  if (issue.code === "invalid_value") {
    const choices = issue.values.map(String).join(" or ");
    return [complaintAt(tree, path, `found ${shown(value)}, expected ${choices}`)];
  }
  if (issue.code === "invalid_format")
    return [complaintAt(tree, path, `found ${shown(value)}, expected text without control characters`)];
  if (issue.code === "too_big") return [complaintAt(tree, path, `expected at most ${issue.maximum} characters`)];
  return [complaintAt(tree, path, `found ${shown(value)}, expected ${expected(path, kinds)}`)];
}

/** What a file has that a car file has not, or the other way round: unknown keys, wrong kinds of value, missing parts. */
export function complaintsOf(tree: Tree, schema: z.ZodMiniType, kinds: Kinds): readonly Complaint[] {
  const result = schema.safeParse(tree.data);
  if (result.success) return [];
  return result.error.issues.flatMap((issue) => complaintsFor(tree, issue, kinds));
}
