import { isMap, isScalar } from "yaml";
import type * as z from "zod/mini";
import type { Car } from "./car.ts";
import type { Complaint } from "./complaint.ts";
import { complaintsOf } from "./grammar.ts";
import type { Linkage } from "./linkage.ts";
import { linkages } from "./linkages.ts";
import type { Mechanism } from "./mechanism.ts";
import { mechanisms } from "./mechanisms.ts";
import { indexOf, quantities, quantitiesOf } from "./quantities.ts";
import type { Quantity } from "./quantity.ts";
import { carSchema } from "./schema.ts";
import { shown } from "./shown.ts";
import { faultsOf, warningsOf } from "./sound.ts";
import { readAngle } from "./units/angle.ts";
import { formatAngle, sayLength } from "./units/format.ts";
import { readLength } from "./units/length.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { complaintAt, nodeAt, readYaml, resolved, type Tree, wordAt } from "./yaml.ts";

/** What keeps a text from being a car. */
export interface Refused {
  readonly complaints: readonly Complaint[];
}

const schemas = new Map<string, z.ZodMiniType>();

/** The schema of one linkage and one mechanism, made once. */
function schemaOf(linkage: Linkage, mechanism: Mechanism): z.ZodMiniType {
  const name = `${linkage.name} ${mechanism.name}`;
  const made = schemas.get(name) ?? carSchema([linkage], [mechanism]);
  schemas.set(name, made);
  return made;
}

/** The value that a file gives a quantity and where: its own place first, then the one it shares. */
function found(tree: Tree, quantity: Quantity): { path: readonly string[]; source: string } | null {
  for (const path of [quantity.path, quantity.shared]) {
    const node = path === null ? null : resolved(nodeAt(tree, path), tree.document);
    if (path !== null && isScalar(node) && node.value !== null)
      return { path, source: typeof node.value === "string" ? node.value : (node.source ?? String(node.value)) };
  }
  return null;
}

function limit(value: number, quantity: Quantity, units: LengthUnit): string {
  if (quantity.kind === "angle") return `${formatAngle(value, 0)} degrees`;
  return sayLength(value, units === "in" ? { unit: "in", decimals: 1 } : { unit: "mm" });
}

/** What a quantity's text is worth, mm or rad; a complaint where it is none or absurd. */
function worth(source: string, quantity: Quantity, units: LengthUnit): number | { complaint: string } {
  const read = quantity.kind === "length" ? readLength(source, units) : readAngle(source);
  if ("complaint" in read) return { complaint: `found ${shown(source)}, which is ${read.complaint}` };
  const value = "mm" in read ? read.mm : read.rad;
  if (value >= quantity.low && value <= quantity.high) return value;
  const range = `${limit(quantity.low, quantity, units)} to ${limit(quantity.high, quantity, units)}`;
  return { complaint: `found ${shown(source)}, expected a value from ${range}` };
}

/** Where a missing quantity should be written: beside what is there already, both sides at once where nothing is. */
function missingAt(tree: Tree, quantity: Quantity): readonly string[] {
  if (quantity.shared === null || isMap(resolved(nodeAt(tree, quantity.shared), tree.document))) return quantity.path;
  return quantity.shared;
}

interface Numbers {
  readonly numbers: Float64Array;
  readonly complaints: readonly Complaint[];
}

function numbersOf(tree: Tree, of: readonly Quantity[], units: LengthUnit): Numbers {
  const numbers = new Float64Array(quantities.length);
  const complaints = new Map<string, Complaint>();
  const complain = (path: readonly string[], message: string) =>
    complaints.set(path.join("."), complaintAt(tree, path, message));
  for (const quantity of of) {
    const text = found(tree, quantity);
    if (text === null) {
      if (quantity.absent === null) complain(missingAt(tree, quantity), `missing: ${quantity.help}`);
      else numbers[quantity.index] = quantity.absent;
      continue;
    }
    const value = worth(text.source, quantity, units);
    if (typeof value === "number") numbers[quantity.index] = value;
    else complain(text.path, value.complaint);
  }
  return { numbers, complaints: [...complaints.values()] };
}

const rodLength = { left: indexOf("left.tie-rod.length"), right: indexOf("right.tie-rod.length") } as const;

function rodOf(numbers: Float64Array, wheel: Wheel): "fit" | "cut" {
  return numbers[rodLength[wheel]] === 0 ? "fit" : "cut";
}

/** One of the names that a key may have; where it has none of them, the complaint. */
function chosen<T extends { readonly name: string }>(
  tree: Tree,
  path: readonly string[],
  all: readonly T[],
): T | Complaint {
  const node = resolved(nodeAt(tree, path), tree.document);
  const name = isScalar(node) ? node.value : node === null ? null : {};
  const match = all.find((each) => each.name === name);
  if (match !== undefined) return match;
  const names = all.map((each) => each.name).join(", ");
  return complaintAt(tree, path, `found ${shown(name)}, expected ${all.length > 1 ? "one of " : ""}${names}`);
}

function sorted(complaints: readonly Complaint[]): readonly Complaint[] {
  return [...complaints].sort(
    (a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0) || a.part.localeCompare(b.part),
  );
}

function carOf(tree: Tree): Car | Refused {
  const linkage = chosen(tree, ["front", "linkage"], linkages);
  const mechanism = chosen(tree, ["steering", "mechanism"], mechanisms);
  const names = [linkage, mechanism].filter((each): each is Complaint => "message" in each);
  if ("message" in linkage || "message" in mechanism) return { complaints: sorted(names) };
  const grammar = complaintsOf(tree, schemaOf(linkage, mechanism));
  if (grammar.length > 0) return { complaints: sorted(grammar) };
  const units: LengthUnit = wordAt(tree, ["units"]) === "in" ? "in" : "mm";
  const kind = { linkage: linkage.name, mechanism: mechanism.name };
  const { numbers, complaints } = numbersOf(tree, quantitiesOf(kind), units);
  if (complaints.length > 0) return { complaints: sorted(complaints) };
  const faults = faultsOf(tree, numbers, linkage);
  if (faults.length > 0) return { complaints: sorted(faults) };
  const moves = wordAt(tree, ["steering", mechanism.name, "wheel-left-moves"]);
  return {
    text: tree.text,
    title: wordAt(tree, ["title"]) ?? "Untitled car",
    numbers,
    form: {
      units,
      ...kind,
      rods: { left: rodOf(numbers, "left"), right: rodOf(numbers, "right") },
      wheelLeftMoves: moves === "left" || moves === "right" ? moves : null,
    },
    warnings: sorted(warningsOf(tree, numbers, units)),
  };
}

/**
 * The car that a text describes, or all that is wrong with the text, each with line, column, what was found and what was
 * expected. Never throws, whatever the text. Lengths that hold products or brackets need prepareProducts first.
 */
export function readCar(text: string): Car | Refused {
  const tree = readYaml(text);
  return "complaints" in tree ? tree : carOf(tree);
}
