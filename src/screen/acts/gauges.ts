import { pathOf } from "../../files/save.ts";
import { inputOf } from "../../vehicle/car-readings/values.ts";
import { changed } from "../bench.ts";
import { matchedHere, matchKey } from "../gaugeMatch.ts";
import { answersFrom, countRead, fileText, type GaugeLine, gaugeLines, readingsToMatch, typedOn } from "../gauges.ts";
import type { Answers, Focus, GaugesOnBench, Model } from "../model.ts";
import { turned } from "../paging.ts";
import { type Act, type Effect, type Message, type Turn, turn } from "../turn.ts";
import { typingAt } from "../typing.ts";
import { matchedFrame, matchedLines } from "../view/MatchedPage.tsx";

/** The form for readings on the built car has the keyboard. */
type OnGauges = Focus & { readonly on: "gauges" };

/** Lines that a page key goes by. */
const page = 10;

const bench: Focus = { on: "bench" };

function begun({ bench: { car }, display }: Model): Answers {
  return { units: display.unit, car: car.title, steered: inputOf({ car }) };
}

/** The form with its cursor on a line, and what stands there in the field. */
function at(model: Model, gauges: GaugesOnBench, cursor: number, complaint: string | null = null): Turn {
  const lines = gaugeLines(model, gauges.answers);
  const row = Math.min(lines.length - 1, Math.max(0, cursor));
  const text = gauges.answers[lines[row]?.key ?? ""] ?? "";
  return turn({
    ...model,
    gauges,
    focus: { on: "gauges", cursor: row, text, typing: typingAt(text, complaint), complaint },
  });
}

function lineAt(model: Model, key: GaugeLine["key"]): number {
  return gaugeLines(model, model.gauges?.answers ?? {}).findIndex((line) => line.key === key);
}

function keeping({ answers }: GaugesOnBench): Effect {
  return { do: "keepGauges", answers };
}

/** To another line: what was typed is kept on disk. */
function leaveTo(model: Model, cursor: number, complaint: string | null = null): Turn {
  const { gauges } = model;
  return gauges === null ? turn(model) : turn(at(model, gauges, cursor, complaint).model, keeping(gauges));
}

/** The form as it is first seen, with the readings that were kept of an earlier time, if any. */
export function openGauges(model: Model, kept: Answers | null): Turn {
  if (kept?.steered !== undefined && kept.steered !== inputOf({ car: model.bench.car })) {
    // Places of a rack say nothing of a column, nor the other way round.
    const text = `Readings of "${kept.car}" are set aside: it is steered by a ${kept.steered}. Ctrl-R shows them.`;
    return at({ ...model, notice: { text, tone: "wrong" } }, { answers: begun(model), matched: null, before: kept }, 0);
  }
  const isOther = kept !== null && kept.car !== undefined && kept.car !== model.bench.car.title;
  const words = isOther
    ? `These readings were kept of "${kept.car}": Ctrl-R throws them away, if this is another car.`
    : "These readings were kept from last time; Ctrl-R throws them away, for another car.";
  const notice = kept === null ? null : ({ text: words, tone: isOther ? "wrong" : "done" } as const);
  return at({ ...model, notice }, { answers: kept ?? begun(model), matched: null, before: null }, 0);
}

/** The readings of a file in the form; those that were there come back by Ctrl-R. */
export function gaugesOpened(model: Model, { name, text, isExample }: Message & { is: "gaugesOpened" }): Turn {
  const { gauges } = model;
  if (gauges === null || model.focus.on !== "gauges") return turn(model);
  const answers = answersFrom(text, model.bench.car);
  if ("complaint" in answers && typeof answers.complaint === "string")
    return at(model, gauges, lineAt(model, "from"), `${name}: ${answers.complaint}.`);
  // What is read into the lines of an example is of the car on the bench, and is written under its name.
  const read = { ...begun(model), ...(answers as Answers), ...(isExample ? { title: "" } : {}) };
  const next: GaugesOnBench = { answers: read, matched: null, before: gauges.answers };
  const count = countRead(gaugeLines(model, read), read);
  const notice = { text: `${count} readings from ${name}. Ctrl-R brings back what stood here.`, tone: "done" } as const;
  return turn(at({ ...model, notice }, next, 0).model, keeping(next));
}

export function gaugesWritten(model: Model, path: string): Model {
  return { ...model, notice: { text: `Written to ${path}. rackwright match reads it too.`, tone: "done" } };
}

/** What could not be written or opened is said at its line. */
export function failedInGauges(model: Model, words: string): Model {
  const { gauges, focus } = model;
  if (gauges === null || focus.on !== "gauges") return model;
  const line = gaugeLines(model, gauges.answers)[focus.cursor];
  return at(model, gauges, line?.is === "from" ? focus.cursor : lineAt(model, "file"), words).model;
}

/** A line up or down, ten of them, or to either end. */
export function moveInGauges(model: Model, focus: OnGauges, by: number, chord: string): Turn {
  if (chord === "home") return leaveTo(model, 0);
  if (chord === "end") return leaveTo(model, lineAt(model, "match"));
  return leaveTo(model, focus.cursor + by * (chord.startsWith("page") ? page : 1));
}

/** What was typed goes into the line's answer. */
export function typeInGauges(model: Model, focus: OnGauges, text: string): Model {
  const { gauges } = model;
  const line = gauges === null ? undefined : gaugeLines(model, gauges.answers)[focus.cursor];
  if (gauges === null || line === undefined || line.is === "match" || line.is === "write") return model;
  const answers = { ...gauges.answers, [line.key]: text };
  return {
    ...model,
    gauges: { ...gauges, answers },
    focus: { ...focus, text, typing: "typed", complaint: null },
    notice: null,
  };
}

/** Takes the line and goes on; on those that do something, does it. */
export function acceptGauges(model: Model, focus: OnGauges): Turn {
  const { gauges } = model;
  const { study, car } = model.bench;
  if (gauges === null || "refused" in study) return turn({ ...model, focus: bench });
  const lines = gaugeLines(model, gauges.answers);
  const line = lines[focus.cursor];
  if (line?.is === "match") return match(model, gauges, focus.cursor);
  if (line?.is === "write") {
    const name = (gauges.answers.file ?? "").trim();
    if (name === "") return leaveTo(model, lineAt(model, "file"), "Type a name for the file, such as as-built.");
    const wrong = readingsToMatch(model, gauges.answers);
    if ("complaint" in wrong) return leaveTo(model, wrong.cursor, wrong.complaint);
    return turn(model, { do: "writeGauges", path: pathOf(name), text: fileText(car, gauges.answers, lines) });
  }
  if (line?.is === "from" && focus.text.trim() !== "")
    return turn(model, { do: "openGauges", name: focus.text.trim() });
  const typed = line?.is === "reading" ? typedOn(study, line, gauges.answers) : null;
  if (typed !== null && "complaint" in typed) return leaveTo(model, focus.cursor, `${typed.complaint}.`);
  return leaveTo(model, focus.cursor + 1);
}

function match(model: Model, gauges: GaugesOnBench, cursor: number): Turn {
  const readings = readingsToMatch(model, gauges.answers);
  if ("complaint" in readings) return leaveTo(model, readings.cursor, readings.complaint);
  // Work that was stopped is begun anew.
  const work = model.work?.key === matchKey(model, gauges) && model.work.state === "stopped" ? null : model.work;
  return turn({ ...model, work, focus: { on: "matched", top: 0, back: cursor } }, keeping(gauges));
}

/** To the bench; the readings are kept. */
export function leaveGauges(model: Model): Turn {
  const notice = { text: "The readings typed so far are kept: M goes on with them.", tone: "done" } as const;
  const left: Model = { ...model, focus: bench, notice };
  return model.gauges === null ? turn(left) : turn(left, keeping(model.gauges));
}

/** Up and down what the match says. */
export function moveInMatched(
  model: Model,
  focus: Focus & { readonly on: "matched" },
  by: number,
  chord: string,
): Turn {
  const seen = { room: model.rows - matchedFrame, lines: matchedLines(model).length };
  return turn({ ...model, focus: { ...focus, top: turned(focus.top, by, chord, seen) } });
}

/** Stops the match, or goes back to the readings. */
export function leaveMatched(model: Model, back: number): Turn {
  const { gauges, work } = model;
  if (gauges === null) return turn({ ...model, focus: bench });
  const isRunning = work?.state === "running" && work.key === matchKey(model, gauges);
  if (!isRunning) return at(model, gauges, back);
  return turn({ ...model, work: { ...work, state: "stopped" } }, { do: "halt" });
}

/** The readings with none in their place, for another car; the same key brings them back while nothing is read. */
const otherGauges: Act = (model) => {
  const { gauges } = model;
  if (gauges === null) return turn(model);
  const isFresh = gauges.before !== null && countRead(gaugeLines(model, gauges.answers), gauges.answers) === 0;
  const wasOpened = gauges.before !== null && !isFresh;
  const answers = (isFresh || wasOpened) && gauges.before !== null ? gauges.before : begun(model);
  const words =
    isFresh || wasOpened
      ? "They are back; Ctrl-R once more for the others."
      : "Thrown away, for another car; Ctrl-R once more brings them back.";
  const next: GaugesOnBench = { answers, matched: null, before: gauges.answers };
  const open = at({ ...model, notice: { text: words, tone: "done" } }, next, 0);
  return turn(open.model, keeping(next));
};

/** The matched car as one change of the car on the bench. */
const takeMatched: Act = (model) => {
  const shown = matchedHere(model);
  if (shown === null || "unreached" in shown.outcome) return turn(model);
  const taken = changed(model, shown.text(), "Matched to what was read on the car, rods as cut");
  return turn(taken.model, ...taken.effects);
};

export const gaugeActs = {
  gauges: (model) => {
    const { gauges } = model;
    if (gauges === null) return turn(model, { do: "keptGauges" });
    // Another car may have been opened, or this one given another front end, since they were read.
    const { car, steered } = begun(model);
    const isSame = gauges.answers.car === car && gauges.answers.steered === steered;
    return isSame ? at({ ...model, notice: null }, gauges, 0) : openGauges(model, gauges.answers);
  },
  otherGauges,
  takeMatched,
} satisfies Record<string, Act>;
