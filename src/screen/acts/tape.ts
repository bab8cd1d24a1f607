import { pathOf } from "../../files/save.ts";
import type { Answers, Model } from "../model.ts";
import { carOf, firstWrong, type TapeRow, tapeRows, unitsOf, whyPassedOver, wrongWith } from "../tape.ts";
import { type Act, type Turn, turn } from "../turn.ts";

/** The form as it is first seen, with the readings that were kept of an earlier time, if any. */
export function openTape(model: Model, kept: Answers | null): Turn {
  const units = model.display.unit;
  const tape = kept ?? { units };
  const notice =
    kept === null
      ? null
      : ({ text: "These readings were kept from last time; Ctrl-U empties a field.", tone: "done" } as const);
  return at({ ...model, tape, notice }, 0);
}

/** The form with its cursor on a row, and what was typed there in the field. */
function at(model: Model, cursor: number, complaint: string | null = null): Turn {
  const row = tapeRows[Math.min(tapeRows.length - 1, Math.max(0, cursor))];
  const text = (row === undefined ? undefined : model.tape?.[row.key]) ?? "";
  return turn({
    ...model,
    focus: { on: "tape", cursor: row === undefined ? 0 : tapeRows.indexOf(row), text, complaint },
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
  if (!chord.startsWith("page")) return leaveTo(model, focus.cursor + ways);
  return leaveTo(model, ways < 0 ? 0 : tapeRows.findIndex(({ page }) => page === 2));
}

/** What was typed goes into the row's answer; a unit typed behind the one that stands there takes its place. */
export function typeInTape(model: Model, typed: string): Model {
  const { focus } = model;
  const row = rowOf(model);
  if (focus.on !== "tape" || row === undefined || row.is === "make") return model;
  const text = row.is === "units" ? (/(in|mm)$/i.exec(typed)?.[0] ?? typed) : typed;
  return {
    ...model,
    tape: { ...model.tape, [row.key]: text },
    focus: { ...focus, text, complaint: null },
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
  const isBlank = focus.text.trim() === "";
  const wrong = isBlank ? null : wrongWith(row, answers);
  return wrong === null ? leaveTo(model, nextAsked(focus.cursor, answers)) : at(model, focus.cursor, wrong);
}

/** The next row whose answer is of use beside the others: the arrow keys lead to the rest. */
function nextAsked(cursor: number, answers: Answers): number {
  const next = tapeRows.findIndex((row, i) => i > cursor && whyPassedOver(row, answers) === null);
  return next < 0 ? tapeRows.length - 1 : next;
}

function makeCar(model: Model, answers: Answers): Turn {
  const wrong = firstWrong(answers);
  if (wrong !== null) return leaveTo(model, wrong.cursor, wrong.complaint);
  const made = carOf(answers);
  if ("complaint" in made) return at(model, model.focus.on === "tape" ? model.focus.cursor : 0, made.complaint);
  return turn(model, { do: "begin", path: pathOf(answers.file ?? ""), text: made.text });
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
  fromTape: (model) => (model.tape === null ? turn(model, { do: "readings" }) : at(model, 0)),
  emptyTape: (model, chord) => turn(emptyTape(model, chord).model, { do: "keepReadings", answers: null }),
} satisfies Record<string, Act>;
