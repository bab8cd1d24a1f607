import { isMap, isScalar, isSeq, type Node } from "yaml";
import type { Complaint } from "../complaint.ts";
import { otherKind } from "../file-kind.ts";
import { readUnit } from "../from-tape/reading.ts";
import { linkages } from "../linkages.ts";
import { mechanisms } from "../mechanisms.ts";
import { nearest } from "../nearest.ts";
import { safe, shown } from "../shown.ts";
import { complaintAt, complaintAtKey, type Entry, sourceAt, spotAt, type Tree } from "../tree.ts";
import { readAngle } from "../units/angle.ts";
import { inch, readLength } from "../units/length.ts";
import { degree } from "../value.ts";
import type { LengthUnit, Wheel } from "../words.ts";
import { readYaml } from "../yaml.ts";
import { type Bench, readGroup } from "./entries.ts";
import { givenIn } from "./given.ts";
import { pointsIn } from "./names.ts";
import { acrossFrom, plainName, pointsOf, type SurveyForm, type SurveyPoint } from "./points.ts";
import { ways } from "./readings.ts";
import type { Survey, VehiclePlace } from "./survey.ts";

/** What a sheet may hold beside its groups of readings. */
const keys = [
  "title",
  "units",
  "linkage",
  "mechanism",
  "tolerance",
  "angle-tolerance",
  "table-height",
  "datum",
  "marks",
  "alike",
  "rough",
  "car",
];

/** What a tape is read to, mm, and an angle finder, rad between centres (common practice, no source): 19 of 20 are nearer. */
const usual = { in: inch / 8, mm: 3, angle: 0.5 * degree } as const;

/** Gathers complaints, so that one look finds all that is wrong. */
type Complain = (path: readonly string[], message: string, at?: "key") => void;

/** A sheet as it stands, with what it says; it need not have a reading yet. */
export interface Sheet {
  readonly tree: Tree;
  readonly survey: Survey;
  /** What its readings are read by. */
  readonly bench: Bench;
}

interface Wrong {
  readonly complaints: readonly Complaint[];
}

/** What a sheet of readings between a front end's points says, or all that is wrong with it, each with its line. */
export function readSurvey(text: string): Survey | Wrong {
  const sheet = readSheet(text);
  if ("complaints" in sheet) return sheet;
  if (sheet.survey.readings.length > 0) return sheet.survey;
  const groups = ways.slice(0, 4).map(({ group }) => `${group}:`);
  const message = `there is no reading on this sheet yet: fill in ${groups.join(", ")} and so on`;
  return { complaints: [{ line: null, column: null, part: "", message }] };
}

/** The same of a sheet that may still be blank. */
export function readSheet(text: string): Sheet | Wrong {
  const tree = readYaml(text);
  if ("complaints" in tree) return tree;
  const other = otherKind(text, "survey");
  if (other !== null) return { complaints: [{ line: null, column: null, part: "", message: other }] };
  const complaints: Complaint[] = [];
  const complain: Complain = (path, message, at) =>
    complaints.push(at === "key" ? complaintAtKey(tree, path, message) : complaintAt(tree, path, message));
  unknownKeys(tree, complain);
  const units = unitsIn(tree, complain);
  const form = formIn(tree, complain);
  if (form === null || units === null) return { complaints };
  const own = pointsOf(form);
  const points = [...own, ...marksIn(tree, own, complain)];
  const bench: Bench = {
    units,
    points,
    tolerance: {
      length: sizeIn(tree, "tolerance", units, usual[units], complain),
      angle: angleIn(tree, complain),
    },
    table: lengthIn(tree, ["table-height"], units, 0, complain),
    datum: datumIn(tree, points, complain),
  };
  const groups = ways.map((way) => readGroup(tree, way, bench));
  complaints.push(...groups.flatMap((group) => group.complaints));
  const readings = groups.flatMap((group) => group.readings);
  const mirrors = mirrorsIn(tree, points, complain);
  const rough = roughIn(tree, points, units, complain);
  const car = givenIn(tree, form, units);
  complaints.push(...car.complaints);
  if (complaints.length > 0) return { complaints: sorted(complaints) };
  const survey: Survey = {
    title: sourceAt(tree, ["title"]),
    units,
    form,
    tolerance: bench.tolerance.length,
    points,
    readings,
    mirrors,
    rough,
    given: car.given,
    words: car.words,
  };
  return { tree, survey, bench };
}

function sorted(complaints: readonly Complaint[]): readonly Complaint[] {
  return [...complaints].sort((a, b) => (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0));
}

function unknownKeys(tree: Tree, complain: Complain): void {
  const all = [...keys, ...ways.map(({ group }) => group)];
  for (const { key } of tree.root.items) {
    const name = String(key);
    if (all.includes(name)) continue;
    const near = nearest(name, all);
    const advice = near === null ? `a sheet holds ${all.join(", ")}` : `did you mean "${near}"?`;
    complain([name], `"${safe(name)}" is no part of a sheet of readings: ${advice}`, "key");
  }
}

function unitsIn(tree: Tree, complain: Complain): LengthUnit | null {
  const written = sourceAt(tree, ["units"])?.trim() || "in";
  const units = readUnit(written);
  if (units === null) complain(["units"], `found "${safe(written)}", expected in or mm`);
  return units;
}

function formIn(tree: Tree, complain: Complain): SurveyForm | null {
  const named = <T extends { readonly name: string }>(key: string, all: readonly T[]): T["name"] | null => {
    const word = sourceAt(tree, [key])?.trim() ?? "";
    const found = all.find(({ name }) => name === word);
    const names = all.map(({ name }) => name).join(", ");
    if (found === undefined)
      complain([key], word === "" ? `missing: one of ${names}` : `found "${safe(word)}", expected one of ${names}`);
    return found?.name ?? null;
  };
  const [linkage, mechanism] = [named("linkage", linkages), named("mechanism", mechanisms)];
  return linkage === null || mechanism === null ? null : { linkage, mechanism };
}

function lengthIn(tree: Tree, path: readonly string[], units: LengthUnit, absent: number, complain: Complain): number {
  const source = sourceAt(tree, path)?.trim() ?? "";
  if (source === "") return absent;
  const read = readLength(source, units);
  if ("mm" in read) return read.mm;
  complain(path, `found "${safe(source)}", which is ${read.complaint}`);
  return absent;
}

function sizeIn(tree: Tree, key: string, units: LengthUnit, absent: number, complain: Complain): number {
  const size = lengthIn(tree, [key], units, absent, complain);
  if (size > 0 && size <= 2 * inch) return size;
  complain([key], "expected how far one reading may be off: more than 0, at most 2 in (50.8 mm), such as 1/8");
  return absent;
}

function angleIn(tree: Tree, complain: Complain): number {
  const key = "angle-tolerance";
  const source = sourceAt(tree, [key])?.trim() ?? "";
  if (source === "") return usual.angle;
  const read = readAngle(source);
  if ("rad" in read && read.rad > 0 && read.rad <= 10 * degree) return read.rad;
  complain([key], `found "${safe(source)}", expected degrees, more than 0 and at most 10, such as 1/2`);
  return usual.angle;
}

/** What a sheet says under marks where each one is. */
const places: Readonly<Record<string, Wheel | null>> = { left: "left", right: "right", middle: null };

/** A point of the builder's own, such as a bolt on the frame. */
function marksIn(tree: Tree, own: readonly SurveyPoint[], complain: Complain): readonly SurveyPoint[] {
  const group = spotAt(tree, ["marks"])?.full ?? null;
  if (!isMap(group)) {
    if (group !== null && !(isScalar(group) && group.value === null))
      complain(["marks"], 'expected your own points, each with its side, such as "bolt A: left"');
    return [];
  }
  return (group.items as Entry[]).flatMap(({ key }): readonly SurveyPoint[] => {
    const name = String(isScalar(key) ? key.value : "").trim();
    const word = sourceAt(tree, ["marks", name])?.trim() ?? "";
    const wheel = places[word];
    if (wheel === undefined) complain(["marks", name], `found ${shown(word)}, expected left, right or middle`);
    if (/\s(to|from|above|ahead of)\s/i.test(` ${name} `) || /^(both|left|right)$/i.test(name))
      complain(["marks", name], "a name that readings are written with: call it otherwise, such as bolt A", "key");
    if (own.some((each) => plainName(each.name) === plainName(name)))
      complain(["marks", name], "the front end has a point of this name already", "key");
    return [{ name, wheel: wheel ?? null, id: null, sideways: "offset", help: "A mark of your own" }];
  });
}

function datumIn(tree: Tree, points: readonly SurveyPoint[], complain: Complain): number | null {
  const source = sourceAt(tree, ["datum"])?.trim() ?? "";
  if (source === "") return null;
  const named = pointsIn(source, "one", points);
  if (!("complaint" in named) && named.length === 1 && named[0]?.length === 1) return named[0][0] ?? null;
  complain(["datum"], "complaint" in named ? named.complaint : "expected one point");
  return null;
}

/** Which points of the right side are taken as the mirror image of the left side's: `all`, or parts by their names. */
function mirrorsIn(tree: Tree, points: readonly SurveyPoint[], complain: Complain): ReadonlyMap<number, number> {
  const node = spotAt(tree, ["alike"])?.full ?? null;
  const items: readonly Node[] = isSeq(node) ? (node.items as Node[]) : node === null ? [] : [node];
  const mirrors = new Map<number, number>();
  for (const item of items) {
    const word = isScalar(item) && item.value !== null ? String(item.value).trim() : "";
    if (word === "" || word === "none") continue;
    const part = plainName(word);
    const pairs = points.flatMap((point, right): readonly (readonly [number, number])[] => {
      const other = acrossFrom(point, points);
      if (point.wheel !== "right" || other === null) return [];
      const name = plainName(point.name).replace(/^right /, "");
      if (part !== "all" && name !== part && !name.startsWith(`${part} `)) return [];
      return [[right, points.indexOf(other)]];
    });
    for (const [right, left] of pairs) mirrors.set(right, left);
    if (pairs.length === 0)
      complain(["alike"], `found ${shown(word)}, expected all, or parts such as [lower-arm, wheel]`);
  }
  return mirrors;
}

/** Rough places, for marks that nothing else would lead to: where to begin, never a reading. */
function roughIn(
  tree: Tree,
  points: readonly SurveyPoint[],
  units: LengthUnit,
  complain: Complain,
): ReadonlyMap<number, VehiclePlace> {
  const group = spotAt(tree, ["rough"])?.full ?? null;
  const rough = new Map<number, VehiclePlace>();
  for (const { key } of isMap(group) ? (group.items as Entry[]) : []) {
    const name = String(isScalar(key) ? key.value : "");
    const named = pointsIn(name, "one", points);
    const [at] = "complaint" in named ? [] : (named[0] ?? []);
    const point = at === undefined ? undefined : points[at];
    if (at === undefined || point === undefined) {
      complain(["rough", name], "complaint" in named ? named.complaint : "expected one point", "key");
      continue;
    }
    const of = (part: string) => lengthIn(tree, ["rough", name, part], units, 0, complain);
    rough.set(at, [of("ahead"), (point.wheel === "right" ? -1 : 1) * of("out"), of("up")]);
  }
  return rough;
}
