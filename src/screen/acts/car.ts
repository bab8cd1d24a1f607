import { hashOf } from "../../files/hash.ts";
import { pathOf } from "../../files/save.ts";
import { changed, isUnsaved } from "../bench.ts";
import { partsFor, startingLines } from "../frontEnd.ts";
import { guideCar } from "../guide.ts";
import { openForm } from "../lateSurvey.ts";
import type { Focus, Model, Next, Offer } from "../model.ts";
import { turned } from "../paging.ts";
import { type Act, type Effect, type Turn, turn } from "../turn.ts";
import { stopTyping } from "../typing.ts";
import { helpLines, helpRoom } from "../view/helpText.ts";
import { acceptEntry } from "./adjust.ts";
import { acceptAim, acceptAims, cancelAim, moveInAims, typeInAim } from "./aims.ts";
import { acceptPart, acceptStarting } from "./frontEnd.ts";
import { acceptGauges, leaveGauges, leaveMatched, moveInGauges, moveInMatched, typeInGauges } from "./gauges.ts";
import { acceptLine } from "./line.ts";
import { acceptTape, moveInTape, typeInTape } from "./tape.ts";
import { acceptUpright, moveOnUpright, typeOnUpright } from "./upright.ts";

const bench: Focus = { on: "bench" };

/** Unsaved changes that were found are asked about, the newest first. */
export function askedAbout(offers: readonly Offer[]): Focus {
  return offers.length === 0 ? bench : { on: "question", question: { about: "recover", offers, at: 0 } };
}

/** Asks for a file name; with `next`, what is to be done once the car is saved. */
function askName(model: Model, next: Next | null): Turn {
  return turn({ ...model, focus: { on: "saveAs", text: "", next, complaint: null } });
}

function save(model: Model, next: Next | null): Turn {
  const { path, hash } = model.origin;
  if (path === null) return askName(model, next);
  return turn({ ...model, focus: bench }, { do: "save", path, known: hash, next });
}

/** Done with the car on the bench: what was asked for is done. */
export function goOn(model: Model, next: Next | null, saved: string | null = null): Turn {
  if (next === null) return turn({ ...model, focus: bench });
  const effect: Effect = next.do === "quit" ? { do: "quit" } : { do: "open", source: next.source };
  return turn({ ...model, focus: next.do === "open" ? { on: "opening", saved } : bench }, effect);
}

/** Leaves the car on the bench for something else, but asks first where changes would be lost. */
export function leaveFor(model: Model, next: Next): Turn {
  if (!isUnsaved(model)) return goOn(model, next);
  return turn({ ...model, focus: { on: "question", question: { about: "unsaved", next } } });
}

/** What is still to be done after the question that is asked just now. */
function nextOf({ focus }: Model): Next | null {
  if (focus.on === "saveAs") return focus.next;
  if (focus.on !== "question" || focus.question.about === "recover") return null;
  return focus.question.next;
}

/** Why something typed cannot be a file's name, in words; null when it can. */
function whyNoName(path: string): string | null {
  if (path === "") return "Type a file name first, such as buggy.yaml.";
  if (!/(^|[\\/])(\.{0,2}|~)$/.test(path)) return null;
  return `${path} is a folder. Type the name of a file in it, such as buggy.yaml.`;
}

function acceptName(model: Model): Turn {
  const { focus } = model;
  if (focus.on !== "saveAs") return turn(model);
  const path = focus.text.trim();
  const why = whyNoName(path);
  if (why !== null) return turn({ ...model, focus: { ...focus, complaint: why } });
  return turn(model, { do: "save", path: pathOf(path), known: null, next: focus.next });
}

const accept: Act = (model, chord) => {
  const { focus } = model;
  if (focus.on === "entry") return acceptEntry(model, chord);
  if (focus.on === "saveAs") return acceptName(model);
  if (focus.on === "parts") return acceptPart(model);
  if (focus.on === "starting") return acceptStarting(model);
  if (focus.on === "tape") return acceptTape(model);
  if (focus.on === "survey") return openForm().acceptSurvey(model, focus);
  if (focus.on === "gauges") return acceptGauges(model, focus);
  if (focus.on === "upright") return acceptUpright(model, focus);
  if (focus.on === "aims") return acceptAims(model, focus);
  if (focus.on === "aim") return acceptAim(model, focus);
  if (focus.on === "line") return acceptLine(model, chord);
  if (focus.on !== "open") return turn(model);
  const choice = focus.choices[focus.cursor];
  if (choice === undefined) return turn(model);
  if ("sheet" in choice)
    return turn({ ...model, focus: { on: "opening", saved: null } }, { do: "openSheet", source: choice.sheet });
  return leaveFor({ ...model, focus: bench }, { do: "open", source: choice.source });
};

const clear: Act = (model) => {
  const { focus } = model;
  if (focus.on === "saveAs" || focus.on === "line")
    return turn({ ...model, focus: { ...focus, text: "", complaint: null } });
  if (focus.on === "tape") return turn(typeInTape(model, ""));
  if (focus.on === "survey") return turn(openForm().typeInSurvey(model, focus, ""));
  if (focus.on === "gauges") return turn(typeInGauges(model, focus, ""));
  if (focus.on === "upright") return turn(typeOnUpright(model, focus, ""));
  if (focus.on === "aim") return turn(typeInAim(model, focus, ""));
  return focus.on === "entry" ? turn({ ...model, focus: { ...focus, text: "" } }) : turn(model);
};

/** Back to where one came from: a question about a name goes back to the name. */
const cancel: Act = (model) => {
  const { focus } = model;
  if (focus.on === "question" && focus.question.about === "exists") {
    const { path, next } = focus.question;
    return turn({ ...model, focus: { on: "saveAs", text: path, next, complaint: null } });
  }
  const stopped = stopTyping(model);
  if (stopped !== null) return turn(stopped);
  if (focus.on === "aim") return cancelAim(model, focus);
  if (focus.on === "survey") return openForm().leaveSurvey(model);
  if (focus.on === "points") return openForm().leavePoints(model, focus.back);
  if (focus.on === "gauges") return leaveGauges(model);
  if (focus.on === "matched") return leaveMatched(model, focus.back);
  if (focus.on === "tape") {
    const notice = { text: "The readings typed so far are kept: T goes on with them.", tone: "done" } as const;
    return turn({ ...model, focus: bench, notice }, { do: "keepReadings", answers: model.tape });
  }
  return turn({ ...model, focus: bench });
};

const overwrite: Act = (model) => {
  const { focus } = model;
  if (focus.on !== "question" || !("path" in focus.question)) return turn(model);
  const { path, found, next } = focus.question;
  return turn({ ...model, focus: bench }, { do: "save", path, known: found, next });
};

const readAgain: Act = (model) => {
  const { path } = model.origin;
  return path === null
    ? turn(model)
    : turn({ ...model, focus: { on: "opening", saved: null } }, { do: "open", source: { from: "file", path } });
};

/** The unsaved changes that are asked about. */
function offerOf({ focus }: Model): Offer | null {
  return focus.on === "question" && focus.question.about === "recover"
    ? (focus.question.offers[focus.question.at] ?? null)
    : null;
}

const restore: Act = (model) => {
  const offer = offerOf(model);
  if (offer === null) return turn(model);
  const { base, stale, steps } = offer;
  const text = steps.at(-1)?.text ?? model.bench.car.text;
  const where = stale ? (base === null ? " on the newer file" : ", without what is new in the file") : "";
  const back = changed(model, text, `Unsaved changes restored${where}; u takes them back`);
  if (back.effects.length === 0) return back;
  // A save must ask before it writes over what the edits know nothing of.
  const { origin } = back.model;
  const hash = base === null || origin.hash === null ? origin.hash : hashOf(base);
  const effects = back.effects.map((each) => (each.do === "journal" ? { ...each, settles: offer } : each));
  return turn({ ...back.model, origin: { ...origin, hash } }, ...effects);
};

const throwAway: Act = (model) => {
  const { focus } = model;
  const offer = offerOf(model);
  if (offer === null || focus.on !== "question" || focus.question.about !== "recover") return turn(model);
  const offers = focus.question.offers.filter((each) => each !== offer);
  const notice = { text: "Thrown away.", tone: "done" } as const;
  return turn({ ...model, focus: askedAbout(offers), notice }, { do: "discard", offer });
};

const nextOffer: Act = (model) => {
  const { focus } = model;
  if (focus.on !== "question" || focus.question.about !== "recover") return turn(model);
  const { offers, at } = focus.question;
  return turn({
    ...model,
    focus: { on: "question", question: { about: "recover", offers, at: (at + 1) % offers.length } },
  });
};

/** How many lines the list in front of the bench has. */
function lengthOf({ focus, bench }: Model): number {
  if (focus.on === "open") return focus.choices.length;
  return focus.on === "parts" ? partsFor(bench.car).length : startingLines(bench.car).length;
}

function listBy(ways: number): Act {
  return (model, chord) => {
    const { focus } = model;
    if (focus.on === "help") {
      const seen = { room: helpRoom(model), lines: helpLines(model, model.columns).length };
      return turn({ ...model, focus: { ...focus, top: turned(focus.top, ways, chord, seen) } });
    }
    if (focus.on === "points") return openForm().movePoints(model, focus, ways, chord);
    if (focus.on === "tape") return moveInTape(model, ways, chord);
    if (focus.on === "survey") return openForm().moveInSurvey(model, focus, ways, chord);
    if (focus.on === "gauges") return moveInGauges(model, focus, ways, chord);
    if (focus.on === "matched") return moveInMatched(model, focus, ways, chord);
    if (focus.on === "upright") return moveOnUpright(model, focus, ways);
    if (focus.on === "aims" || focus.on === "aim") return moveInAims(model, ways);
    if (!("cursor" in focus)) return turn(model);
    const cursor = Math.min(lengthOf(model) - 1, Math.max(0, focus.cursor + ways));
    return turn({ ...model, focus: { ...focus, cursor } });
  };
}

export const carActs = {
  save: (model) => save(model, null),
  saveAs: (model) => askName(model, nextOf(model)),
  open: (model) => turn(model, { do: "list" }),
  guide: (model) => leaveFor({ ...model, guide: "asked" }, { do: "open", source: guideCar }),
  endGuide: (model) => turn({ ...model, guide: null }),
  quit: (model) => leaveFor(model, { do: "quit" }),
  accept,
  clear,
  cancel,
  saveFirst: (model) => save(model, nextOf(model)),
  goOn: (model) => {
    const next = goOn(model, nextOf(model));
    return turn(next.model, { do: "forget" }, ...next.effects);
  },
  overwrite,
  readAgain,
  restore,
  nextOffer,
  leave: (model) => turn(model, { do: "leave" }),
  throwAway,
  listUp: listBy(-1),
  listDown: listBy(1),
} satisfies Record<string, Act>;
