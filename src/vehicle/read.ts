import { isMap, isScalar } from "yaml";
import type * as z from "zod/mini";
import type { Car } from "./car.ts";
import type { Complaint } from "./complaint.ts";
import { otherKind } from "./file-kind.ts";
import { complaintsOf } from "./grammar.ts";
import type { Linkage } from "./linkage.ts";
import { linkages } from "./linkages.ts";
import { checking } from "./maker.ts";
import type { Mechanism } from "./mechanism.ts";
import { mechanisms } from "./mechanisms.ts";
import { indexOf, quantities, quantitiesOf } from "./quantities.ts";
import type { Quantity } from "./quantity.ts";
import { carSchema } from "./schema.ts";
import { isSection, type SectionName, type Sections, sectionField, sectionNames } from "./sections.ts";
import { setAsideWarnings } from "./set-aside.ts";
import { shown } from "./shown.ts";
import { faultsOf, warningsOf } from "./sound.ts";
import { reckoned, startingValues } from "./starting/marks.ts";
import { complaintAt, isSaid, sourceAt, spotAt, type Tree, wordAt } from "./tree.ts";
import type { LengthUnit, Wheel } from "./words.ts";
import { worth } from "./worth.ts";
import { readYaml } from "./yaml.ts";

/** What keeps a text from being a car. */
export interface Refused {
  readonly complaints: readonly Complaint[];
}

const schemas = new Map<string, z.ZodMiniType>();

/** The schema of one linkage, one mechanism and the sections that a file has, made once. */
function schemaOf(linkage: Linkage, mechanism: Mechanism, sections: readonly SectionName[]): z.ZodMiniType {
  const name = [linkage.name, mechanism.name, ...sections].join(" ");
  const made = schemas.get(name) ?? carSchema([linkage], [mechanism], sections, checking);
  schemas.set(name, made);
  return made;
}

/** The value that a file gives a quantity and where: its own place first, then the one it shares. */
function found(tree: Tree, quantity: Quantity): { path: readonly string[]; source: string } | null {
  for (const path of [quantity.path, quantity.shared]) {
    const source = path === null ? null : sourceAt(tree, path);
    if (path !== null && source !== null) return { path, source };
  }
  return null;
}

/** Where a missing quantity should be written: beside what is there already, both sides at once where nothing is. */
function missingAt(tree: Tree, quantity: Quantity): readonly string[] {
  if (quantity.shared === null || isMap(spotAt(tree, quantity.shared)?.full)) return quantity.path;
  return quantity.shared;
}

interface Numbers {
  readonly numbers: Float64Array;
  readonly complaints: readonly Complaint[];
}

interface Known<T> {
  readonly source: string;
  readonly kind: string;
  readonly value: T;
}

/** What each number's text was worth when last read: an edit changes one of a hundred. */
const knownNumbers = new Map<Quantity, Known<number>>();

function worthOf(quantity: Quantity, source: string, units: LengthUnit): ReturnType<typeof worth> {
  const known = knownNumbers.get(quantity);
  if (known?.source === source && known.kind === units) return known.value;
  const value = worth(source, quantity, units);
  if (typeof value === "number") knownNumbers.set(quantity, { source, kind: units, value });
  return value;
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
    const value = worthOf(quantity, text.source, units);
    if (typeof value === "number") numbers[quantity.index] = value;
    else complain(text.path, value.complaint);
  }
  return { numbers, complaints: [...complaints.values()] };
}

/** What each section's text said when last read without a complaint; not kept of texts whose parts refer to others. */
const knownSections = new Map<SectionName, Known<unknown>>();

/** What the optional sections of a file say, and what is wrong with them. */
function sectionsOf(tree: Tree, names: readonly SectionName[], linkage: Linkage, units: LengthUnit) {
  const complaints = new Map<string, Complaint>();
  const complain = (path: readonly string[], message: string) =>
    complaints.set(path.join("."), complaintAt(tree, path, message));
  const read = sectionNames.map((name) => {
    if (!names.includes(name) || !isSaid(tree, [name])) return [name, null] as const;
    const [from = 0, , to = 0] = spotAt(tree, [name])?.full?.range ?? [];
    const [source, kind] = [tree.text.slice(from, to), `${units} ${linkage.name}`];
    const known = knownSections.get(name);
    if (known?.source === source && known.kind === kind && !tree.hasAnchors) return [name, known.value] as const;
    const before = complaints.size;
    const value = sectionField(name, [linkage]).read({ tree, units, places: [[name]], complain });
    if (complaints.size === before && !tree.hasAnchors) knownSections.set(name, { source, kind, value });
    return [name, value] as const;
  });
  return { sections: Object.fromEntries(read) as Sections, complaints: [...complaints.values()] };
}

const rodLength = { left: indexOf("left.tie-rod.length"), right: indexOf("right.tie-rod.length") } as const;

function rodOf(numbers: Float64Array, wheel: Wheel): "fit" | "cut" {
  return numbers[rodLength[wheel]] === 0 ? "fit" : "cut";
}

/** Those of a list that a key's word names; where it names none of them, the complaint. */
function chosen<T>(
  tree: Tree,
  path: readonly string[],
  all: readonly T[],
  wordOf: (each: T) => string,
): readonly [T, ...T[]] | Complaint {
  const node = spotAt(tree, path)?.full ?? null;
  const word = isScalar(node) ? node.value : node === null ? null : {};
  const [first, ...more] = all.filter((each) => wordOf(each) === word);
  if (first !== undefined) return [first, ...more];
  const words = [...new Set(all.map(wordOf))].join(", ");
  return complaintAt(tree, path, `found ${shown(word)}, expected one of ${words}`);
}

function linkageIn(tree: Tree): (typeof linkages)[number] | Complaint {
  const found = chosen(tree, ["front", "linkage"], linkages, (each) => each.name);
  return "message" in found ? found : found[0];
}

/** The file's mechanism: the racks share a name, and their take-off tells which it is. */
function mechanismIn(tree: Tree): (typeof mechanisms)[number] | Complaint {
  const found = chosen(tree, ["steering", "mechanism"], mechanisms, (each) => each.word);
  if ("message" in found) return found;
  const path = ["steering", found[0].section, "take-off"];
  if (found.length === 1 || (spotAt(tree, path)?.full ?? null) === null) return found[0];
  const which = chosen(tree, path, found, (each) => each.takeOff ?? "");
  return "message" in which ? which : which[0];
}

/** Whether both ways of the wheel's travel are marked as starting values, and not reckoned from what was read. */
function travelIsAssumed(written: Parameters<typeof startingValues>[0]): boolean {
  if (written.text.includes(reckoned)) return false;
  const ids = startingValues(written);
  return ids.has("wheel-travel.bump") && ids.has("wheel-travel.droop");
}

function sorted(complaints: readonly Complaint[]): readonly Complaint[] {
  return [...complaints].sort(
    (a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0) || a.part.localeCompare(b.part),
  );
}

function carOf(tree: Tree): Car | Refused {
  const linkage = linkageIn(tree);
  const mechanism = mechanismIn(tree);
  const names = [linkage, mechanism].filter((each): each is Complaint => "message" in each);
  if ("message" in linkage || "message" in mechanism) return { complaints: sorted(names) };
  const given = tree.root.items.map(({ key }) => String(key)).filter(isSection);
  const grammar = complaintsOf(tree, schemaOf(linkage, mechanism, given), { linkage, mechanism });
  if (grammar.length > 0) return { complaints: sorted(grammar) };
  const units: LengthUnit = wordAt(tree, ["units"]) === "in" ? "in" : "mm";
  const kind = { linkage: linkage.name, mechanism: mechanism.name };
  const { numbers, complaints } = numbersOf(tree, quantitiesOf(kind), units);
  const optional = sectionsOf(tree, given, linkage, units);
  const wrong = [...complaints, ...optional.complaints];
  if (wrong.length > 0) return { complaints: sorted(wrong) };
  const faults = faultsOf(tree, numbers, linkage, mechanism, units);
  if (faults.length > 0) return { complaints: sorted(faults) };
  const moves = wordAt(tree, ["steering", mechanism.section, "wheel-left-moves"]);
  const turns = wordAt(tree, ["steering", mechanism.section, "turns"]);
  return {
    text: tree.text,
    title: wordAt(tree, ["title"]) ?? "Untitled car",
    numbers,
    form: {
      units,
      ...kind,
      rods: { left: rodOf(numbers, "left"), right: rodOf(numbers, "right") },
      wheelLeftMoves: moves === "left" || moves === "right" ? moves : null,
      travelIsAssumed: travelIsAssumed({ text: tree.text, form: kind }),
      pitmanTurns: turns === "with" || turns === "against" ? turns : null,
    },
    sections: optional.sections,
    warnings: sorted([...setAsideWarnings(tree.text), ...warningsOf(tree, numbers, mechanism, units)]),
  };
}

/**
 * The car that a text describes, or all that is wrong with the text, each with line, column, what was found and what was
 * expected. Never throws, whatever the text. Lengths that hold products or brackets need prepareProducts first.
 */
export function readCar(text: string): Car | Refused {
  const tree = readYaml(text);
  if ("complaints" in tree) return tree;
  const other = otherKind(text, "car");
  return other === null ? carOf(tree) : { complaints: [{ line: null, column: null, part: "", message: other }] };
}
