import type { SettledSheet } from "../solve/survey/settled.ts";
import { understood } from "../vehicle/survey/answer.ts";
import type { SurveyForm } from "../vehicle/survey/points.ts";
import { ways } from "../vehicle/survey/readings.ts";
import { rowsOf, type SheetRow, type SheetRows, sameness } from "../vehicle/survey/rows.ts";
import { ownReadings } from "../vehicle/survey/survey.ts";
import type { SheetOnBench } from "./model.ts";
import { settledOf } from "./sheetState.ts";

/** A line of the form for readings between points. */
export type SurveyLine =
  | SheetRow
  /** One more distance is put on the sheet. */
  | { readonly is: "another"; readonly key: "another"; readonly name: string }
  /** Names of the files that the sheet and its car are written to. */
  | { readonly is: "file"; readonly key: "file" | "car"; readonly name: string }
  /** Not fields: they write the sheet, and make the car. */
  | { readonly is: "write"; readonly key: "write"; readonly name: string }
  | { readonly is: "make"; readonly key: "make"; readonly name: string };

export type ReadingLine = SheetRow & { readonly is: "reading" };

/** The form: what is on the sheet, and all lines of it in working order. */
export interface SurveyLines {
  readonly sheet: SheetRows;
  readonly lines: readonly SurveyLine[];
}

const listed = new WeakMap<SheetRows, SurveyLines>();

/** The lines of a sheet's text; null where it is no sheet, which no text that the form holds ever is. */
export function linesOf(text: string): SurveyLines | null {
  const sheet = rowsOf(text);
  if ("complaints" in sheet) return null;
  const known = listed.get(sheet);
  if (known !== undefined) return known;
  const found = { sheet, lines: allLines(sheet) };
  listed.set(sheet, found);
  return found;
}

function allLines({ rows }: SheetRows): readonly SurveyLine[] {
  return [
    ...rows.filter(({ is }) => is !== "car"),
    { is: "another", key: "another", name: "Another distance: point to point" },
    ...rows.filter(({ is }) => is === "car"),
    { is: "file", key: "file", name: "Name of the sheet's file" },
    { is: "write", key: "write", name: "WRITE THE SHEET" },
    { is: "file", key: "car", name: "Name of the new car's file" },
    { is: "make", key: "make", name: "MAKE THE CAR" },
  ];
}

/** What stands on a line; null on one that does something. */
export function textOn(line: SurveyLine, sheet: SheetOnBench): string | null {
  switch (line.is) {
    case "another":
      return "";
    case "file":
      return sheet[line.key];
    case "write":
    case "make":
      return null;
    default:
      return line.text;
  }
}

const indexes = new WeakMap<SettledSheet, ReadonlyMap<string, readonly number[]>>();

function indexOf(settled: SettledSheet): ReadonlyMap<string, readonly number[]> {
  const known = indexes.get(settled);
  if (known !== undefined) return known;
  const index = new Map<string, number[]>();
  settled.surveyed.readings.forEach(({ reading }, i) => {
    const word = `${reading.kind} ${sameness(reading, reading.points)}`;
    index.set(word, [...(index.get(word) ?? []), i]);
  });
  indexes.set(settled, index);
  return index;
}

/** Which of the readings that were brought together stand on a line. */
export function readingsOn(settled: SettledSheet, { way, sets }: ReadingLine, { bench }: SheetRows): readonly number[] {
  const index = indexOf(settled);
  return sets.flatMap((set) => {
    const { datum } = bench;
    const fromDatum = way.kind === "ahead" && set.length === 1 && datum !== null && datum !== set[0];
    const points = fromDatum ? [...set, datum] : set;
    return index.get(`${way.kind} ${sameness(way, points)}`) ?? [];
  });
}

/** How a line's readings stand to the others: the one that is furthest off, mm or rad. */
export type Residual =
  | { readonly is: "unchecked" }
  | { readonly is: "fitting" | "wrong"; readonly reading: number; readonly off: number };

/** What is told of a line that something stands on; null where nothing is known of it yet. */
export function residualOf(settled: SettledSheet, line: ReadingLine, sheet: SheetRows): Residual | null {
  if (line.text === "") return null;
  const { surveyed, others } = settled;
  const found = readingsOn(settled, line, sheet).flatMap((reading): readonly Residual[] => {
    const by = others[reading];
    const at = surveyed.readings[reading];
    if (at === undefined) return [];
    if (by === null || by === undefined) return [{ is: "unchecked" }];
    return [{ is: at.check === null ? "wrong" : "fitting", reading, off: at.reading.value - by.value }];
  });
  const size = (each: Residual) =>
    each.is === "unchecked" ? -1 : Math.abs(each.off) + (each.is === "wrong" ? 1e9 : 0);
  return found.reduce<Residual | null>((most, each) => (most === null || size(each) > size(most) ? each : most), null);
}

/** How many of a group's lines have a reading, and how many there are. */
export function countOf({ rows }: SheetRows, group: string): { readonly read: number; readonly all: number } {
  const own = rows.filter((row) => row.is === "reading" && row.way.group === group);
  return { read: own.filter(({ text }) => text !== "").length, all: own.length };
}

/** How many readings of its front end's points stand on a sheet's text. */
export function countRead(text: string): number {
  const sheet = rowsOf(text);
  return "complaints" in sheet ? 0 : ownReadings(sheet.survey).length;
}

/** Why a line's text cannot stand there; null where it can, or nothing is typed. For echoes: what it is understood as. */
export function typedOn(
  sheet: SheetRows,
  line: SurveyLine,
  text: string,
): readonly number[] | { readonly complaint: string } | null {
  return line.is !== "reading" || text.trim() === "" ? null : understood(sheet, line, text);
}

/** The line to look at next: of a reading that does not fit, behind `from` and then from the top; -1 where all fit. */
export function wrongLine({ sheet, lines }: SurveyLines, bench: SheetOnBench, from: number): number {
  const settled = settledOf(bench);
  if (settled === null || settled.surveyed.blunders.length === 0) return -1;
  const wrong = lines.flatMap((line, i) =>
    line.is === "reading" && residualOf(settled, line, sheet)?.is === "wrong" ? [i] : [],
  );
  return wrong.find((i) => i > from) ?? wrong[0] ?? -1;
}

/** The first line that is still to be read; that of the title where there is none. */
export function firstBlank(lines: readonly SurveyLine[]): number {
  const at = lines.findIndex((line) => line.is === "reading" && line.text === "");
  return Math.max(0, at);
}

/** The front end that a new sheet begins with. */
export function formOf({ linkage, mechanism }: SurveyForm): SurveyForm {
  return { linkage, mechanism };
}

/** A way to take readings, by its kind. */
export function wayOf(kind: (typeof ways)[number]["kind"]): (typeof ways)[number] {
  const found = ways.find((way) => way.kind === kind);
  if (found === undefined) throw new Error(`no reading is taken as ${kind}`);
  return found;
}
