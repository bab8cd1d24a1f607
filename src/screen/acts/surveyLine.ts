import { answered } from "../../vehicle/survey/answer.ts";
import type { SurveyPoint } from "../../vehicle/survey/points.ts";
import type { Focus, Model, SheetOnBench } from "../model.ts";
import { isOld } from "../sheetState.ts";
import { linesOf, type SurveyLine, type SurveyLines, textOn } from "../survey.ts";
import { type Effect, type Turn, turn } from "../turn.ts";
import { typingAt } from "../typing.ts";

/** The form for readings between points has the keyboard. */
export type OnSurvey = Focus & { readonly on: "survey" };

/** The form with its cursor on a line, and what stands there in the field. */
export function at(model: Model, sheet: SheetOnBench, cursor: number, complaint: string | null = null): Turn {
  const { lines = [] } = linesOf(sheet.text) ?? {};
  const here = Math.min(lines.length - 1, Math.max(0, cursor));
  const line = lines[here];
  const text = line === undefined ? "" : (textOn(line, sheet) ?? "");
  return turn({
    ...model,
    sheet,
    focus: { on: "survey", cursor: here, text, typing: typingAt(text, complaint), complaint },
  });
}

/** The same, with whatever is on the sheet kept on disk, and brought together where it is another than before. */
export function kept(model: Model, sheet: SheetOnBench, cursor: number, complaint: string | null = null): Turn {
  const { model: next } = at(model, sheet, cursor, complaint);
  return turn(next, { do: "keepSheet", sheet }, ...settling(sheet));
}

export function settling(sheet: SheetOnBench): readonly Effect[] {
  return sheet.settled === null || isOld(sheet) ? [{ do: "settle", text: sheet.text }] : [];
}

/** What the form holds just now: where its cursor is, and on what. */
export function here({
  focus,
  sheet,
}: Model): { focus: OnSurvey; sheet: SheetOnBench; line: SurveyLine; form: SurveyLines } | null {
  const form = sheet === null ? null : linesOf(sheet.text);
  const line = focus.on === "survey" ? form?.lines[focus.cursor] : undefined;
  return focus.on !== "survey" || sheet === null || form === null || line === undefined
    ? null
    : { focus, sheet, line, form };
}

/** The sheet with what was typed into the field on it, or why it cannot stand there. */
export function taken(model: Model): SheetOnBench | { readonly complaint: string } | null {
  const now = here(model);
  if (now === null) return null;
  const { focus, sheet, line, form } = now;
  if (line.is === "file") return { ...sheet, [line.key]: focus.text.trim() };
  if (line.is === "write" || line.is === "make" || line.is === "another") return sheet;
  const after = answered(form.sheet, line, focus.text);
  if ("complaint" in after) return after;
  const next = { ...sheet, text: after.text };
  // What was known is of the points of another front end.
  const points = linesOf(next.text)?.sheet.survey.points ?? [];
  return areSame(points, form.sheet.survey.points) ? next : { ...next, settled: null };
}

type Named = Pick<SurveyPoint, "name">;

function areSame(points: readonly Named[], others: readonly Named[]): boolean {
  return points.length === others.length && points.every(({ name }, i) => name === others[i]?.name);
}

/**
 * What a sheet came to: of the one that the form holds now, or of one that it held a moment ago while nothing newer is
 * known of it.
 */
export function sheetSettled(model: Model, answer: NonNullable<SheetOnBench["settled"]>): Model {
  const { sheet } = model;
  const form = sheet === null ? null : linesOf(sheet.text);
  if (sheet === null || form === null) return model;
  const { outcome } = answer;
  const fits = "complaint" in outcome || areSame(outcome.surveyed.survey.points, form.sheet.survey.points);
  const isNewer = sheet.settled !== null && isOld(sheet) && fits;
  return answer.text === sheet.text || isNewer ? { ...model, sheet: { ...sheet, settled: answer } } : model;
}

/** From a line to another one: what was typed is on the sheet, and kept; what cannot be stays, with the complaint. */
export function leaveTo(model: Model, cursor: number): Turn {
  const sheet = taken(model);
  if (sheet === null || model.focus.on !== "survey") return turn(model);
  if ("complaint" in sheet) return turn({ ...model, focus: { ...model.focus, complaint: sheet.complaint } });
  return sheet.text === model.sheet?.text && sheet.file === model.sheet.file && sheet.car === model.sheet.car
    ? at(model, sheet, cursor)
    : kept(model, sheet, cursor);
}

export function lineOf(sheet: SheetOnBench, key: "file" | "car"): number {
  return linesOf(sheet.text)?.lines.findIndex((line) => line.key === key) ?? 0;
}
