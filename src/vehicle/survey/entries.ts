import { isMap, isScalar, isSeq, type Node } from "yaml";
import type { Complaint } from "../complaint.ts";
import { runTogether } from "../from-tape/reading.ts";
import { safe, shown } from "../shown.ts";
import { complaintAt, complaintAtKey, type Entry, spotAt, type Tree } from "../tree.ts";
import { readAngle } from "../units/angle.ts";
import { readLength } from "../units/length.ts";
import { degree } from "../value.ts";
import type { LengthUnit } from "../words.ts";
import { pointsIn } from "./names.ts";
import type { SurveyPoint } from "./points.ts";
import { readingName, type SurveyReading, type Way } from "./readings.ts";

/** What a sheet's readings are read by. */
export interface Bench {
  readonly units: LengthUnit;
  readonly points: readonly SurveyPoint[];
  /** How far a reading may be off, mm and rad: 19 of 20 are nearer. */
  readonly tolerance: { readonly length: number; readonly angle: number };
  /** What heights are read from stands so far above the ground, mm. */
  readonly table: number;
  /** The point that a bare `ahead` is read from; null for the front-axle line. */
  readonly datum: number | null;
}

/** No front end is longer or wider, mm; and no tape is read worse than this, mm and rad. */
const longest = 10_000;
const coarsest = { length: 150, angle: 20 * degree } as const;

type Read = { readonly value: number; readonly sigma: number } | { readonly complaint: string };

function worthOf(text: string, of: Way["of"], units: LengthUnit): number | { readonly complaint: string } {
  if (of === "angle") {
    const read = readAngle(text);
    return "rad" in read ? read.rad : read;
  }
  const run = runTogether(text, units);
  if (run !== null) return { complaint: run };
  const read = readLength(text, units);
  return "mm" in read ? read.mm : read;
}

/** A reading as it is written, "14 3/8" or "14 3/8 +- 1/8". */
export function readValue(text: string, way: Way, { units, tolerance }: Bench): Read {
  const [first = "", second, more] = text.trim().split(/\s*(?:\+\/-|\+-|±)\s*/);
  if (more !== undefined) return { complaint: "not clear: how far it may be off stands in it twice" };
  const value = worthOf(first, way.of, units);
  if (typeof value !== "number") return value;
  const doubt = second === undefined ? tolerance[way.of] : worthOf(second, way.of, units);
  if (typeof doubt !== "number") return doubt;
  if (!(doubt > 0) || doubt > coarsest[way.of])
    return { complaint: `off by more or less than a tape can be: "${safe(second ?? "")}"` };
  const beyond = outside(value, way);
  return beyond === null ? { value, sigma: doubt / 2 } : { complaint: beyond };
}

function outside(value: number, { kind, of }: Way): string | null {
  if (of === "angle")
    return Math.abs(value) < 90 * degree ? null : "steeper than upright: expected less than 90 degrees";
  if ((kind === "distance" || kind === "plumb") && !(value > 0)) return "no distance: expected more than 0";
  return Math.abs(value) <= longest ? null : "more than any front end measures: expected at most 10 m (33 ft)";
}

/** One reading's text and where it stands. */
interface Written {
  readonly text: string;
  readonly node: Node;
}

/** The readings of one entry: one, or a list of the same taken again. */
function writtenIn(node: Node | null): readonly Written[] | { readonly complaint: string } {
  const items = isSeq(node) ? (node.items as Node[]) : node === null ? [] : [node];
  const all: Written[] = [];
  for (const item of items) {
    if (!isScalar(item)) return { complaint: "expected a reading such as 14 3/8, or a list of them" };
    if (item.value === null) continue;
    all.push({ text: typeof item.value === "string" ? item.value : (item.source ?? String(item.value)), node: item });
  }
  return all;
}

/** All readings of one group of a sheet, and what is wrong with it. An entry with nothing behind it was not read. */
export function readGroup(
  tree: Tree,
  way: Way,
  bench: Bench,
): { readonly readings: readonly SurveyReading[]; readonly complaints: readonly Complaint[] } {
  const group = spotAt(tree, [way.group])?.full ?? null;
  if (group === null || (isScalar(group) && group.value === null)) return { readings: [], complaints: [] };
  if (!isMap(group)) {
    const message = `found ${shown(isScalar(group) ? group.value : [])}, expected readings, each on a line of its own with its points`;
    return { readings: [], complaints: [complaintAt(tree, [way.group], message)] };
  }
  const readings: SurveyReading[] = [];
  const complaints: Complaint[] = [];
  for (const { key } of group.items as Entry[]) {
    const name = String(isScalar(key) ? key.value : "");
    const path = [way.group, name];
    const named = pointsIn(name, way.names, bench.points);
    if ("complaint" in named) {
      complaints.push(complaintAtKey(tree, path, named.complaint));
      continue;
    }
    const written = writtenIn(spotAt(tree, path)?.full ?? null);
    if ("complaint" in written) {
      complaints.push(complaintAt(tree, path, written.complaint));
      continue;
    }
    for (const { text, node } of written) {
      const { line, column } = tree.place(node.range?.[0] ?? 0);
      const read = readValue(text, way, bench);
      if ("complaint" in read) {
        const message = `found "${safe(text)}", which is ${read.complaint}`;
        complaints.push({ line, column, part: path.map(safe).join("."), message });
        continue;
      }
      for (const set of named) readings.push(readingOf(way, set, read, line, bench));
    }
  }
  return { readings, complaints };
}

function readingOf(
  { kind }: Way,
  named: readonly number[],
  { value, sigma }: { readonly value: number; readonly sigma: number },
  line: number,
  { points, table, datum }: Bench,
): SurveyReading {
  const alone = named.length === 1;
  const from = kind === "ahead" && alone && datum !== null && datum !== named[0] ? [...named, datum] : named;
  return {
    kind,
    points: from,
    value: kind === "height" && alone ? value + table : value,
    sigma,
    name: readingName(
      kind,
      from.map((i) => points[i]?.name ?? ""),
    ),
    line,
  };
}
