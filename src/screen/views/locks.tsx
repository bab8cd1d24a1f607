import { lockSharesOf } from "../../measures/lockShares.ts";
import type { Study } from "../../measures/study.ts";
import { judged, judgedCell, nothingDiffers, reasonsNot, sharedBy, shareSentence } from "../../output/locks.ts";
import { stopsWords, threadWords } from "../../output/lockWords.ts";
import { written } from "../../output/numbers.ts";
import { deadPoint, type Length } from "../../output/words.ts";
import { type Remedies, ranked, remediesJob } from "../../solve/remedies/remedies.ts";
import type { Remedy } from "../../solve/remedies/remedy.ts";
import { changed } from "../bench.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { type Act, turn } from "../turn.ts";
import { windowOf } from "../view/AdjustList.tsx";
import { heading } from "../view/heading.ts";
import { filled, type Line, Lines } from "../view/Lines.tsx";
import { wrapped } from "../view/wrap.ts";
import { listKeys, spotOf, spotWithin, withSpot } from "./spot.ts";
import type { Room, View, ViewKey } from "./view.ts";
import { progressWords, stopKey } from "./work.ts";

const name = "Locks";

/** What the builder said to a question: nothing yet, yes or no. */
const answers = [null, true, false] as const;
const said = ["not said", "yes", "no"] as const;

/** The view's page keeps the answer of the column and what the shares are told of, its column the answer of the uprights. */
function answersOf(model: Model): { readonly column: number; readonly uprights: number; readonly shared: number } {
  const { page, column } = spotOf(model, name);
  return {
    column: page % answers.length,
    uprights: column % answers.length,
    shared: Math.floor(page / answers.length) % sharedBy.length,
  };
}

/** The view's page with these in it. */
function pageOf({ column, shared }: { readonly column: number; readonly shared: number }): number {
  return (shared % sharedBy.length) * answers.length + (column % answers.length);
}

function keyOf({ bench }: Model): string {
  return `locks\0${bench.car.text}`;
}

const nameColumns = 19;
/** Two lines of headings, the car as it is, and one remedy. */
const fewestRows = 4;

const none: Remedies = { offered: [], not: [] };

/** The remedies as far as they are worked out, in the order of the answers. */
function remediesOf(model: Model): Remedies {
  const { work } = model;
  const found = work?.key === keyOf(model) ? ((work.result as Remedies | null) ?? none) : none;
  const { column, uprights } = answersOf(model);
  return ranked(found, { columnCanMove: answers[column] ?? null, uprightsToMake: answers[uprights] ?? null });
}

const size = (model: Model) => ({ rows: remediesOf(model).offered.length, columns: answers.length });

function remedyHere(model: Model): Remedy | undefined {
  return remediesOf(model).offered[spotWithin(model, name, size).row];
}

function whyNone(model: Model): string | null {
  return remedyHere(model) === undefined ? "There is no remedy to take." : null;
}

/** Locks feel less than a tape's mark: beside the fraction stands the decimal. */
function fineOf(model: Model): Length {
  const length = sayer(model.display);
  return (mm) => (model.display.unit === "in" ? `${length(mm)} (${written(mm, "length", "in")})` : length(mm));
}

/** What could hurt someone with a remedy: it is told before anything else of it. */
function dangerOf({ after, caution }: Remedy): string {
  return [deadPoint(after), caution].filter((each) => each !== null).join(" ");
}

const take: Act = (model) => {
  const remedy = remedyHere(model);
  if (remedy === undefined) return turn(model);
  const taken = changed(model, remedy.text, remedy.title(sayer(model.display)));
  const { notice } = taken.model;
  const beware = dangerOf(remedy);
  if (beware === "" || notice === null) return taken;
  return turn({ ...taken.model, notice: { ...notice, text: `${beware} ${notice.text}` } }, ...taken.effects);
};

const askColumn: Act = (model) => {
  const { column, shared } = answersOf(model);
  return turn(withSpot(model, name, { page: pageOf({ column: column + 1, shared }), row: 0 }));
};

const askUprights: Act = (model) =>
  turn(withSpot(model, name, { column: (answersOf(model).uprights + 1) % answers.length, row: 0 }));

/** What else the shares can be told of, as w goes on to it. */
const others = ["outer, circles", "circles, inner", "inner, outer"] as const;

const nextShared: Act = (model) => {
  const { column, shared } = answersOf(model);
  return turn(withSpot(model, name, { page: pageOf({ column, shared: shared + 1 }) }));
};

const own: readonly ViewKey[] = [
  {
    keys: ["t"],
    shown: "t",
    footer: "t take it",
    help: "take the remedy under the cursor; u takes it back",
    off: whyNone,
    act: take,
  },
  {
    keys: ["a"],
    shown: "a",
    footer: "a column?",
    help: "whether the steering column could follow a rack that is shifted: yes, no, not said",
    off: ({ bench: { study } }) =>
      "refused" in study || study.inputKind === "rack" ? null : "There is no rack that could be shifted.",
    act: askColumn,
  },
  {
    keys: ["n"],
    shown: "n",
    footer: "n uprights?",
    help: "whether the uprights are still to be made: yes, no, not said",
    act: askUprights,
  },
  {
    keys: ["w"],
    shown: "w",
    footer: "w inner, outer, circles",
    help: "what the causes' shares are told of: the inner locks, the outer ones or the turning circles",
    act: nextShared,
  },
  stopKey("remedies"),
];

/** Why the locks are unequal, and what would help, each remedy with all that it does. */
export const locks: View = {
  name,
  key: "9",
  help: "why are my locks unequal? each cause's share, and remedies to take",
  keys: [...listKeys(name, size, "along the list:"), ...own],
  work: (model) => {
    const { study } = model.bench;
    return "refused" in study ? null : { key: keyOf(model), job: () => remediesJob(study) };
  },
  explain,
  Body,
};

/** What the builder said that a remedy cannot have. */
function ruledOut(model: Model, { needs }: Remedy): string {
  const { column, uprights } = answersOf(model);
  if (needs === "column" && answers[column] === false) return "Not as you said: the column cannot follow.";
  return needs === "uprights" && answers[uprights] === false ? "Not as you said: the uprights are made." : "";
}

/** Said in the place of remedies where there is none: a paragraph each. */
function whyNothing(study: Study, { not }: Remedies): readonly string[] {
  if (nothingDiffers(study)) return ["Nothing to take: inner locks, outer locks and circles are equal already."];
  return ["Nothing to take. What is known for other cars, and why not here:", ...reasonsNot(not)];
}

function explain(model: Model): string {
  const remedy = remedyHere(model);
  if (remedy === undefined) return "";
  const threads = threadWords(remedy.after, sayer(model.display)) ?? "";
  // What a shifted rack asks of its column belongs after what is gained by it; all else that can hurt comes before.
  const { caution, tradeOff, needs } = remedy;
  const told = needs === "column" ? [tradeOff, caution ?? ""] : [caution ?? "", tradeOff];
  const words = [ruledOut(model, remedy), deadPoint(remedy.after) ?? "", ...told, threads];
  return words.filter((each) => each !== "").join(" ");
}

/** Bounce steer stands apart from Ackermann's columns. */
function widthOf(column: number): number {
  return judged[column]?.[1] === "worstBounceSteer" ? 7 : 6;
}

function table(model: Model, study: Study, rows: number): readonly Line[] {
  const { offered } = remediesOf(model);
  const { unit } = model.display;
  const cells = (of: Study) => judged.map(([, id], i) => judgedCell(of, id, unit).padStart(widthOf(i))).join("");
  const units = ["angles °, Acker. %", `radius ${unit}`];
  const head = (line: 0 | 1) =>
    `  ${units[line]}`.padEnd(nameColumns + 2) + judged.map(([words], i) => words[line].padStart(widthOf(i))).join("");
  const { row } = spotWithin(model, name, size);
  const { from, to } = windowOf(offered.length, row, Math.max(1, rows - 3));
  return [
    head(0),
    head(1),
    `  ${"as it is".padEnd(nameColumns)}${cells(study)}`,
    ...offered.slice(from, to).map((each, i): Line => {
      const isHere = from + i === row;
      const isMore = (i === 0 && from > 0 && "↑") || (from + i === to - 1 && to < offered.length && "↓") || " ";
      const text = `${isHere ? ">" : isMore} ${each.key.padEnd(nameColumns)}${cells(each.after)}`;
      return isHere ? [{ text, look: "marked" }] : text;
    }),
  ];
}

/** In the place of remedies while there is none. */
const nothingYet = {
  running: "Working out what would help ...",
  stopped: "Stopped before a remedy was found. Another view and back begins it again.",
} as const;

/** How long the rods are then, which the remedy asks for wherever they are recut. */
function rodsAfter({ after }: Remedy, length: Length): string {
  const { left, right } = after.rodLengths;
  return `Rods then ${length(left)} left, ${length(right)} right.`;
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { study } = model.bench;
  const { offered } = remediesOf(model);
  const { row } = spotWithin(model, name, size);
  const how = progressWords(model.work?.key === keyOf(model) ? model.work : null);
  const count = `${offered.length === 0 ? "" : ` (${row + 1} of ${offered.length})`}${how}`;
  const title = heading(model, room.columns, `WHY ARE MY LOCKS UNEQUAL?${count}`, `LOCKS${count}`, "LOCKS");
  if ("refused" in study) return null;
  const length = sayer(model.display);
  const width = room.columns - 2;
  const indent = (words: string) => wrapped(words, width).map((line) => ` ${line}`);
  const { column, uprights, shared } = answersOf(model);
  const sentence = shareSentence({ study, shares: lockSharesOf(study) }, length, sharedBy[shared], model.display.unit);
  const ended = stopsWords(study);
  const why = indent(`${sentence} (w: ${others[shared]}).${ended === null ? "" : ` Stops: ${ended}.`}`);
  const toRack = `a: column can follow the rack? ${said[column]}. `;
  const asked = ` ${study.inputKind === "rack" ? toRack : ""}n: uprights to be made? ${said[uprights]}.`;
  const remedy = remedyHere(model);
  const state = model.work?.key === keyOf(model) ? model.work.state : "running";
  const what = remedy === undefined ? [] : indent(`${remedy.title(fineOf(model))}. ${rodsAfter(remedy, length)}`);
  // Where room is short the two questions go first: the keys below the view still ask them.
  const left = room.rows - 1 - why.length - what.length;
  const questions = left > fewestRows ? [asked] : [];
  const list =
    remedy === undefined
      ? (state === "done" ? whyNothing(study, remediesOf(model)) : [nothingYet[state]]).flatMap(indent)
      : table(model, study, left - questions.length);
  const lines = [...why, ...questions, ...list, ...what];
  return <Lines columns={room.columns} lines={[title, ...filled(lines, room.rows - 1)]} />;
}
