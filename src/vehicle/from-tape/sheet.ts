import { isMap } from "yaml";
import type { Complaint } from "../complaint.ts";
import { nearest } from "../nearest.ts";
import { safe } from "../shown.ts";
import { complaintAt, complaintAtKey, sourceAt, spotAt, type Tree } from "../tree.ts";
import { readLength } from "../units/length.ts";
import { readNumber } from "../units/number.ts";
import type { LengthUnit } from "../words.ts";
import { readYaml } from "../yaml.ts";
import { readBenchAngle } from "./angle.ts";
import { type Reading, readings, type Tape } from "./readings.ts";

/** What one reading's text is worth: mm, rad, a bare number, or a way. `hubHeight`, mm, is what toe in inches needs. */
export function readReading(
  { key, kind }: Reading,
  text: string,
  units: LengthUnit,
  hubHeight: number | null,
): number | "left" | "right" | { readonly complaint: string } {
  if (kind === "way") {
    const way = text.trim().toLowerCase();
    return way === "left" || way === "right" ? way : { complaint: "neither left nor right" };
  }
  if (kind === "length") {
    const read = readLength(text, units);
    return "mm" in read ? read.mm : read;
  }
  if (kind === "number") {
    const read = readNumber(text);
    return "number" in read ? read.number : read;
  }
  const toe = key === "toe";
  const read = readBenchAngle(text, units, {
    shared: toe,
    diameter: toe && hubHeight !== null ? 2 * hubHeight : null,
  });
  return "rad" in read ? read.rad : read;
}

const known = new Map(readings.map((each) => [each.key, each]));

function unknownKeys(tree: Tree): readonly Complaint[] {
  const keys = tree.root.items.map(({ key }) => String(key));
  const all = ["title", "units", ...known.keys()];
  return keys
    .filter((key) => !all.includes(key))
    .map((key) => {
      const near = nearest(key, all);
      const advice = near === null ? "leave it out" : `did you mean "${near}"?`;
      return complaintAtKey(tree, [key], `no reading is called "${safe(key)}": ${advice}`);
    });
}

/** What a sheet of readings says, or all that is wrong with it, each with its line. A key with nothing after it was not read. */
export function readSheet(text: string): Tape | { readonly complaints: readonly Complaint[] } {
  const tree = readYaml(text);
  if ("complaints" in tree) return tree;
  const complaints: Complaint[] = [...unknownKeys(tree)];
  const units = sourceAt(tree, ["units"]) ?? "in";
  if (units !== "in" && units !== "mm")
    return { complaints: [complaintAt(tree, ["units"], `found "${safe(units)}", expected in or mm`)] };
  const numbers = new Map<string, number>();
  let rackGoes: "left" | "right" | null = null;
  for (const each of readings) {
    const source = sourceAt(tree, [each.key]);
    if (source === null || source.trim() === "") {
      if (isMap(spotAt(tree, [each.key])?.full ?? null))
        complaints.push(complaintAt(tree, [each.key], "expected one reading, not a group of keys"));
      else if (each.required) complaints.push(complaintAt(tree, [each.key], `missing: ${askOf(each)}`));
      continue;
    }
    const read = readReading(each, source, units, numbers.get("hub-height") ?? null);
    if (typeof read === "number") numbers.set(each.key, read);
    else if (typeof read === "string") rackGoes = read;
    else complaints.push(complaintAt(tree, [each.key], `found "${safe(source)}", which is ${read.complaint}`));
  }
  if (complaints.length > 0 || rackGoes === null) return { complaints };
  return { title: sourceAt(tree, ["title"]), units, numbers, rackGoes };
}

/** A reading's question with what it means. */
export function askOf({ ask, help }: Reading): string {
  return help === "" ? ask : `${ask} (${help})`;
}

/** A comment in lines that a printed page and a terminal hold. */
function comment(words: string): readonly string[] {
  const lines: string[] = [];
  let line = "#";
  for (const word of words.split(" ")) {
    if (line.length + 1 + word.length > 78) {
      lines.push(line);
      line = "#";
    }
    line += ` ${word}`;
  }
  return [...lines, line];
}

/** The blank list, to print and take to the car, or to fill in as a file. */
export function blankSheet(units: LengthUnit): string {
  const item = (each: Reading) => [...comment(`${askOf(each)}${each.required ? "" : " - if you can"}`), `${each.key}:`];
  const page = (number: 1 | 2) => readings.filter((each) => each.page === number).flatMap(item);
  return [
    ...comment(
      "Readings with the car on stands, at ride height, wheels straight ahead. Fractions as the tape shows them: 14 3/8. Then: rackwright new my-car --from-tape THIS-FILE",
    ),
    "title:",
    `units: ${units}`,
    "",
    "# Page 1: enough for locks, Ackermann, rods and dead point.",
    ...page(1),
    "",
    "# Page 2: all of it, and bump steer can be told too.",
    ...page(2),
    "",
  ].join("\n");
}
