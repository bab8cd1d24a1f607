import { pathOf } from "../../files/save.ts";
import { surveyHeads } from "../../output/surveyWords.ts";
import { carOfSurvey } from "../../solve/survey/car.ts";
import { blankSurvey } from "../../vehicle/survey/blank.ts";
import { grownSheet, ofShortList } from "../../vehicle/survey/grow.ts";
import { isBlank } from "../../vehicle/survey/survey.ts";
import { sheetLength } from "../lengths.ts";
import type { Model, SheetOnBench } from "../model.ts";
import { isOld, settledOf } from "../sheetState.ts";
import { firstBlank, formOf, linesOf } from "../survey.ts";
import { readAnswers } from "../tape.ts";
import { type Act, type Effect, type KeptSheet, type Turn, turn } from "../turn.ts";
import { at, here, kept, lineOf, settling, taken } from "./surveyLine.ts";

const keptWords = "These readings were kept from last time; Ctrl-R throws them away, for another car.";

function begun(text: string, file = "", car = ""): SheetOnBench {
  return { text, file, car, known: null, settled: null, before: null };
}

/** A sheet to begin with: what the short form has of points, else the list of the front end that is on the bench. */
function newSheet(model: Model): SheetOnBench {
  return grownFromShort(model) ?? begun(blankFor(model));
}

function blankFor({ bench, display }: Model): string {
  return blankSurvey(formOf(bench.car.form), display.unit);
}

function grownFromShort({ tape }: Model): SheetOnBench | null {
  const answers = readAnswers(tape ?? {});
  const file = tape?.file?.trim() ?? "";
  const grown = grownSheet({ ...answers, ...(file === "" ? {} : { title: file }) }, ofShortList);
  return Object.keys(answers).length < 2 || linesOf(grown) === null ? null : begun(grown, "", file);
}

/** The form as it is first seen, with the sheet that was kept of an earlier time, if any. */
export function openSurvey(model: Model, from: KeptSheet | null): Turn {
  const form = from === null ? null : linesOf(from.text);
  if (from === null || form === null || isBlank(form.sheet.survey)) {
    const sheet = form === null || from === null ? newSheet(model) : (grownFromShort(model) ?? begun(from.text));
    return turn(at({ ...model, notice: null }, sheet, 0).model, ...settling(sheet));
  }
  const sheet = { ...begun(from.text, from.file, from.car), known: from.known };
  const notice = { text: keptWords, tone: "done" } as const;
  return turn(at({ ...model, notice }, sheet, firstBlank(form.lines)).model, ...settling(sheet));
}

/** A sheet that was read: the form takes it, unless it holds another one that stands in no file. */
export function sheetOpened(model: Model, opened: KeptSheet, before: KeptSheet | null): Turn {
  if (before !== null && !before.isSafe && before.text !== opened.text) {
    const { model: open, effects } = openSurvey(model, before);
    return turn({ ...open, notice: backInstead(opened, before) }, ...effects);
  }
  const { model: open, effects } = openSurvey(model, opened);
  return turn({ ...open, notice: null }, ...(open.sheet === null ? [] : [keeping(open.sheet)]), ...effects);
}

/** Why readings of last time stand in the form, and not the sheet that was asked for. */
function backInstead(opened: KeptSheet, before: KeptSheet): Model["notice"] {
  const name = opened.known?.path.split(/[\\/]/).at(-1) ?? titleOf(opened) ?? "that sheet";
  const isSame = opened.known === null ? titleOf(opened) === titleOf(before) : opened.known.path === before.known?.path;
  return isSame
    ? {
        text: `Your readings of last time are back: ${name}, with what was typed since. They stand in no file yet: write them (End), or Ctrl-R throws them away.`,
        tone: "done",
      }
    : {
        text: `Not opened: the readings of last time are back, and stand in no file yet. Write them (End), or Ctrl-R throws them away; then open ${name}.`,
        tone: "wrong",
      };
}

function titleOf({ text }: KeptSheet): string | null {
  return linesOf(text)?.sheet.survey.title ?? null;
}

export function keeping(sheet: SheetOnBench): Effect {
  return { do: "keepSheet", sheet };
}

export function write(model: Model, sheet: SheetOnBench): Turn {
  if (sheet.file === "")
    return at(model, sheet, lineOf(sheet, "file"), "Type a name for the file, such as front-sheet.");
  const path = pathOf(sheet.file);
  const known = sheet.known?.path === path ? sheet.known.hash : null;
  return turn(model, { do: "writeSheet", path, text: sheet.text, known });
}

/** The sheet is in its file. */
export function sheetWritten(model: Model, path: string, text: string, hash: string): Turn {
  const { sheet } = model;
  if (sheet === null || sheet.text !== text) return turn(model);
  const notice = { text: `Written to ${path}. rackwright tape reads it too.`, tone: "done" } as const;
  const now = { ...sheet, known: { path, hash } };
  return turn({ ...model, sheet: now, notice }, keeping(now));
}

export function make(model: Model, sheet: SheetOnBench): Turn {
  const settled = settledOf(sheet);
  const cursor = model.focus.on === "survey" ? model.focus.cursor : 0;
  if (sheet.car === "") return at(model, sheet, lineOf(sheet, "car"), "Type a name for the file, such as my-car.");
  if (sheet.settled === null || isOld(sheet))
    return at(model, sheet, cursor, "The readings are being brought together: Enter again in a moment.");
  if (settled === null) return at(model, sheet, cursor, "There is no point to make a car of yet: take some readings.");
  const { surveyed } = settled;
  const length = sheetLength(surveyed.survey.units);
  const source = sheet.file.split(/[\\/]/).at(-1) || "on the screen";
  const made = carOfSurvey(surveyed, surveyHeads(surveyed, source, length));
  if ("complaint" in made) return at(model, sheet, cursor, made.complaint);
  return turn(model, { do: "begin", path: pathOf(sheet.car), text: made.text });
}

/** A write that failed: the complaint stands at the name of the file. */
export function failedInSurvey(model: Model, words: string): Model {
  const now = here(model);
  if (now === null) return { ...model, notice: { text: words, tone: "wrong" } };
  const isCar = now.line.is === "make" || now.line.key === "car";
  return at(model, now.sheet, lineOf(now.sheet, isCar ? "car" : "file"), words).model;
}

/** To the bench; what is understood of the field is kept. */
export function leaveSurvey(model: Model): Turn {
  const sheet = taken(model);
  const isLost = sheet !== null && "complaint" in sheet;
  const last =
    isLost && model.focus.on === "survey" ? ` "${model.focus.text.trim()}" was not understood, and is not.` : "";
  const now = sheet === null || isLost ? model.sheet : sheet;
  const notice = {
    text: `The readings are kept: T, then every point, goes on with them.${last}`,
    tone: "done",
  } as const;
  const left: Model = { ...model, sheet: now, focus: { on: "bench" }, notice };
  return now === null ? turn(left) : turn(left, keeping(now), ...settling(now));
}

/** The sheet with another in its place for another car; the same key brings it back while nothing is read of that one. */
export const otherSheet: Act = (model) => {
  const { sheet } = model;
  if (sheet === null) return turn(model);
  const { before } = sheet;
  const isFresh = before !== null && sheet.text === blankFor(model);
  if (isFresh) {
    const notice = { text: "They are back.", tone: "done" } as const;
    const { model: back, effects } = kept({ ...model, notice }, before, 0);
    return turn(back, ...effects);
  }
  const fresh = {
    ...begun(blankFor(model)),
    before: { ...sheet, before: null },
  };
  const notice = { text: "Thrown away, for another car; Ctrl-R once more brings them back.", tone: "done" } as const;
  const { model: next } = at({ ...model, notice }, fresh, 0);
  return turn(next, { do: "keepSheet", sheet: null }, ...settling(fresh));
};

/** Back to the form, with the sheet that it holds. */
export function toSurvey(model: Model, sheet: SheetOnBench): Turn {
  return turn(at(model, sheet, firstBlank(linesOf(sheet.text)?.lines ?? [])).model, ...settling(sheet));
}
