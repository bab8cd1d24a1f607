import { isMap } from "yaml";
import type { Complaint } from "../complaint.ts";
import { scalar } from "../edits/written.ts";
import { otherKind } from "../file-kind.ts";
import { nearest } from "../nearest.ts";
import { remark } from "../remark.ts";
import { safe } from "../shown.ts";
import { complaintAt, complaintAtKey, sourceAt, spotAt, type Tree } from "../tree.ts";
import type { LengthUnit } from "../words.ts";
import { readYaml } from "../yaml.ts";
import { readReading, readUnit } from "./reading.ts";
import { type Reading, readings, type Tape, tapeOf } from "./readings.ts";
import { kingPinSketch } from "./sketch.ts";
import { impossible } from "./together.ts";

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
  const kind = otherKind(text, "from-tape");
  if (kind !== null) return { complaints: [{ line: null, column: null, part: "", message: kind }] };
  const complaints: Complaint[] = [...unknownKeys(tree)];
  const written = sourceAt(tree, ["units"])?.trim() || "in";
  const units = readUnit(written);
  if (units === null)
    return { complaints: [complaintAt(tree, ["units"], `found "${safe(written)}", expected in or mm`)] };
  const other = otherUnit(tree, units);
  if (other !== null) return { complaints: [complaintAt(tree, ["units"], other)] };
  const worth = new Map<string, number | string>();
  for (const each of readings) {
    const source = sourceAt(tree, [each.key]);
    if (source === null || source.trim() === "") {
      if (isMap(spotAt(tree, [each.key])?.full ?? null))
        complaints.push(complaintAt(tree, [each.key], "expected one reading, not a group of keys"));
      else if (each.required) complaints.push(complaintAt(tree, [each.key], `missing: ${askOf(each)}`));
      continue;
    }
    const hub = worth.get("hub-height");
    const read = readReading(each, source, units, typeof hub === "number" ? hub : null);
    if (typeof read === "object")
      complaints.push(complaintAt(tree, [each.key], `found "${safe(source)}", which is ${read.complaint}`));
    else worth.set(each.key, read);
  }
  const tape = tapeOf(worth, { title: sourceAt(tree, ["title"]), units });
  for (const { at, words } of impossible(tape)) complaints.push(complaintAt(tree, [at], words));
  return complaints.length > 0 ? { complaints } : tape;
}

const unitWords = { in: "inches", mm: "millimetres" } as const;

/** "found mm, but these look like inches": said in the place of a complaint of every line. Null where the unit can be right. */
function otherUnit(tree: Tree, units: LengthUnit): string | null {
  const other = units === "in" ? "mm" : "in";
  const bare = readings.flatMap((each) => {
    const source = sourceAt(tree, [each.key])?.trim() ?? "";
    return each.kind === "length" && /^[\d ./⁄-]+$/.test(source) ? [{ each, source }] : [];
  });
  const outOf = (unit: LengthUnit) =>
    bare.filter(({ each, source }) => typeof readReading(each, source, unit, null) === "object");
  const [wrong] = outOf(units);
  if (wrong === undefined || outOf(units).length < 3 || outOf(other).length > 0) return null;
  return `found ${units}, but these look like ${unitWords[other]}, such as ${wrong.each.key}: ${wrong.source}. Write units: ${other}`;
}

/** The answers that stand on a sheet, as they are written, whatever they are worth; null where the text is no sheet. */
export function answersOn(text: string): Readonly<Record<string, string>> | null {
  const tree = readYaml(text);
  if ("complaints" in tree || unknownKeys(tree).length > 0) return null;
  const keys = ["title", "units", ...known.keys()];
  return Object.fromEntries(
    keys.flatMap((key) => {
      const source = sourceAt(tree, [key])?.trim() ?? "";
      return source === "" ? [] : [[key, source]];
    }),
  );
}

/** A reading's question with what it means. */
export function askOf({ ask, help }: Reading): string {
  return help === "" ? ask : `${ask} (${help})`;
}

/** The blank list, to print and take to the car, or to fill in as a file. */
export function blankSheet(units: LengthUnit): string {
  return sheetWith({ units });
}

/** The list with the answers that there are, by their keys. */
export function sheetWith(answers: Readonly<Record<string, string>>): string {
  const filled = (key: string) => {
    const answer = answers[key]?.trim() ?? "";
    return answer === ""
      ? `${key}:`
      : `${key}: ${/^[\w.][\w ./,-]*$|^-?[\d.]+$/.test(answer) ? answer : scalar(answer)}`;
  };
  const item = (each: Reading) => [
    ...remark(`${askOf(each)}${each.required ? "" : " - if you can"}`),
    filled(each.key),
  ];
  const page = (number: 1 | 2) => readings.filter((each) => each.page === number).flatMap(item);
  return [
    ...remark(
      "Readings with the car on stands, at ride height, wheels straight ahead. Fractions as the tape shows them: 14 3/8. Then: rackwright new my-car --from-tape THIS-FILE",
    ),
    filled("title"),
    filled("units"),
    "#",
    ...kingPinSketch.map((line) => `# ${line}`.trimEnd()),
    "",
    "# Page 1: enough for locks, Ackermann, rods and dead point.",
    ...page(1),
    "",
    ...remark(
      "Page 2: pivots, joints and wheel travel, and bump steer can be told too. Wheel travel is bump and droop, or the shock's lengths with its ratio or with where it stands.",
    ),
    ...page(2),
    "",
  ].join("\n");
}
