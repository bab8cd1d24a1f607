import { isMap, isScalar, isSeq, type Node } from "yaml";
import type { Complaint } from "../complaint.ts";
import { linkages } from "../linkages.ts";
import { mechanisms } from "../mechanisms.ts";
import { type Entry, sourceAt, spotAt, type Tree } from "../tree.ts";
import { askedOfCar } from "./asked.ts";
import type { Bench } from "./entries.ts";
import { type Named, pointsIn } from "./names.ts";
import { planOf } from "./plan.ts";
import { readingName, type Way, ways } from "./readings.ts";
import { readSheet, type Sheet } from "./sheet.ts";
import type { Survey } from "./survey.ts";

/** A line of a sheet that something can be written on. */
export type SheetRow = Told &
  (
    | { readonly is: "reading"; readonly way: Way; readonly sets: Named }
    /** What the sheet is of: its title and unit, the front end, how well the tape is read. */
    | { readonly is: "head"; readonly words: readonly string[] | null }
    /** What the car file needs beside the points. */
    | { readonly is: "car"; readonly words: readonly string[] | null }
  );

interface Told {
  /** Its keys on the sheet, and the same as one word. */
  readonly path: readonly string[];
  readonly key: string;
  readonly name: string;
  /** The same where there is little room. */
  readonly brief: string;
  /** The question in whole. */
  readonly ask: string;
  /** What stands there; "" for nothing. */
  readonly text: string;
}

/** A sheet in lines, those of its list that it has not yet among them. */
export interface SheetRows {
  readonly text: string;
  readonly rows: readonly SheetRow[];
  readonly survey: Survey;
  readonly bench: Bench;
}

interface Head {
  readonly key: string;
  readonly name: string;
  readonly ask: string;
  readonly words: readonly string[] | null;
}

const heads: readonly Head[] = [
  { key: "title", name: "Title", ask: "What the sheet and its car are called.", words: null },
  { key: "units", name: "Inches or mm", ask: "What the tape reads: in or mm.", words: ["in", "mm"] },
  {
    key: "linkage",
    name: "Front end",
    ask: `What holds the wheels, before any reading: ${linkages.map(({ name }) => name).join(", ")}.`,
    words: linkages.map(({ name }) => name),
  },
  {
    key: "mechanism",
    name: "Steering",
    ask: `What steers, before any reading: ${mechanisms.map(({ name }) => name).join(", ")}.`,
    words: mechanisms.map(({ name }) => name),
  },
  {
    key: "tolerance",
    name: "How near the tape is read",
    ask: "How far one reading between centres may be off: 19 of 20 are nearer than this, such as 1/8.",
    words: null,
  },
  {
    key: "table-height",
    name: "Jig table's height",
    ask: "How high the jig table stands above the ground, where heights are read from one.",
    words: null,
  },
];

let last: SheetRows | null = null;

/** A sheet's text in lines, in working order, or all that is wrong with it. */
export function rowsOf(text: string): SheetRows | { readonly complaints: readonly Complaint[] } {
  if (last?.text === text) return last;
  const sheet = readSheet(text);
  if ("complaints" in sheet) return sheet;
  last = {
    text,
    rows: [...headRows(sheet), ...ways.flatMap((way) => readingRows(sheet, way)), ...carRows(sheet)],
    survey: sheet.survey,
    bench: sheet.bench,
  };
  return last;
}

function keyed(path: readonly string[], text: string) {
  return { path, key: path.join("\0"), text };
}

function headRows({ tree }: Sheet): readonly SheetRow[] {
  return heads.map(({ key, name, ask, words }) => ({
    is: "head",
    ...keyed([key], sourceAt(tree, [key])?.trim() ?? ""),
    name,
    brief: name,
    ask,
    words,
  }));
}

function carRows({ tree, survey }: Sheet): readonly SheetRow[] {
  return askedOfCar(survey.form).map(({ path, help, words }) => {
    const name = path.filter((key) => key !== "front" && key !== "steering" && key !== "both").join(" ");
    return {
      is: "car",
      ...keyed(["car", ...path], sourceAt(tree, ["car", ...path])?.trim() ?? ""),
      name,
      brief: name,
      ask: `${help}${words === null ? "" : ` ${words.join(" or ")}.`}`,
      words,
    };
  });
}

/** The readings that the list has, then those that only the sheet has, each as the sheet writes it. */
function readingRows({ tree, survey, bench }: Sheet, way: Way): readonly SheetRow[] {
  const group = spotAt(tree, [way.group])?.full ?? null;
  const entry = (key: string) => {
    const named = pointsIn(key, way.names, bench.points);
    const sets = "complaint" in named ? [] : named;
    return { key, sets, same: sets.map((set) => sameness(way, set)) };
  };
  const keys = isMap(group) ? (group.items as Entry[]).map(({ key }) => String(isScalar(key) ? key.value : "")) : [];
  const written = keys.map(entry);
  const alone = new Map(written.flatMap((each) => (each.same.length === 1 ? [[each.same[0], each] as const] : [])));
  const forBoth = new Set(written.flatMap(({ same }) => (same.length > 1 ? same : [])));
  const listed = planOf(survey.form)
    .filter(({ kind }) => kind === way.kind)
    .map(({ names }) => entry(names.join(" to ")))
    // Not of a mark that the sheet does not have, nor what it has for both sides at once.
    .filter(({ same: [first] }) => first !== undefined && !forBoth.has(first))
    .map((each) => alone.get(each.same[0] ?? "") ?? each);
  const own = new Set(listed);
  return [...listed, ...written.filter((each) => !own.has(each))].map(({ key, sets }) => {
    const path = [way.group, key];
    const name = nameOf(way, sets, bench);
    return {
      is: "reading",
      ...keyed(path, textAt(tree, path)),
      name,
      brief: briefOf(name),
      ask: `${name}: ${way.help}.`,
      way,
      sets,
    };
  });
}

/** The same word for the same reading: of a distance either end may come first. */
export function sameness({ kind }: Pick<Way, "kind">, set: readonly number[]): string {
  return (kind === "distance" || kind === "plumb" ? [...set].sort((a, b) => a - b) : set).join();
}

/** "left lower-arm.joint to rear": what the second point has in common with the first is said once, as a sheet may. */
function nameOf({ kind }: Way, sets: Named, { points }: Bench): string {
  const [first = "", ...others] = (sets[0] ?? []).map((at) => points[at]?.name ?? "");
  const [side = "", part = ""] = /^(left|right) ([^.]*\.)?/.exec(first)?.slice(1) ?? [];
  const short = others.map((name) => {
    const alike = side !== "" && name.startsWith(`${side} `) ? name.slice(side.length + 1) : name;
    return part !== "" && alike.startsWith(part) ? alike.slice(part.length) : alike;
  });
  const name = readingName(kind, [first, ...short]);
  return sets.length > 1 ? name.replace(/\bleft\b/, "both") : name;
}

/** "L lower-arm.joint to rear". */
function briefOf(name: string): string {
  return name
    .replace(/\bheight of\b/, "height")
    .replace(/\bleft\b/g, "L")
    .replace(/\bright\b/g, "R");
}

/** What stands at an entry: one reading, or a list of the same taken again with commas between. */
function textAt(tree: Tree, path: readonly string[]): string {
  const node: Node | null = spotAt(tree, path)?.full ?? null;
  const source = (each: unknown) =>
    !isScalar(each) || each.value === null
      ? ""
      : typeof each.value === "string"
        ? each.value
        : (each.source ?? String(each.value));
  const items = isSeq(node) ? node.items : [node];
  return items
    .map((each) => source(each).trim())
    .filter((each) => each !== "")
    .join(", ");
}
