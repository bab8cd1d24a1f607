import { withDistance, withReading } from "../../vehicle/survey/answer.ts";
import type { Focus, Model, SheetOnBench } from "../model.ts";
import { turned } from "../paging.ts";
import { settledOf } from "../sheetState.ts";
import { linesOf, wayOf, wrongLine } from "../survey.ts";
import { type Act, type Turn, turn } from "../turn.ts";
import { pointLines, pointsFrame } from "../view/PointsPage.tsx";
import { make, otherSheet, write } from "./surveyFile.ts";
import { at, here, kept, leaveTo, type OnSurvey, taken } from "./surveyLine.ts";

/** Lines that a page key goes by. */
const page = 10;

/** A line up or down, ten of them, or to either end. */
export function moveInSurvey(model: Model, focus: OnSurvey, ways: number, chord: string): Turn {
  const now = here(model);
  if (chord === "home") return leaveTo(model, 0);
  if (chord === "end") return leaveTo(model, now?.form.lines.findIndex(({ is }) => is === "file") ?? 0);
  return leaveTo(model, focus.cursor + ways * (chord.startsWith("page") ? page : 1));
}

/** What was typed goes into the field. */
export function typeInSurvey(model: Model, focus: OnSurvey, text: string): Model {
  const line = here(model)?.line;
  if (line === undefined || line.is === "write" || line.is === "make") return model;
  return { ...model, focus: { ...focus, text, typing: "typed", complaint: null }, notice: null };
}

/** Takes the line and goes on; on those that do something, does it. */
export function acceptSurvey(model: Model, focus: OnSurvey): Turn {
  const now = here(model);
  if (now === null) return turn(model);
  const { line, sheet, form } = now;
  if (line.is === "write") return write(model, sheet);
  if (line.is === "make") return make(model, sheet);
  if (line.is !== "another" || focus.text.trim() === "") return leaveTo(model, focus.cursor + 1);
  const more = withDistance(form.sheet, focus.text);
  if ("complaint" in more) return turn({ ...model, focus: { ...focus, complaint: more.complaint } });
  return toLine(model, { ...sheet, text: more.text }, more.key);
}

function toLine(model: Model, sheet: SheetOnBench, key: string): Turn {
  return kept(model, sheet, linesOf(sheet.text)?.lines.findIndex((each) => each.key === key) ?? 0);
}

/** To a reading that does not fit; where all fit, to the one that settles most, which is put on the sheet if need be. */
const lookNext: Act = (model) => {
  const left = taken(model);
  if (left !== null && "complaint" in left) return leaveTo(model, 0);
  const now = here(model);
  if (left === null || now === null) return turn(model);
  const form = linesOf(left.text);
  const wrong = form === null ? -1 : wrongLine(form, left, now.focus.cursor);
  if (form === null || wrong >= 0) return leaveTo(model, wrong);
  const next = settledOf(left)?.next[0];
  if (next === undefined) return turn(model);
  const listed = withReading(form.sheet, wayOf(next.kind), next.points);
  return "complaint" in listed ? turn(model) : toLine(model, { ...left, text: listed.text }, listed.key);
};

const showPoints: Act = (model) => {
  const left = leaveTo(model, model.focus.on === "survey" ? model.focus.cursor : 0);
  const { focus } = left.model;
  if (focus.on !== "survey" || focus.complaint !== null) return left;
  return turn({ ...left.model, focus: { on: "points", top: 0, back: focus.cursor } }, ...left.effects);
};

/** Up and down the page of points, by a line or by what is seen. */
export function movePoints(model: Model, focus: Focus & { readonly on: "points" }, ways: number, chord: string): Turn {
  const seen = { room: model.rows - pointsFrame, lines: pointLines(model).length };
  return turn({ ...model, focus: { ...focus, top: turned(focus.top, ways, chord, seen) } });
}

/** From the points back to the form. */
export function leavePoints(model: Model, back: number): Turn {
  return model.sheet === null ? turn({ ...model, focus: { on: "bench" } }) : at(model, model.sheet, back);
}

export const surveyActs = { otherSheet, lookNext, showPoints } satisfies Record<string, Act>;
