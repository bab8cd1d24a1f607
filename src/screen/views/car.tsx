import { labelsOf } from "../../vehicle/labels.ts";
import { leftOut } from "../../vehicle/left-out.ts";
import { notesOf } from "../../vehicle/notes.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { type SectionValue, sectionValues } from "../../vehicle/section-values.ts";
import { sectionNames } from "../../vehicle/sections.ts";
import { formatRatio } from "../../vehicle/units/format.ts";
import { adjustActs } from "../acts/adjust.ts";
import { askLabel } from "../acts/line.ts";
import { type Adjustable, adjustableOf, adjustables, valueNow, whyFixed } from "../adjust.ts";
import { isStarting } from "../frontEnd.ts";
import { bareValue } from "../lengths.ts";
import type { Model } from "../model.ts";
import { type Act, turn } from "../turn.ts";
import { windowOf } from "../view/AdjustList.tsx";
import { heading } from "../view/heading.ts";
import { filled, type Line, Lines, type Piece } from "../view/Lines.tsx";
import { fitting, wrapped } from "../view/wrap.ts";
import { whyNotAdjusted } from "../why.ts";
import { spotWithin, withSpot } from "./spot.ts";
import type { Room, View, ViewKey } from "./view.ts";

const labelColumns = 34;
const valueColumns = 11;

/** Every line of the car in the order of its file: the whole car, its front end, its steering. */
function linesOf({ bench }: Pick<Model, "bench">): readonly Adjustable[] {
  const order = quantitiesOf(bench.car.form).map(({ pair }) => pair);
  return [...adjustables(bench.car)].sort((a, b) => order.indexOf(a.pair) - order.indexOf(b.pair));
}

const name = "Car";

/** Which value of an optional section the cursor is on, from 1 on; 0 while it is on a line that every car has. */
function sectionRow(model: Model): number {
  const size = () => ({ rows: sectionValues(model.bench.car).length + 1, columns: 1 });
  return spotWithin(model, name, size).row;
}

function sectionHere(model: Model): SectionValue | undefined {
  return sectionValues(model.bench.car)[sectionRow(model) - 1];
}

/** Along all lines: first those that every car has, then what stands in the optional sections. */
function selectBy(ways: number): Act {
  return (model) => {
    const list = linesOf(model);
    const all = list.length + sectionValues(model.bench.car).length;
    const row = sectionRow(model);
    const at = row > 0 ? list.length + row - 1 : list.findIndex(({ pair }) => pair === model.selected);
    const next = Math.min(all - 1, Math.max(0, at + ways));
    const selected = list[next]?.pair ?? model.selected;
    return turn(withSpot({ ...model, selected }, name, { row: Math.max(0, next - list.length + 1) }));
  };
}

/** Group and name of a value of an optional section: "shock: both" and "top, ahead". */
function sectionWords({ path }: SectionValue): readonly [group: string, label: string] {
  const [section = "", ...below] = path;
  const isSide = ["both", "left", "right"].includes(below[0] ?? "");
  return isSide ? [`${section}: ${below[0]}`, below.slice(1).join(", ")] : [section, below.join(", ")];
}

/** Asks for another text of the value under the cursor. */
const typeSection: Act = (model) => {
  const value = sectionHere(model);
  if (value === undefined) return turn(model);
  const words = `${sectionWords(value).join(", ")} (now ${value.source})`;
  const hint = `Type ${value.expected}. ${allowedWords(value, model)}`;
  const asks = { about: "section", path: value.path, words, hint } as const;
  return turn({ ...model, focus: { on: "line", asks, text: "", complaint: null } });
};

const whyNoSteps = (model: Model) =>
  sectionHere(model) === undefined
    ? whyNotAdjusted(model)
    : "Enter types this one; + and - change what the title names.";

/** Lines of a note are shown, and typed, with this between them. */
const lineBreak = " | ";

const page = 8;

const own: readonly ViewKey[] = [
  { keys: ["up"], shown: "↑", footer: null, help: "up the list", act: selectBy(-1) },
  { keys: ["down"], shown: "↓", footer: "↑↓ choose", help: "down the list", act: selectBy(1) },
  { keys: ["{"], shown: "{", footer: null, help: "up by eight lines", act: selectBy(-page) },
  { keys: ["}"], shown: "}", footer: "{} faster", help: "down by eight lines", act: selectBy(page) },
  { keys: ["left"], shown: "←", footer: null, help: "less, by one step", off: whyNoSteps, act: adjustActs.less },
  {
    keys: ["right"],
    shown: "→",
    footer: "←→ change",
    help: "more, by one step",
    off: whyNoSteps,
    act: adjustActs.more,
  },
  {
    keys: ["enter"],
    shown: "Enter",
    footer: "Enter type",
    help: "type what stands in an optional section of the file, such as shock or rod-ends",
    off: (model) => (sectionHere(model) === undefined ? "The cursor is on no value of an optional section." : null),
    act: typeSection,
  },
  {
    keys: ["t"],
    shown: "t",
    footer: "t title",
    help: "write title, job, date and what was built otherwise than drawn, one after the other",
    act: (model) => askLabel(model, "title"),
  },
  {
    keys: ["n"],
    shown: "n",
    footer: "n notes",
    help: "write the notes that are kept in the car's file; | begins a new line",
    act: (model) => {
      const text = notesOf(model.bench.car).split("\n").join(lineBreak);
      return turn({ ...model, focus: { on: "line", asks: { about: "notes" }, text, complaint: null } });
    },
  },
];

/** Every number of the car's file, as the file groups them. */
export const car: View = {
  name,
  key: "7",
  help: "every number of the car's file with its range, what the file leaves out, and the notes",
  keys: own,
  alone: () => true,
  explain,
  Body,
};

function explain(model: Model): string {
  const value = sectionHere(model);
  if (value !== undefined) return `${value.help} ${allowedWords(value, model)} In the file: ${value.path.join(".")}.`;
  const line = adjustableOf(model.bench.car, model.selected);
  const guess = isStarting(model.bench.car, line) ? "STARTING VALUE: measure it; x once it is right. " : "";
  const [first] = line.quantities;
  const place = first === undefined ? "" : ` In the file: ${(first.shared ?? first.path).join(".")}.`;
  return guess + (whyFixed(model.bench.car, line, model.sides) ?? first?.help ?? "") + place;
}

function Body({ model, room }: { readonly model: Model; readonly room: Room }) {
  const { bench } = model;
  const { columns } = room;
  const notes = notesLines(model, columns, Math.max(1, room.rows - 2 - leastList));
  const rows = room.rows - 2 - notes.length;
  const list = linesOf(model);
  const values = sectionValues(bench.car);
  const row = sectionRow(model);
  const selected = row > 0 ? list.length + row - 1 : list.findIndex(({ pair }) => pair === model.selected);
  const missing = leftOut(bench.car);
  const head = `  ${"".padEnd(labelColumns)}${"left".padStart(valueColumns)}${"right".padStart(valueColumns)}  from .. to`;
  const said = [
    ...list.map((line, at) => ({ group: groupOf(line), text: lineText(model, line, at === selected, missing) })),
    ...values.map((value, at) => ({
      group: sectionWords(value)[0],
      text: sectionText(model, value, list.length + at === selected, columns),
    })),
  ];
  const all = said.flatMap(({ group, text }, at): readonly Entry[] => {
    const entry: Entry = { group, line: at === selected ? [{ text, look: "marked" }] : text };
    return said[at - 1]?.group === group ? [entry] : [{ group, line: headingOf(group) }, entry];
  });
  const here = all.findIndex(({ line }) => typeof line !== "string" && line.some((piece) => isMarked(piece)));
  const { from, to } = windowOf(all.length, here, rows);
  // The first row always names the group of those below it.
  const lines = all.slice(from, to).map(({ group, line }, at) => (at === 0 && from !== here ? headingOf(group) : line));
  const title = heading(model, columns, `THE CAR'S FILE, ${selected + 1} of ${said.length}`, "THE CAR'S FILE");
  return (
    <Lines columns={columns} lines={[title, [{ text: head, look: "strong" }], ...filled(lines, rows), ...notes]} />
  );
}

function lineText(model: Model, line: Adjustable, isHere: boolean, missing: ReadonlySet<string>): string {
  const { bench, display } = model;
  const values = line.quantities.map((each) => bareValue(valueNow(bench, each), each, display).padStart(valueColumns));
  const cells = values.length === 1 ? `${values[0]}${"".padEnd(valueColumns)}` : values.join("");
  const mark = `${isHere ? ">" : " "}${isStarting(bench.car, line) ? "~" : " "}`;
  const isDefault = line.quantities.every(({ id }) => missing.has(id));
  const [first] = line.quantities;
  const isRod = first?.path.slice(-2).join(".") === "tie-rod.length";
  const range = first === undefined ? "" : rangeWords(first, model);
  return `${mark}${line.label.slice(0, labelColumns - 1).padEnd(labelColumns)}${cells}  ${range}${isDefault ? (isRod ? " cut to fit" : " default") : ""}`;
}

/** A value of an optional section: its text as the file has it, and what may stand there. */
function sectionText(model: Model, value: SectionValue, isHere: boolean, columns: number): string {
  const [, label] = sectionWords(value);
  const cells = value.source.padStart(valueColumns).padEnd(2 * valueColumns);
  const head = `${isHere ? ">" : " "} ${fitting([label], labelColumns - 1).padEnd(labelColumns)}${cells}  `;
  return head + fitting([rangeOf(value, model) ?? value.expected], Math.max(1, columns - head.length - 1));
}

/** The sensible range of a number of an optional section, in the file's own unit; null of anything else. */
function rangeOf({ range }: SectionValue, { bench, display }: Model): string | null {
  return range === null ? null : rangeWords(range, { display: { ...display, unit: bench.car.form.units } });
}

/** "From 1 to 39 in."; "" where it is no number. */
function allowedWords(value: SectionValue, model: Model): string {
  const range = rangeOf(value, model);
  return range === null
    ? ""
    : `From ${range.replace("..", " to ")}; a bare number is in ${value.range?.kind === "angle" ? "degrees" : "the file's unit"}.`;
}

/** The sensible range: beyond it a file is refused. To whole units, since it is never met on the bench. */
function rangeWords({ kind, low, high }: Pick<Quantity, "kind" | "low" | "high">, { display }: Pick<Model, "display">) {
  if (kind === "ratio") return `${formatRatio(low)}..${formatRatio(high)}`;
  const size = kind === "angle" ? Math.PI / 180 : display.unit === "in" ? 25.4 : 1;
  const unit = kind === "angle" ? "°" : ` ${display.unit}`;
  return `${Math.round(low / size)}..${Math.round(high / size)}${unit}`;
}

/** "Job 12, 2 May; as built: left tab bent. ": what the file says of whose car it is; "" where it says nothing. */
function labelsLine({ bench }: Model): string {
  const { job, date, "as-built": built } = labelsOf(bench.car);
  const said = [job, date, built === "" ? "" : `as built: ${built}`].filter((each) => each !== "");
  return said.length === 0 ? "" : `${said.join(", ").replaceAll("\n", " ")}. `;
}

/** Title, notes, and the optional sections that the file does not have, in as many lines as it takes up to `most`. */
function notesLines(model: Model, columns: number, most: number): readonly Line[] {
  const { bench } = model;
  const notes = notesOf(bench.car).split("\n").join(lineBreak);
  const absent = sectionNames.filter((each) => bench.car.sections[each] === null);
  const begin = absent.length === 0 ? "" : ` Not in the file, ? shows how to begin one: ${absent.join(", ")}.`;
  const text = `${labelsLine(model)}Notes: ${notes === "" ? "none, n writes them." : notes}${begin}`;
  const lines = wrapped(text, columns - 2);
  const shown =
    lines.length <= most
      ? lines
      : [...lines.slice(0, most - 1), fitting([lines.slice(most - 1).join(" ")], columns - 2)];
  return shown.map((line) => ` ${line}`);
}

/** Rows of the list that stay, however long the notes. */
const leastList = 6;

/** A row of the list: a number, or the heading of its group. */
interface Entry {
  readonly group: string;
  readonly line: Line;
}

function isMarked(piece: Piece): boolean {
  return typeof piece !== "string" && piece.look === "marked";
}

function headingOf(group: string): Line {
  return [{ text: ` ${group}`, look: "strong" }];
}

/** Where in the file a number stands: "front: upper-arm", "steering: rack", "the whole car". */
function groupOf({ quantities }: Adjustable): string {
  const [first] = quantities;
  if (first === undefined) return "";
  const [top = "", ...more] = first.shared ?? first.path;
  const [part = ""] = more.filter((each) => !["both", "left", "right"].includes(each));
  return top === "front" || top === "steering" ? `${top}: ${part}` : "the whole car";
}
