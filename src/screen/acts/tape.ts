import { pathOf } from "../../files/save.ts";
import { openForm } from "../lateSurvey.ts";
import type { Answers, Model } from "../model.ts";
import { carOf, firstWrong, type TapeRow, tapeRows, unitsOf, whyPassedOver, wrongWith } from "../tape.ts";
import { type Act, type Effect, type Turn, turn } from "../turn.ts";
import { typingAt } from "../typing.ts";

const keptWords = "These readings were kept from last time; Ctrl-U empties a field, Ctrl-R all of them.";

/** The form as it is first seen, with the readings that were kept of an earlier time, if any. */
export function openTape(model: Model, kept: Answers | null): Turn {
  return opened({ ...model, tape: kept ?? { units: model.display.unit } });
}

/** The form with what it holds: what was kept is said, here and on page 3; of a name that is a file's, that is said. */
function opened(model: Model): Turn {
  const { tape, sheet } = model;
  const answers = tape ?? {};
  const isKept = Object.entries(answers).some(([key, text]) => key !== "units" && text.trim() !== "");
  const notice = isKept ? ({ text: keptWords, tone: "done" } as const) : null;
  const { model: open } = at({ ...model, notice }, 0);
  const named = (answers.file ?? "").trim() === "" ? [] : [lookFor(answers)];
  if (sheet === null) return turn(open, { do: "countSheet" }, ...named);
  return turn(keptOnPage3(open, openForm().countRead(sheet.text)), ...named);
}

/** That readings between points wait on page 3, on the pages before it. */
export function keptOnPage3(model: Model, count: number): Model {
  if (model.focus.on !== "tape" || count === 0) return model;
  const readings = count === 1 ? "1 reading between points is" : `${count} readings between points are`;
  const there = `${readings} kept on page 3: PgDn, twice from page 1, goes on there.`;
  return { ...model, notice: { text: [model.notice?.text ?? "", there].join(" ").trim(), tone: "done" } };
}

/** The form with its cursor on a row, and what was typed there in the field. */
function at(model: Model, cursor: number, complaint: string | null = null): Turn {
  const row = tapeRows[Math.min(tapeRows.length - 1, Math.max(0, cursor))];
  const text = (row === undefined ? undefined : model.tape?.[row.key]) ?? "";
  return turn({
    ...model,
    focus: {
      on: "tape",
      cursor: row === undefined ? 0 : tapeRows.indexOf(row),
      text,
      typing: typingAt(text, complaint),
      complaint,
    },
  });
}

/** From a row to another one: what was typed is kept on disk. */
function leaveTo(model: Model, cursor: number, complaint: string | null = null): Turn {
  const there = at(model, cursor, complaint);
  return turn(there.model, { do: "keepReadings", answers: model.tape });
}

/** A row up or down, or the first of the other page. */
export function moveInTape(model: Model, ways: number, chord: string): Turn {
  const { focus } = model;
  if (focus.on !== "tape") return turn(model);
  if (chord === "end") return leaveTo(model, makingOf(focus.cursor));
  if (!chord.startsWith("page")) return leaveTo(model, focus.cursor + ways);
  if (ways > 0 && tapeRows[focus.cursor]?.page === 2) return onToSurvey(model);
  return leaveTo(model, ways < 0 ? 0 : tapeRows.findIndex(({ page }) => page === 2));
}

/** The line of a row's page that makes the car. */
function makingOf(cursor: number): number {
  return tapeRows.findIndex((row, i) => i >= cursor && row.is === "make");
}

/** What was typed goes into the row's answer. */
export function typeInTape(model: Model, text: string): Model {
  const { focus } = model;
  const row = rowOf(model);
  if (focus.on !== "tape" || row === undefined || row.is === "make" || row.is === "survey") return model;
  return {
    ...model,
    tape: { ...model.tape, [row.key]: text },
    focus: { ...focus, text, typing: "typed", complaint: null },
    notice: null,
  };
}

function rowOf({ focus }: Model): TapeRow | undefined {
  return focus.on === "tape" ? tapeRows[focus.cursor] : undefined;
}

/** Takes the row's answer and goes on; at the end of a page, makes the car. A reading that is none stays, with the complaint. */
export function acceptTape(model: Model): Turn {
  const { focus } = model;
  const row = rowOf(model);
  const answers = model.tape ?? {};
  if (focus.on !== "tape" || row === undefined) return turn(model);
  if (row.is === "make") return makeCar(model, answers);
  if (row.is === "survey") return onToSurvey(model);
  const isBlank = focus.text.trim() === "";
  const wrong = isBlank ? null : wrongWith(row, answers);
  if (wrong !== null) return at(model, focus.cursor, wrong);
  const on = leaveTo(model, nextAsked(focus.cursor, answers));
  return row.is === "file" && !isBlank ? turn(on.model, ...on.effects, lookFor(answers)) : on;
}

/** The next row whose answer is of use beside the others: the arrow keys lead to the rest. */
function nextAsked(cursor: number, answers: Answers): number {
  const next = tapeRows.findIndex((row, i) => i > cursor && whyPassedOver(row, answers) === null);
  return next < 0 ? tapeRows.length - 1 : next;
}

/** To the form for every point; what was typed here stays, too. */
function onToSurvey(model: Model): Turn {
  const on = model.sheet === null ? turn(model, { do: "keptSheet" }) : openForm().toSurvey(model, model.sheet);
  return turn(on.model, { do: "keepReadings", answers: model.tape }, ...on.effects);
}

function makeCar(model: Model, answers: Answers): Turn {
  const wrong = firstWrong(answers);
  if (wrong !== null) return leaveTo(model, wrong.cursor, wrong.complaint);
  const made = carOf(answers);
  if ("complaint" in made) return at(model, model.focus.on === "tape" ? model.focus.cursor : 0, made.complaint);
  return turn(model, { do: "begin", path: pathOf(answers.file ?? ""), text: made.text });
}

function lookFor({ file = "" }: Answers): Effect {
  return { do: "lookFor", path: pathOf(file) };
}

/** A file has the name that was typed: said at once, at the name, while it still stands there. */
export function takenInTape(model: Model, path: string): Model {
  const isSo = model.focus.on === "tape" && pathOf(model.tape?.file ?? "") === path;
  if (!isSo) return model;
  return failedInTape(
    model,
    `There is a file ${path} already: type another name, such as ${nextName(model.tape?.file ?? "")}.`,
  );
}

/** "buggy-2" after "buggy", "buggy-3" after that. */
function nextName(name: string): string {
  const [, start = "", number = "1"] = /^(.*?)(?:-(\d+))?$/.exec(name.trim().replace(/\.ya?ml$/i, "")) ?? [];
  return `${start}-${Number(number) + 1}`;
}

/** A write that failed: the complaint stands at the name of the file. */
export function failedInTape(model: Model, words: string): Model {
  return at(
    model,
    tapeRows.findIndex(({ is }) => is === "file"),
    words,
  ).model;
}

/** All readings thrown away, for another car. */
const emptyTape: Act = (model) => at({ ...model, tape: { units: unitsOf(model.tape ?? {}) } }, 0);

export const tapeActs = {
  fromTape: (model) => (model.tape === null ? turn(model, { do: "readings" }) : opened(model)),
  emptyTape: (model, chord) => turn(emptyTape(model, chord).model, { do: "keepReadings", answers: null }),
} satisfies Record<string, Act>;
