import { adjustActs } from "./acts/adjust.ts";
import { aimActs, typeInAim } from "./acts/aims.ts";
import { askedAbout, carActs, goOn, leaveFor } from "./acts/car.ts";
import { frontEndActs } from "./acts/frontEnd.ts";
import { failedInGauges, gaugeActs, gaugesOpened, gaugesWritten, openGauges, typeInGauges } from "./acts/gauges.ts";
import { placeActs } from "./acts/place.ts";
import { firstInches, showActs } from "./acts/show.ts";
import { failedInTape, keptOnPage3, openTape, takenInTape, tapeActs, typeInTape } from "./acts/tape.ts";
import { trialActs } from "./acts/trials.ts";
import { typeOnUpright, uprightActs } from "./acts/upright.ts";
import { adjustables } from "./adjust.ts";
import { benchOf, startingPlace } from "./bench.ts";
import { matchWork, withMatched } from "./gaugeMatch.ts";
import { guideAfterSave, guided, guideOf } from "./guide.ts";
import type { Command } from "./keys/binding.ts";
import { bindingOf } from "./keys.ts";
import { openForm } from "./lateSurvey.ts";
import type { Model, Next, Origin } from "./model.ts";
import { hasRoom } from "./room.ts";
import { firstStep } from "./steps.ts";
import { type Act, type Message, type Opened, type Turn, turn } from "./turn.ts";
import { helpLineOf } from "./view/helpText.ts";
import { firstView, viewOf } from "./views/views.ts";

const acts: Readonly<Record<Command, Act>> = {
  ...trialActs,
  ...adjustActs,
  ...frontEndActs,
  ...tapeActs,
  ...gaugeActs,
  // Keys of the form, which is fetched before it stands there.
  otherSheet: (model, chord) => openForm().surveyActs.otherSheet(model, chord),
  lookNext: (model, chord) => openForm().surveyActs.lookNext(model, chord),
  showPoints: (model, chord) => openForm().surveyActs.showPoints(model, chord),
  ...uprightActs,
  ...aimActs,
  ...placeActs,
  ...showActs,
  ...carActs,
};

function originOf({ source, car, hash }: Opened): Origin {
  return { path: source.from === "file" ? source.path : null, source, saved: car.text, hash };
}

/** The screen as it is first shown with a car; unsaved changes that were found of it are offered. */
export function start(opened: Opened, size: { readonly columns: number; readonly rows: number }): Model {
  const { car, offers, remark } = opened;
  const bench = benchOf(car);
  return {
    bench,
    origin: originOf(opened),
    selected: adjustables(car)[0]?.pair ?? "",
    sides: "both",
    place: startingPlace(bench),
    moving: "both",
    display: { unit: car.form.units, inches: firstInches, step: firstStep },
    pin: null,
    trials: [],
    tape: null,
    sheet: null,
    gauges: null,
    guide: null,
    work: null,
    check: null,
    view: firstView,
    spots: {},
    amounts: {},
    focus: askedAbout(offers),
    notice: remark === null ? null : { text: remark, tone: "wrong" },
    columns: size.columns,
    rows: size.rows,
  };
}

/** What one message makes of the model, and what is to be done: the only way that anything on the screen changes. */
export function update(model: Model, message: Message): Turn {
  const { model: next, effects } = answer(model, message);
  return withWork({ model: guided(next), effects });
}

/** Asks for the long work of the view that is seen, if it has some that was not asked for yet. */
function withWork({ model, effects }: Turn): Turn {
  const wanted = (model.focus.on === "matched" ? matchWork(model) : viewOf(model.view).work?.(model)) ?? null;
  // What was stopped is begun again once it is left and come back to.
  if (wanted === null && model.work?.state === "stopped") return { model: { ...model, work: null }, effects };
  if (wanted === null || wanted.key === model.work?.key) return { model, effects };
  const work = { key: wanted.key, progress: 0, state: "running", result: null } as const;
  return { model: { ...model, work }, effects: [...effects, { do: "work", key: wanted.key, job: wanted.job() }] };
}

function worked(model: Model, { key, progress, done, result }: Message & { is: "worked" }): Model {
  if (model.work?.key !== key || model.work.state !== "running") return model;
  return { ...model, work: { key, progress, state: done ? "done" : "running", result } };
}

function answer(model: Model, message: Message): Turn {
  switch (message.is) {
    case "key":
      return press(model, message.chord);
    case "selected":
      return turn({ ...model, selected: message.pair, sides: message.sides, notice: null });
    case "typed":
      return turn(typed(model, message.text));
    case "resized":
      return turn({ ...model, columns: message.columns, rows: message.rows });
    case "saved":
      return saved(model, message);
    case "worked":
      return turn(withMatched(worked(model, message)));
    case "checked":
      return turn({ ...model, check: message.checked });
    case "written": {
      const notice = { text: `Written to ${message.path}.`, tone: "done" } as const;
      return turn({ ...model, focus: { on: "bench" }, notice });
    }
    case "doubted": {
      const { about, path, found, next } = message;
      return turn({ ...model, focus: { on: "question", question: { about, path, found, next } } });
    }
    case "failed":
      return turn(failed(model, message.words));
    case "readings":
      return openTape(model, message.kept);
    case "keptSheet":
      return openForm().openSurvey(model, message.kept);
    case "sheetCounted":
      return turn(keptOnPage3(model, message.count));
    case "sheetOpened":
      return openForm().sheetOpened(model, message.opened, message.kept);
    case "sheetWritten":
      return openForm().sheetWritten(model, message.path, message.text, message.hash);
    case "keptGauges":
      return openGauges(model, message.kept);
    case "gaugesOpened":
      return gaugesOpened(model, message);
    case "gaugesWritten":
      return turn(gaugesWritten(model, message.path));
    case "settled":
      return turn(openForm().sheetSettled(model, message.answer));
    case "begun":
      return leaveFor({ ...model, focus: { on: "bench" } }, begunCar(message.path));
    case "taken":
      return turn(takenInTape(model, message.path));
    case "opened":
      return turn(
        afterReadingAgain(model, {
          ...savedBefore(model, start(message.opened, model)),
          guide: guideOf(model.guide, message.opened.source),
          tape: model.tape,
          sheet: model.sheet,
          gauges: model.gauges,
        }),
      );
    case "listed":
      return turn({ ...model, focus: { on: "open", choices: message.choices, cursor: 0 } });
  }
}

/** That the car before was saved on the way to this one. */
function savedBefore({ focus }: Model, now: Model): Model {
  if (focus.on !== "opening" || focus.saved === null) return now;
  const { text = "", tone = "done" } = now.notice ?? {};
  return { ...now, notice: { text: `Saved to ${focus.saved}: the car before this one. ${text}`.trimEnd(), tone } };
}

/** The same file read again in the place of changes that were not saved: they can be had back. */
function afterReadingAgain({ bench, origin }: Model, now: Model): Model {
  const isSame = origin.path !== null && origin.path === now.origin.path;
  if (!isSame || bench.undo.length === 0 || bench.car.text === now.bench.car.text) return now;
  const undo = [...bench.undo, { text: bench.car.text, what: "the file read again" }];
  const notice = {
    text: "Read again as it is in the file now; u brings your own changes back.",
    tone: "done",
  } as const;
  return { ...now, bench: { ...now.bench, undo }, notice };
}

/** The car that was just made of a tape's readings is what is opened next. */
function begunCar(path: string): Next {
  return { do: "open", source: { from: "file", path } };
}

function press(model: Model, chord: string): Turn {
  const binding = bindingOf(model, chord);
  if (binding === undefined) return turn(unbound(model, chord));
  // What cannot be seen is not changed; leaving, and the question that leaving asks, work in any window.
  if (!hasRoom(model) && model.focus.on === "bench" && !("command" in binding && binding.command === "quit"))
    return turn(model);
  const why = binding.off?.(model) ?? null;
  if (why !== null) return turn({ ...model, notice: { text: why, tone: "wrong" } });
  const act = "act" in binding ? binding.act : acts[binding.command];
  return act({ ...model, notice: null }, chord);
}

/** A key that does nothing here: in the help it leads to its line, and before a question it is answered. */
function unbound(model: Model, chord: string): Model {
  if (model.focus.on === "help") return helpOn(model, chord);
  if (model.focus.on !== "question") return model;
  return { ...model, notice: { text: "First answer, by one of the keys below:", tone: "wrong" } };
}

/** The help page at the line of a key that was pressed there. */
function helpOn(model: Model, chord: string): Model {
  const top = helpLineOf(model, model.columns, chord);
  return top === null ? model : { ...model, focus: { on: "help", top } };
}

function typed(model: Model, text: string): Model {
  const { focus } = model;
  if (focus.on === "entry") return { ...model, focus: { on: "entry", text }, notice: null };
  if (focus.on === "tape") return typeInTape(model, text);
  if (focus.on === "survey") return openForm().typeInSurvey(model, focus, text);
  if (focus.on === "gauges") return typeInGauges(model, focus, text);
  if (focus.on === "upright") return typeOnUpright(model, focus, text);
  if (focus.on === "aim") return typeInAim(model, focus, text);
  if (focus.on === "saveAs" || focus.on === "line") return { ...model, focus: { ...focus, text, complaint: null } };
  return model;
}

function saved(model: Model, { path, hash, next }: Message & { is: "saved" }): Turn {
  const origin: Origin = { path, source: { from: "file", path }, saved: model.bench.car.text, hash };
  const notice = { text: `Saved to ${path}.`, tone: "done" } as const;
  return goOn({ ...model, origin, notice, guide: guideAfterSave(model.guide) }, next, path);
}

/** A save that failed leaves its question open, so that another name can be tried. */
function failed(model: Model, words: string): Model {
  const { focus } = model;
  if (focus.on === "tape") return failedInTape(model, words);
  if (focus.on === "survey") return openForm().failedInSurvey(model, words);
  if (focus.on === "gauges") return failedInGauges(model, words);
  if (focus.on === "saveAs" || focus.on === "line") return { ...model, focus: { ...focus, complaint: words } };
  if (focus.on !== "opening") return { ...model, notice: { text: words, tone: "wrong" } };
  const saved = focus.saved === null ? "" : `Saved to ${focus.saved}. `;
  return { ...model, focus: { on: "bench" }, notice: { text: `${saved}${words}`, tone: "wrong" } };
}
