import { type Surveyed, settleSurvey } from "../solve/survey/survey.ts";
import type { Complaint } from "../vehicle/complaint.ts";
import { grownText, ofShortList } from "../vehicle/survey/grow.ts";
import type { SurveyForm } from "../vehicle/survey/points.ts";
import { readSurvey } from "../vehicle/survey/sheet.ts";
import { isBlank, type Survey } from "../vehicle/survey/survey.ts";
import { refusal } from "./car.ts";
import type { Desk } from "./desk.ts";
import { Ended, Exit } from "./exit.ts";
import { sheetText } from "./sheetText.ts";

/** A sheet of readings settled, and what the sheet is called. */
export interface Sheet {
  readonly surveyed: Surveyed;
  readonly source: string;
}

const notFilledIn =
  "this sheet has not been filled in: only what was written beforehand is there, and no point of the front end is read; fill in heights:, out:, ahead:, distances: as far as you can reach";

const whole = (message: string): Complaint => ({ line: null, column: null, part: "", message });

/**
 * What the sheet that a name stands for says; a short list of readings counts for what it says of a survey's points. Ends
 * the command where it is none.
 */
export async function readSheetOf(
  desk: Desk,
  name: string,
): Promise<{ readonly survey: Survey; readonly source: string }> {
  const { text, source } = await sheetText(desk, "sheets", name);
  const grown = grownText(text, ofShortList);
  const survey = grown === null ? readSurvey(text) : withoutLines(readSurvey(grown));
  if ("complaints" in survey) throw refusal(source, survey.complaints);
  if (isBlank(survey)) throw refusal(source, [whole(notFilledIn)]);
  if (grown !== null)
    desk.note(
      `note: "${source}" is the short list of readings: taken for what it says of single points of a double-arm front end with a rack. What it reads from king-pin lines is not in it. To go on with it: rackwright tape ${source} --blank double-arm > survey.yaml`,
    );
  return { survey, source };
}

/** Lines of a list that was made from another one lead nowhere. */
function withoutLines(read: ReturnType<typeof readSurvey>): ReturnType<typeof readSurvey> {
  const off = <T extends object>(each: T) => ({ ...each, line: null });
  if ("complaints" in read) return { complaints: read.complaints.map((each) => ({ ...off(each), column: null })) };
  return { ...read, readings: read.readings.map(off) };
}

/** The list of a survey with what a short list of readings says of it already. Ends the command where it is none. */
export async function grownSheet(desk: Desk, name: string, form: SurveyForm): Promise<string> {
  const { text, source } = await sheetText(desk, "sheets", name);
  const grown = grownText(text, form);
  if (grown === null)
    throw new Ended(
      Exit.badInput,
      `${source} is no short list of readings, as "rackwright new --tape-sheet" prints one: nothing of it can be filled in.`,
    );
  return grown;
}

/** The sheet that a name stands for, settled. Ends the command where it comes to nothing. */
export async function openSheet(desk: Desk, name: string): Promise<Sheet> {
  const { survey, source } = await readSheetOf(desk, name);
  const surveyed = settleSurvey(survey);
  if ("complaint" in surveyed) throw refusal(source, [whole(surveyed.complaint)]);
  return { surveyed, source };
}
