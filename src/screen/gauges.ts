import type { Study } from "../measures/study.ts";
import { type Prediction, predictionsOf } from "../solve/match/predictions.ts";
import type { Car } from "../vehicle/car.ts";
import { readCarReadings } from "../vehicle/car-readings/read.ts";
import type { CarReadings } from "../vehicle/car-readings/reading.ts";
import type { Gauge } from "../vehicle/car-readings/tolerances.ts";
import { inputOf } from "../vehicle/car-readings/values.ts";
import { formatLength } from "../vehicle/units/format.ts";
import { degree } from "../vehicle/value.ts";
import type { LengthUnit } from "../vehicle/words.ts";
import { type GaugeRow, keysOf, rowOf, usualKeys } from "./gaugeRows.ts";
import type { Answers, Model } from "./model.ts";

/** A line of the form for readings on the built car. */
export type GaugeLine =
  | ({ readonly is: "reading" } & GaugeRow)
  | { readonly is: "file" | "from"; readonly key: "file" | "from" }
  /** Not fields: they start the match, and write the readings. */
  | { readonly is: "match"; readonly key: "match" }
  | { readonly is: "write"; readonly key: "write" };

const last: readonly GaugeLine[] = [
  { is: "match", key: "match" },
  { is: "file", key: "file" },
  { is: "write", key: "write" },
  { is: "from", key: "from" },
];

/** The unit that bare lengths of the form are in. */
export function unitsOf({ units }: Answers): LengthUnit {
  return units === "mm" ? "mm" : "in";
}

const isMeta = (key: string) => ["units", "title", "built-to", "file", "from", "car", "steered"].includes(key);

/** Whether a reading is of, or at, a place of what steers the car. */
const isPlaced = (key: string) => key === "straight-ahead" || /^turn \w+ at /.test(key);

/** Every line: what is usually read of this car, what else was read, and what is done with it. */
export function gaugeLines({ bench: { car, study } }: Pick<Model, "bench">, answers: Answers): readonly GaugeLine[] {
  const units = unitsOf(answers);
  // A rack's places are mm and a column's rad: where either is steered by the other they are no places at all.
  const isForeign = answers.steered !== undefined && answers.steered !== inputOf({ car });
  const usual = "refused" in study ? [] : usualKeys(study, units).filter((key) => !(isForeign && isPlaced(key)));
  const own = Object.keys(answers).filter((key) => !isMeta(key) && !(isForeign && isPlaced(key)));
  // A place that was read goes where its like is asked for, by the word that its key begins with.
  const order = ["turn", "bump", "toe", "camber", "caster", "rods", "straight-ahead", "between"];
  const keys = [...new Set([...usual, ...own])];
  const rows = order.flatMap((word) => keys.filter((key) => key === word || key.startsWith(`${word} `)));
  return [
    ...rows.flatMap((key): readonly GaugeLine[] => {
      const row = rowOf(key, car, units);
      return row === null ? [] : [{ is: "reading", ...row }];
    }),
    ...last,
  ];
}

/** "14 3/8" and what it is good to, from "14 3/8 +- 1/16". */
function halves(text: string): readonly [string, string | null] {
  const [value = "", doubt] = text.trim().split(/\s*(?:\+\/-|\+-|±)\s*/);
  return [value, doubt === undefined || doubt === "" ? null : doubt];
}

const plain = /^-?[\d.][\w ./]*$/;
const quoted = (text: string) => (plain.test(text) ? text : JSON.stringify(text));

const exactly = (mm: number, units: LengthUnit) =>
  formatLength(mm, units === "in" ? { unit: "in", exact: true } : { unit: "mm" });
const degrees = (rad: number) => String(Number((rad / degree).toFixed(4)));
const ways = (text: string, value: number) => (value === 0 ? "0" : `${text} ${value > 0 ? "left" : "right"}`);

/** One row of a list as it stands in a file of readings. */
function listRow({ blank, wheel }: GaugeRow, text: string, units: LengthUnit, isColumn: boolean): string | null {
  const [value, doubt] = halves(text);
  const good = doubt === null ? "" : `, tolerance: ${quoted(doubt)}`;
  if (blank.kind === "bump")
    return `{ wheel: ${blank.wheel}, travel: ${quoted(exactly(blank.travel, units))}, toe: ${quoted(value)}${good} }`;
  if (blank.kind === "between") return `{ from: ${blank.from}, to: ${blank.to}, is: ${quoted(value)}${good} }`;
  if (blank.kind !== "turn") return null;
  const { turn, stood, left } = blank;
  const size = (at: number) => (isColumn ? degrees(Math.abs(at)) : exactly(Math.abs(at), units));
  const at =
    stood === "lock"
      ? "at: lock"
      : stood === null
        ? `left: ${degrees(left ?? 0)}`
        : `${isColumn ? "column" : "rack"}: ${ways(size(stood), stood)}`;
  return `{ turn: ${turn}, ${at}, ${wheel}: ${quoted(value)}${good} }`;
}

const listed: readonly Gauge[] = ["turn-plates", "bump-gauge", "lengths"];
const gaugeOrder: readonly Gauge[] = [
  "turn-plates",
  "bump-gauge",
  "toe",
  "camber",
  "caster",
  "rods",
  "straight-ahead",
  "lengths",
];

/** The readings as a file that the command reads: those of these lines that have an answer. */
export function fileText(
  { form, title: car }: Pick<Car, "form" | "title">,
  answers: Answers,
  lines: readonly GaugeLine[],
): string {
  const units = unitsOf(answers);
  const isColumn = !["rack", "centre-rack"].includes(form.mechanism);
  const filled = lines.flatMap((line) =>
    line.is === "reading" && (answers[line.key] ?? "").trim() !== ""
      ? [{ ...line, text: answers[line.key] ?? "" }]
      : [],
  );
  const sections = gaugeOrder.flatMap((gauge): readonly string[] => {
    const own = filled.filter((each) => each.gauge === gauge);
    if (own.length === 0) return [];
    if (listed.includes(gauge))
      return [`${gauge}:`, "  rows:", ...own.flatMap((each) => `    - ${listRow(each, each.text, units, isColumn)}`)];
    const doubts = own.flatMap(({ text }) => halves(text)[1] ?? []);
    const good = doubts[0] === undefined ? [] : [`  tolerance: ${quoted(doubts[0])}`];
    const name = (row: GaugeRow) => ("wheel" in row.blank ? row.blank.wheel : "reads");
    return [`${gauge}:`, ...own.map((each) => `  ${name(each)}: ${quoted(halves(each.text)[0])}`), ...good];
  });
  const title = (answers.title ?? "") === "" ? `${car}, as read on the car` : answers.title;
  const builtTo = answers["built-to"] ?? "";
  return [
    `title: ${JSON.stringify(title)}`,
    `units: ${units}`,
    ...sections,
    ...(builtTo === "" ? [] : [builtTo]),
    "",
  ].join("\n");
}

/** The answers of a file of readings, or the first that is wrong with it, in a sentence. */
export function answersFrom(text: string, car: Car): Answers | { readonly complaint: string } {
  const read = readCarReadings(text, car);
  if ("complaints" in read) {
    const [first] = read.complaints;
    const place = first?.line === null || first === undefined ? "" : `line ${first.line}: `;
    return { complaint: `${place}${first?.part ? `${first.part}: ` : ""}${first?.message ?? "it cannot be read"}` };
  }
  const units: LengthUnit = /^units: *["']?mm/m.test(text) ? "mm" : "in";
  const [builtTo = ""] = /^built-to:.*(?:\n[ \t].*)*/m.exec(text) ?? [];
  const answers: Record<string, string> = { units, title: read.title ?? "", "built-to": builtTo };
  for (const reading of read.readings)
    for (const [key, value] of keysOf(reading)) {
      const row = rowOf(key, car, units);
      if (row !== null)
        answers[key] = `${shownAs(row, value, units, car)}${doubtOf(row, reading.tolerance, units, car)}`;
    }
  return answers;
}

function isAngle({ blank }: GaugeRow, { form }: Pick<Car, "form">): boolean {
  if (blank.kind === "straight") return !["rack", "centre-rack"].includes(form.mechanism);
  return blank.kind !== "rod" && blank.kind !== "between";
}

function shownAs(row: GaugeRow, value: number, units: LengthUnit, car: Pick<Car, "form">): string {
  const size = row.blank.kind === "straight" ? Math.abs(value) : value;
  const text = isAngle(row, car) ? degrees(size) : exactly(size, units);
  if (row.blank.kind === "straight") return ways(text, value);
  return row.blank.kind === "toe" ? `${text} deg` : text;
}

function doubtOf(row: GaugeRow, tolerance: number, units: LengthUnit, car: Pick<Car, "form">): string {
  if (Math.abs(tolerance - row.blank.tolerance) < 1e-9) return "";
  return ` +- ${isAngle(row, car) ? degrees(tolerance) : exactly(tolerance, units)}`;
}

/** What was typed on a line as the command reads it, or what is wrong with it; null where nothing was. */
type Typed = Prediction | { readonly complaint: string } | null;

const readOf = new WeakMap<Study, Map<string, Typed>>();

/** A line's answer beside what a car gives in its place. */
export function typedOn(study: Study, row: GaugeRow, answers: Answers): Typed {
  const text = (answers[row.key] ?? "").trim();
  if (text === "") return null;
  const known = readOf.get(study) ?? new Map<string, Typed>();
  readOf.set(study, known);
  const word = `${unitsOf(answers)}\n${row.key}\n${text}`;
  const found = known.get(word);
  if (found !== undefined) return found;
  const only: Answers = { units: unitsOf(answers), [row.key]: text };
  const read = readCarReadings(fileText(study.car, only, [{ is: "reading", ...row }]), study.car);
  const made =
    "complaints" in read
      ? { complaint: read.complaints[0]?.message ?? "it cannot be read" }
      : (predictionsOf(read.readings, study)[0] ?? null);
  known.set(word, made);
  return made;
}

const given = new WeakMap<Study, Map<string, { readonly kind: Prediction["kind"]; readonly value: number | null }>>();

/** What a car gives in a row's place, mm or rad; null where it cannot be brought there. */
export function givenBy(
  study: Study,
  row: GaugeRow,
): { readonly kind: Prediction["kind"]; readonly value: number | null } {
  const known = given.get(study) ?? new Map();
  given.set(study, known);
  const found = known.get(row.key);
  if (found !== undefined) return found;
  const [prediction] = predictionsOf([row.blank], study);
  const made = { kind: prediction?.kind ?? "length", value: prediction?.predict(study) ?? null };
  known.set(row.key, made);
  return made;
}

/** All readings for the match; or the first line that is wrong, and why. */
export function readingsToMatch(
  model: Pick<Model, "bench">,
  answers: Answers,
): CarReadings | { readonly cursor: number; readonly complaint: string } {
  const { study, car } = model.bench;
  const lines = gaugeLines(model, answers);
  const at = lines.findIndex(({ is }) => is === "match");
  if ("refused" in study) return { cursor: at, complaint: "The front end does not go together: mend that first." };
  for (const [cursor, line] of lines.entries()) {
    const typed = line.is === "reading" ? typedOn(study, line, answers) : null;
    if (typed !== null && "complaint" in typed) return { cursor, complaint: `${typed.complaint}.` };
  }
  const read = readCarReadings(fileText(car, answers, lines), car);
  return "complaints" in read
    ? { cursor: at, complaint: `${read.complaints[0]?.message ?? "Nothing was read"}.` }
    : read;
}

/** How many readings have an answer. */
export function countRead(lines: readonly GaugeLine[], answers: Answers): number {
  return lines.filter((line) => line.is === "reading" && (answers[line.key] ?? "").trim() !== "").length;
}
