import type { Car } from "./car.ts";
import { type Change, changed } from "./edits/change.ts";
import { flowMap } from "./edits/flow.ts";
import { withFirstKey } from "./edits/put.ts";
import { shortest, written } from "./edits/written.ts";
import { pairOf } from "./quantities.ts";
import type { Quantity } from "./quantity.ts";
import { withoutMarks } from "./starting/marks.ts";
import { pairAt, sourceAt, type Tree } from "./tree.ts";
import { inch } from "./units/length.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { readYaml } from "./yaml.ts";

/** A new value for one quantity of a car. */
export interface Edit {
  /** As Quantity.pair has it. */
  readonly pair: string;
  /** Of a quantity that the car has only one of, any. */
  readonly sides: "both" | Wheel;
  /** mm or rad. */
  readonly value: number;
  /** The builder's own text for it, such as "14 3/8": kept where it is worth that value by itself. */
  readonly as?: string;
}

function treeOf(car: Pick<Car, "text">): Tree | null {
  const tree = readYaml(car.text);
  return "complaints" in tree ? null : tree;
}

/** The text at the first of some paths that has a value. */
function textAt(tree: Tree | null, paths: readonly (readonly string[] | null)[]): string | null {
  for (const path of paths) {
    const source = tree === null || path === null ? null : sourceAt(tree, path);
    if (source !== null) return source;
  }
  return null;
}

/** Whether a quantity's own place is inside the shared one, as left and right of a rack's travel are. */
export function isWithin({ path, shared }: Quantity): boolean {
  return shared?.every((key, depth) => path[depth] === key) ?? false;
}

/** Both sides at once: the shared place gets the text (null for none), and what overrode it goes. */
function bothSides(of: readonly Quantity[], shared: readonly string[], text: string | null): readonly Change[] {
  const overrides = of.filter((each) => !isWithin(each)).map((each) => ({ path: each.path, text: null }));
  return [{ path: shared, text }, ...overrides];
}

/** A value for each way where the file had none: what is not meant is as if it were left out. */
function bothWays(of: readonly Quantity[], meant: readonly Quantity[], text: string): string {
  return flowMap(of.map((each) => [each.wheel ?? "left", meant.includes(each) ? text : String(each.absent ?? 0)]));
}

/**
 * The car's text with another value for one quantity; comments and layout stay. Editing both sides writes the value at
 * `both` and drops what overrides it at `left` and `right`; editing one side writes an override. The value may be one
 * that a car cannot have: reading the text says so. A value that was a starting value is one no more.
 */
export function setQuantity(car: Pick<Car, "text" | "form">, edit: Edit): string {
  const tree = treeOf(car);
  const of = pairOf(edit.pair);
  const text = (places: readonly (readonly string[] | null)[]) =>
    written({
      kind: of[0]?.kind ?? "length",
      value: edit.value,
      units: car.form.units,
      as: edit.as,
      now: textAt(tree, places),
    });
  const shared = of[0]?.shared ?? null;
  const meant = of.filter(({ wheel }) => wheel === null || edit.sides === "both" || wheel === edit.sides);
  const isNew = shared !== null && of.every(isWithin) && textAt(tree, [shared, ...of.map(({ path }) => path)]) === null;
  const changes =
    shared !== null && edit.sides === "both"
      ? bothSides(of, shared, text([shared, ...of.map((each) => each.path)]))
      : isNew
        ? [{ path: shared ?? [], text: bothWays(of, meant, text([])) }]
        : meant.map(({ path }) => ({ path, text: text([path, shared]) }));
  return withoutMarks({ text: changed(car.text, changes), form: car.form }, new Set(meant.map(({ id }) => id)));
}

const rods = pairOf("tie-rod.length");
const rodsOfBoth = ["front", "both", "tie-rod", "length"];

/** To this much a rod's worked-out length is written, mm: a hundredth of what any gauge reads. */
const rodTolerance = 1e-6;

function rodText(length: number, units: LengthUnit): string {
  const size = units === "in" ? inch : 1;
  return shortest(length / size, rodTolerance / size);
}

/** The car's text with both tie rods as cut to these lengths, mm, eye to eye; alike ones are written once. */
export function cutRods(car: Pick<Car, "text" | "form">, lengths: Readonly<Record<Wheel, number>>): string {
  const texts = { left: rodText(lengths.left, car.form.units), right: rodText(lengths.right, car.form.units) };
  if (texts.left === texts.right) return changed(car.text, bothSides(rods, rodsOfBoth, texts.left));
  const own = rods.map((rod) => ({ path: rod.path, text: texts[rod.wheel ?? "left"] }));
  return changed(car.text, [...own, { path: rodsOfBoth, text: null }]);
}

/** The car's text with both tie rods cut to fit the drawn toe: no length is given any more. */
export function fitRods(car: Pick<Car, "text">): string {
  return changed(car.text, bothSides(rods, rodsOfBoth, null));
}

/** Plain YAML text that is a title and can be nothing else. */
const plainTitle = /^[A-Za-z][A-Za-z0-9 ,.()/'-]*$/;

/** The car's text with another title: one line of text. */
export function setTitle(car: Pick<Car, "text">, title: string): string {
  const line = title.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, " ").trim();
  const text = plainTitle.test(line) && !/^(true|false|null)$/i.test(line) ? line : JSON.stringify(line);
  const tree = treeOf(car);
  const fresh = tree !== null && pairAt(tree.root, "title") === null ? withFirstKey(tree, "title", text) : null;
  return fresh ?? changed(car.text, [{ path: ["title"], text }]);
}
