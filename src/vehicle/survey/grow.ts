import { isSheet } from "../from-tape/is-sheet.ts";
import { readUnit } from "../from-tape/reading.ts";
import { answersOn } from "../from-tape/sheet.ts";
import { blankSurvey } from "./blank.ts";
import { grownFrom } from "./grown.ts";
import type { SurveyForm } from "./points.ts";

/** The front end that the short list of readings is of. */
export const ofShortList: SurveyForm = { linkage: "double-arm", mechanism: "rack" };

/** The list of a survey with what the answers of a short list say of it already. */
export function grownSheet(answers: Readonly<Record<string, string>>, form: SurveyForm): string {
  return blankSurvey(form, readUnit(answers.units ?? "") ?? "in", grownFrom(answers, form));
}

/** The same from the short list's text; null where the text is none. */
export function grownText(text: string, form: SurveyForm): string | null {
  const answers = isSheet(text) ? answersOn(text) : null;
  return answers === null ? null : grownSheet(answers, form);
}
