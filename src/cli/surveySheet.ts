import { blunderWords, facingWords, unreadPoints, unsettledWords } from "../output/survey.ts";
import { type Surveyed, settleSurvey } from "../solve/survey/survey.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { isSheet } from "../vehicle/from-tape/is-sheet.ts";
import { readUnit } from "../vehicle/from-tape/reading.ts";
import { answersOn } from "../vehicle/from-tape/sheet.ts";
import { blankSurvey } from "../vehicle/survey/blank.ts";
import { grownFrom } from "../vehicle/survey/grown.ts";
import type { SurveyForm } from "../vehicle/survey/points.ts";
import { readSurvey } from "../vehicle/survey/sheet.ts";
import { isBlank, type Survey } from "../vehicle/survey/survey.ts";
import { refusal } from "./car.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";
import { lengthsIn } from "./report.ts";
import { sheetText } from "./sheetText.ts";

/** A sheet of readings settled, and what the sheet is called. */
export interface Sheet {
  readonly surveyed: Surveyed;
  readonly source: string;
}

const notFilledIn =
  "this sheet has not been filled in: only what was written beforehand is there, and no point of the front end is read; fill in heights:, out:, ahead:, distances: as far as you can reach";

const whole = (message: string): Complaint => ({ line: null, column: null, part: "", message });

/** What the sheet that a name stands for says. Ends the command where it is none. */
export async function readSheetOf(
  desk: Desk,
  name: string,
): Promise<{ readonly survey: Survey; readonly source: string }> {
  const { text, source } = await sheetText(desk, "sheets", name);
  if (isSheet(text))
    throw new Ended(
      Exit.badInput,
      `${source} is the short list of readings, of which "rackwright new my-car --from-tape ${source}" makes a car. To go on with it as a survey of every point: rackwright tape ${source} --blank double-arm > survey.yaml.`,
    );
  const survey = readSurvey(text);
  if ("complaints" in survey) throw refusal(source, survey.complaints);
  if (isBlank(survey)) throw refusal(source, [whole(notFilledIn)]);
  return { survey, source };
}

/** The list of a survey with what a short list of readings says of it already. Ends the command where it is none. */
export async function grownSheet(desk: Desk, name: string, form: SurveyForm): Promise<string> {
  const { text, source } = await sheetText(desk, "sheets", name);
  const answers = answersOn(text);
  if (!isSheet(text) || answers === null)
    throw new Ended(
      Exit.badInput,
      `${source} is no short list of readings, as "rackwright new --tape-sheet" prints one: nothing of it can be filled in.`,
    );
  return blankSurvey(form, readUnit(answers.units ?? "in") ?? "in", grownFrom(answers, form));
}

/** The sheet that a name stands for, settled. Ends the command where it comes to nothing. */
export async function openSheet(desk: Desk, name: string): Promise<Sheet> {
  const { survey, source } = await readSheetOf(desk, name);
  const surveyed = settleSurvey(survey);
  if ("complaint" in surveyed) throw refusal(source, [whole(surveyed.complaint)]);
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
    ...facingWords(surveyed),
    ...(unsettled.length === 0 ? [] : [`Not settled: ${unsettled.join("; ")}.`]),
    ...(unread.length === 0 ? [] : [`Not read: ${unread.join(", ")}.`]),
  ];
}
