import { carFigures } from "../../measures/carFigures.ts";
import type { Figure } from "../../measures/figures.ts";
import type { Study } from "../../measures/study.ts";
import { trialActs } from "../acts/trials.ts";
import { changed, isUnsaved } from "../bench.ts";
import { type FigureSayer, figureSayer } from "../lengths.ts";
import type { Model, Trial } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";
import { windowOf } from "../view/AdjustList.tsx";
import { cellWords } from "../view/cellWords.ts";
import { heading } from "../view/heading.ts";
import { filled, type Line, Lines } from "../view/Lines.tsx";
import { adjustersPage } from "./adjustersPage.ts";
import { buildsPage } from "./buildsPage.ts";
import { differencesPage } from "./differencesPage.ts";
import { findPage } from "./findPage.ts";
import type { Page } from "./page.ts";
import { cursorKeys, pageKey, spotOf, spotWithin } from "./spot.ts";
import type { Room, View, ViewKey } from "./view.ts";
import { widenPage } from "./widenPage.ts";
import { stopKey } from "./work.ts";

const name = "Trials";
const valueColumns = 13;

/** The figures of the car that can be told, now or before: each on one line. */
function figuresOf(model: Model): typeof carFigures {
  const { study } = model.bench;
  const before = pinned(model);
  return carFigures.filter(
    (each) => (!("refused" in study) && each.read(study) !== null) || (before !== null && each.read(before) !== null),
  );
}

function pinned({ pin }: Model): Study | null {
  return pin === null || "refused" in pin.study ? null : pin.study;
}

const size: Page["size"] = (model) => pageOf(model).size(model);

function trialHere(model: Model): Trial | undefined {
  return model.trials[spotWithin(model, name, size).row];
}

function whyNoTrial(model: Model): string | null {
  if (model.trials.length === 0) return "There is no trial yet. Press n to name the car as it is now.";
  return pageOf(model) === trialsPage ? null : "Press Space for the list of trials first.";
}

const take: Act = (model) => {
  const trial = trialHere(model);
  return trial === undefined ? turn(model) : changed(model, trial.car.text, `Trial "${trial.name}" on the bench`);
};

const compare: Act = (model) => {
  const trial = trialHere(model);
  if (trial === undefined) return turn(model);
  const notice = { text: `Every number now shows its change from "${trial.name}". v swaps.`, tone: "done" } as const;
  return turn({ ...model, pin: trial, notice });
};

const drop: Act = (model) => {
  const trial = trialHere(model);
  if (trial === undefined) return turn(model);
  const notice = { text: `Trial "${trial.name}" dropped.`, tone: "done" } as const;
  return turn({ ...model, trials: model.trials.filter((each) => each !== trial), notice });
};

/** Takes the place that was found, or says why there is none to take. */
const takePlace: Act = (model, chord) => {
  const why = placesPage.take?.off(model) ?? null;
  return why === null ? (placesPage.take ?? trialTake).act(model, chord) : refused(model, why);
};

const refused = (model: Model, text: string): Turn => turn({ ...model, notice: { text, tone: "wrong" } });

/** Asks by how much is tried what is under the cursor. */
function typeAmount(model: Model): Turn {
  const amount = pageOf(model).amount?.(model) ?? null;
  if (amount === null)
    return refused(model, pageOf(model).take?.off(model) ?? "There is no amount to type for what is under the cursor.");
  return turn({
    ...model,
    focus: { on: "line", asks: { about: "amount", amount, view: name }, text: "", complaint: null },
  });
}

const own: readonly ViewKey[] = [
  {
    keys: ["a"],
    shown: "a",
    footer: "a goals, room",
    help: "what the search for a place is to look for, and what it may move: list, change, add, remove",
    off: (model) =>
      pageOf(model) === placesPage ? null : 'Press Space for the page "find a place" first: a is for its goals.',
    act: (model) => turn({ ...model, focus: { on: "aims", cursor: 0 } }),
  },
  {
    keys: ["enter"],
    shown: "Enter",
    footer: (model) => (pageOf(model) === placesPage ? "Enter take it" : "Enter type"),
    help: "take the place that was found, as one change that u takes back; or type by how much an adjuster is tried, or the car made wider: 2 turns, 1/8 in, 10 mm",
    off: (model) =>
      pageOf(model).amount === undefined && pageOf(model) !== placesPage
        ? "Press Space for the pages of adjusters, wider cars and places."
        : null,
    act: (model, chord) => (pageOf(model) === placesPage ? takePlace(model, chord) : typeAmount(model)),
  },
  {
    keys: ["t"],
    shown: "t",
    footer: "t take it",
    help: "put what is under the cursor on the bench: a trial, an adjuster turned, a wider front end; u takes it back",
    off: (model) => {
      const page = pageOf(model);
      return page === placesPage ? "Enter takes the place under the cursor." : (page.take ?? trialTake).off(model);
    },
    act: (model, chord) => (pageOf(model).take ?? trialTake).act(model, chord),
  },
  {
    keys: ["n"],
    shown: "n",
    footer: "n name it",
    help: "name the car as it is now, as a trial to come back to",
    act: (model) => turn({ ...model, focus: { on: "line", asks: { about: "trial" }, text: "", complaint: null } }),
  },
  { keys: ["y"], shown: "y", footer: null, help: "compare with that trial", off: whyNoTrial, act: compare },
  {
    keys: ["Y"],
    shown: "Y",
    footer: null,
    help: "compare with the car as it is saved, or as it was opened: what the unsaved changes do together",
    off: (model) => (isUnsaved(model) ? null : "Nothing has changed since the car was opened or last saved."),
    act: trialActs.pinSaved,
  },
  {
    keys: ["w"],
    shown: "w",
    footer: "w write",
    help: "write that trial to a file of its own",
    off: whyNoTrial,
    act: (model) => {
      const asks = { about: "trialFile", trial: spotWithin(model, name, size).row } as const;
      return turn({ ...model, focus: { on: "line", asks, text: "", complaint: null } });
    },
  },
  { keys: ["d"], shown: "d", footer: null, help: "drop that trial", off: whyNoTrial, act: drop },
];

const trialTake = { act: take, off: whyNoTrial } as const;

const changesPage: Page = {
  name: "changes",
  title: () => "BEFORE AND AFTER",
  size: (model) => ({ rows: figuresOf(model).length, columns: 1 }),
  lines: changeLines,
  explain: (model) => {
    const figure = figuresOf(model)[spotWithin(model, name, size).row];
    const { study } = model.bench;
    if (figure === undefined || "refused" in study) return "";
    return cellWords("This car", figure, figureSayer(model.display)(figure.read(study), figure.kind));
  },
  take: null,
  work: null,
};

const trialsPage: Page = {
  name: "trials",
  title: (model) => `TRIALS (${model.trials.length})`,
  size: (model) => ({ rows: model.trials.length, columns: 1 }),
  lines: (model, _columns, rows) => trialLines(model, rows),
  explain: (model) => {
    const trial = trialHere(model);
    return trial === undefined
      ? "A trial keeps the car as it is now under a name of yours, as long as this screen is open. n names one, w writes one to a file."
      : `"${trial.name}": t puts it on the bench (u takes that back), y compares every number with it, w writes it to a file.`;
  },
  take: trialTake,
  work: null,
};

const placesPage = findPage(name);

const pages: readonly Page[] = [
  changesPage,
  trialsPage,
  adjustersPage(name),
  widenPage(name),
  placesPage,
  buildsPage(name),
  differencesPage(name),
];

function pageOf(model: Model): Page {
  return pages[spotOf(model, name).page] ?? changesPage;
}

/** The car now and before, number by number, the trials that the builder has named, and what could be done to it. */
export const trials: View = {
  name,
  key: "8",
  // What was named can be put back on the bench.
  alone: (model) => pageOf(model) === trialsPage,
  help: "before and after; named trials; what each adjuster does on race day; a wider front end; find a place; as it is built; what differs",
  keys: [
    ...cursorKeys(name, size, "along the list:"),
    pageKey(
      name,
      pages.map((page) => page.name),
    ),
    ...own,
    stopKey("places, builds or checks"),
  ],
  work: (model) => pageOf(model).work?.(model) ?? null,
  explain: (model) => pageOf(model).explain(model),
  Body,
};

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const rows = room.rows - 1;
  const page = pageOf(model);
  const lines = page.lines(model, room.columns, rows);
  return (
    <Lines columns={room.columns} lines={[heading(model, room.columns, page.title(model)), ...filled(lines, rows)]} />
  );
}

function changeLines(model: Model, columns: number, rows: number): readonly Line[] {
  const { study } = model.bench;
  const before = pinned(model);
  const say = figureSayer(model.display);
  const figures = figuresOf(model);
  const { row } = spotWithin(model, name, size);
  const { from, to } = windowOf(figures.length, row, rows - 1);
  const labelColumns = Math.min(46, columns - 3 * valueColumns - 2);
  const line = (mark: string, label: string, values: readonly string[]) =>
    `${mark} ${label.slice(0, labelColumns).padEnd(labelColumns)}${values.map((text) => text.padStart(valueColumns)).join("")}`;
  const was = model.pin === null ? "press b" : model.pin.name.slice(0, valueColumns - 2);
  return [
    [{ text: line(" ", "", ["now", was, "change"]), look: "strong" }],
    ...figures.slice(from, to).map((figure, index): Line => {
      const value = "refused" in study ? null : figure.read(study);
      const old = before === null ? null : figure.read(before);
      const text = line(from + index === row ? ">" : " ", figure.label, [
        say(value, figure.kind),
        say(old, figure.kind),
        changeWords(figure, value, old, say),
      ]);
      return from + index === row ? [{ text, look: "marked" }] : text;
    }),
  ];
}

function changeWords(figure: Figure, value: number | null, old: number | null, say: FigureSayer): string {
  if (value === null || old === null) return "-";
  const text = say(Math.abs(value - old), figure.kind);
  return text === say(0, figure.kind) ? "same" : `${value > old ? "+" : "-"}${text}`;
}

/** What trials are told apart by: the ids of their figures, and a short heading for each. */
const told = [
  ["lockDifferenceInner", "locks L-R"],
  ["leftLockAckermann", "Acker L"],
  ["rightLockAckermann", "Acker R"],
  ["worstToeAcrossTyreLeft", "toe L"],
  ["worstToeAcrossTyreRight", "toe R"],
] as const;

const nameColumns = 22;
const toldColumns = 11;

function trialLines(model: Model, rows: number): readonly Line[] {
  const say = figureSayer(model.display);
  const { row } = spotWithin(model, name, size);
  const all: readonly { readonly name: string; readonly study: Trial["study"] }[] = [
    { name: "(now)", study: model.bench.study },
    ...model.trials,
  ];
  const { from, to } = windowOf(all.length, row + 1, rows - 1);
  const cells = ({ study }: (typeof all)[number]) =>
    told.map(([id]) => {
      const figure = carFigures.find((each) => each.id === id);
      const value = figure === undefined || "refused" in study ? null : figure.read(study);
      return (figure === undefined ? "-" : say(value, figure.kind)).padStart(toldColumns);
    });
  const heads = told.map(([, head]) => head.padStart(toldColumns)).join("");
  return [
    [{ text: `  ${"".padEnd(nameColumns)}${heads}`, look: "strong" }],
    ...all.slice(from, to).map((trial, index): Line => {
      const isHere = from + index === row + 1;
      const text = `${isHere ? ">" : " "} ${trial.name.slice(0, nameColumns - 1).padEnd(nameColumns)}${cells(trial).join("")}`;
      return isHere ? [{ text, look: "marked" }] : text;
    }),
  ];
}
