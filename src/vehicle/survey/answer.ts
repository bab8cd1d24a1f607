import { changed } from "../edits/change.ts";
import { scalar } from "../edits/written.ts";
import { safe } from "../shown.ts";
import { blankSurvey } from "./blank.ts";
import { readValue } from "./entries.ts";
import { pointsIn } from "./names.ts";
import type { SurveyForm } from "./points.ts";
import { type Way, ways } from "./readings.ts";
import { rowsOf, type SheetRow, type SheetRows, sameness } from "./rows.ts";
import { isBlank } from "./survey.ts";

/** A sheet's text after something was written on it, or why it cannot stand there, in a sentence. */
export type Answered = { readonly text: string } | { readonly complaint: string };

/** Several readings of the same: "14 3/8, 14 7/16", with or without the brackets of a sheet. */
function severalIn(typed: string): readonly string[] {
  return typed
    .replace(/^\[(.*)\]$/, "$1")
    .split(",")
    .map((each) => each.trim())
    .filter((each) => each !== "");
}

/** As a builder writes it on a sheet: without quotes where YAML needs none. */
function written(text: string): string {
  return /^-?[\d.][\d ./+-]*$|^[a-z][a-z-]*$/.test(text) && !/^(true|false|null|no|yes|on|off)$/.test(text)
    ? text
    : scalar(text);
}

function valueFor(row: SheetRow, typed: string): string {
  if (row.is !== "reading") return written(typed);
  const several = severalIn(typed);
  return several.length > 1 ? `[${several.map(written).join(", ")}]` : written(several[0] ?? "");
}

/** The word of a list that begins so, if only one does. */
function wordMeant(typed: string, words: readonly string[]): string {
  const begun = words.filter((word) => word.startsWith(typed.toLowerCase()));
  const whole = words.find((word) => word === typed.toLowerCase());
  return whole ?? (begun.length === 1 ? begun[0] : typed);
}

/** What the list of a survey is made by: it changes only while nothing is on it that would be lost. */
const makes = ["units", "linkage", "mechanism"];

/** The sheet with something else on one of its lines; "" leaves the line blank. All else stays as it stands. */
export function answered(sheet: SheetRows, row: SheetRow, typed: string): Answered {
  const bare = typed.trim().replace(/\s+/g, " ");
  const words = row.is === "reading" ? null : row.words;
  const text = words === null || bare === "" ? bare : wordMeant(bare, words);
  if (text === row.text) return { text: sheet.text };
  const [key = ""] = row.path;
  const isMade = row.is === "head" && makes.includes(key);
  if (words !== null && !words.includes(text) && (isMade || text !== ""))
    return { complaint: `Found "${safe(text)}", expected ${words.join(" or ")}.` };
  if (isMade) return madeAnew(sheet, key, text);
  return put(sheet, row.path, text === "" ? "" : valueFor(row, text));
}

/** The line of a reading on a sheet that has it, if need be put there, still to be read. */
export type Listed = { readonly text: string; readonly key: string } | { readonly complaint: string };

/** One more distance, by the names of its points. */
export function withDistance(sheet: SheetRows, typed: string): Listed {
  const way = ways.find(({ kind }) => kind === "distance") ?? ways[0];
  const named = pointsIn(typed, way.names, sheet.bench.points);
  if ("complaint" in named) return { complaint: `${capital(named.complaint)}.` };
  const [set, other] = named;
  if (set === undefined || other !== undefined) return { complaint: "One side at a time: each has a line of its own." };
  return withReading(sheet, way, set);
}

/** One more reading, of the points at these places of the list. */
export function withReading(sheet: SheetRows, way: Way, set: readonly number[]): Listed {
  const isIt = (row: SheetRow) => row.is === "reading" && row.way.kind === way.kind && row.sets.length === 1;
  const there = sheet.rows.find(
    (row) => isIt(row) && row.is === "reading" && sameness(way, row.sets[0] ?? []) === sameness(way, set),
  );
  if (there !== undefined) return { text: sheet.text, key: there.key };
  const between = { one: " from ", two: " to ", three: " to " }[way.names];
  const path = [way.group, set.map((at) => sheet.bench.points[at]?.name ?? "").join(between)];
  const after = put(sheet, path, "");
  return "complaint" in after ? after : { text: after.text, key: path.join("\0") };
}

/** What was typed for a reading, as it is understood: every value in mm or rad, or why it is none. */
export function understood(
  { bench }: SheetRows,
  row: SheetRow & { readonly is: "reading" },
  typed: string,
): readonly number[] | { readonly complaint: string } {
  const values: number[] = [];
  for (const each of severalIn(typed)) {
    const read = readValue(each, row.way, bench);
    if ("complaint" in read) return read;
    values.push(read.value);
  }
  return values;
}

function put({ text }: SheetRows, path: readonly string[], value: string): Answered {
  const after = changed(text, [{ path, text: value }]);
  const read = rowsOf(value === "" ? withoutTrail(after, path.at(-1) ?? "") : after);
  if (!("complaints" in read)) return { text: read.text };
  return { complaint: `${capital(read.complaints[0]?.message ?? "that cannot stand there")}.` };
}

function capital(words: string): string {
  return `${words[0]?.toUpperCase() ?? ""}${words.slice(1)}`;
}

/** A key that lost its value keeps no blank behind its colon. */
function withoutTrail(text: string, key: string): string {
  const lines = text.split("\n");
  return lines.map((line) => (line.trim() === `${key}:` ? line.trimEnd() : line)).join("\n");
}

function madeAnew({ survey, rows }: SheetRows, key: string, word: string): Answered {
  if (!isBlank(survey))
    return {
      complaint: "There are readings on this sheet, which would not be the same any more: Ctrl-R begins another.",
    };
  const units = key === "units" && (word === "in" || word === "mm") ? word : survey.units;
  const form = key === "units" ? survey.form : ({ ...survey.form, [key]: word } as SurveyForm);
  // Bare numbers in another unit are other lengths.
  const said = rows.flatMap(({ is, path, text }) =>
    is === "car" && text !== "" && key !== "units" ? [[path.slice(1).join("."), text]] : [],
  );
  const title = survey.title === null ? {} : { title: survey.title };
  return { text: blankSurvey(form, units, { readings: {}, car: Object.fromEntries(said), ...title }) };
}
