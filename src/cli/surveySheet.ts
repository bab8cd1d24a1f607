import { loadText } from "../files/load.ts";
import { loadSheet, sheetNames } from "../files/sheets.ts";
import { printable } from "../output/printable.ts";
import { blunderWords, unreadPoints, unsettledWords } from "../output/survey.ts";
import { type Surveyed, settleSurvey } from "../solve/survey/survey.ts";
import { readSurvey } from "../vehicle/survey/sheet.ts";
import type { Survey } from "../vehicle/survey/survey.ts";
import { mayHoldProducts, prepareProducts } from "../vehicle/units/products.ts";
import { refusal } from "./car.ts";
import type { Desk } from "./desk.ts";
import { lengthsIn } from "./report.ts";

/** A sheet of readings settled, and what the sheet is called. */
export interface Sheet {
  readonly surveyed: Surveyed;
  readonly source: string;
}

/** What the sheet that a name stands for says. A file of that name wins over an example. Ends the command where it is none. */
export async function readSheetOf(
  desk: Desk,
  name: string,
): Promise<{ readonly survey: Survey; readonly source: string }> {
  const file = loadText(name);
  const isExample = "complaints" in file && sheetNames("sheets").includes(name);
  const loaded = isExample ? loadSheet("sheets", name) : file;
  const source = printable(name);
  if ("complaints" in loaded) throw refusal(source, loaded.complaints);
  if (isExample) desk.note(`note: the example sheet "${source}"; there is no file of that name here.`);
  if (mayHoldProducts(loaded.text)) await prepareProducts();
  const survey = readSurvey(loaded.text);
  if ("complaints" in survey) throw refusal(source, survey.complaints);
  return { survey, source };
}

/** The sheet that a name stands for, settled. Ends the command where it comes to nothing. */
export async function openSheet(desk: Desk, name: string): Promise<Sheet> {
  const { survey, source } = await readSheetOf(desk, name);
  const surveyed = settleSurvey(survey);
  if ("complaint" in surveyed)
    throw refusal(source, [{ line: null, column: null, part: "", message: surveyed.complaint }]);
  return { surveyed, source };
}

/** Comments for the top of a car file: where it is from, and what must not be overlooked. */
export function headsOf({ surveyed, source }: Sheet): readonly string[] {
  const length = lengthsIn(surveyed.survey.units);
  const unsettled = unsettledWords(surveyed);
  const unread = unreadPoints(surveyed);
  return [
    `Points from the tape, by the sheet ${source}. What was not measured is assumed, and its line says so until you change it.`,
    ...blunderWords(surveyed, length).map((words) => `Set aside: ${words}`),
    ...(surveyed.free.length === 0 ? [] : [`Where the whole stands ${surveyed.free.join(", ")} was not read.`]),
    ...(unsettled.length === 0 ? [] : [`Not settled: ${unsettled.join("; ")}.`]),
    ...(unread.length === 0 ? [] : [`Not read: ${unread.join(", ")}.`]),
  ];
}
