import { readSurvey } from "../../vehicle/survey/sheet.ts";
import { isBlank } from "../../vehicle/survey/survey.ts";
import { type NextReading, nextReadings } from "./next.ts";
import { type ByOthers, byOthers } from "./others.ts";
import { type Surveyed, settleSurvey } from "./survey.ts";

/** What a sheet comes to, what to read next, and each reading as the others have it, in the sheet's order. */
export interface SettledSheet {
  readonly surveyed: Surveyed;
  readonly next: readonly NextReading[];
  readonly others: readonly (ByOthers | null)[];
}

/** Why a sheet comes to nothing, in a sentence; null where nothing is read yet. */
export interface UnsettledSheet {
  readonly complaint: string | null;
}

/** A sheet's text brought together. */
export function settleSheet(text: string): SettledSheet | UnsettledSheet {
  const survey = readSurvey(text);
  if ("complaints" in survey || isBlank(survey)) return { complaint: null };
  const surveyed = settleSurvey(survey);
  if ("complaint" in surveyed) return surveyed;
  return { surveyed, next: nextReadings(surveyed), others: byOthers(surveyed) };
}
