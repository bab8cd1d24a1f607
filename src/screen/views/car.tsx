import { labelsOf } from "../../vehicle/labels.ts";
import { leftOut } from "../../vehicle/left-out.ts";
import { notesOf } from "../../vehicle/notes.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
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
import type { Room, View, ViewKey } from "./view.ts";

const labelColumns = 34;
const valueColumns = 11;

/** Every line of the car in the order of its file: the whole car, its front end, its steering. */
function linesOf({ bench }: Pick<Model, "bench">): readonly Adjustable[] {
  const order = quantitiesOf(bench.car.form).map(({ pair }) => pair);
  return [...adjustables(bench.car)].sort((a, b) => order.indexOf(a.pair) - order.indexOf(b.pair));
}

function selectBy(ways: number): Act {
  return (model) => {
    const list = linesOf(model);
    const at = list.findIndex(({ pair }) => pair === model.selected);
    const next = list[Math.min(list.length - 1, Math.max(0, at + ways))];
    return turn({ ...model, selected: next?.pair ?? model.selected });
  };
}

/** Lines of a note are shown, and typed, with this between them. */
const lineBreak = " | ";

const page = 8;

const own: readonly ViewKey[] = [
  { keys: ["up"], shown: "↑", footer: null, help: "up the list", act: selectBy(-1) },
  { keys: ["down"], shown: "↓", footer: "↑↓ choose", help: "down the list", act: selectBy(1) },
  { keys: ["{"], shown: "{", footer: null, help: "up by eight lines", act: selectBy(-page) },
  { keys: ["}"], shown: "}", footer: "{} faster", help: "down by eight lines", act: selectBy(page) },
  { keys: ["left"], shown: "←", footer: null, help: "less, by one step", off: whyNotAdjusted, act: adjustActs.less },
  {
    keys: ["right"],
    shown: "→",
    footer: "←→ change",
    help: "more, by one step",
    off: whyNotAdjusted,
    act: adjustActs.more,
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
  name: "Car",
  key: "7",
  help: "every number of the car's file with its range, what the file leaves out, and the notes",
  keys: own,
  alone: () => true,
  explain,
  Body,
};

function explain(model: Model): string {
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
  const selected = list.findIndex(({ pair }) => pair === model.selected);
  const missing = leftOut(bench.car);
  const head = `  ${"".padEnd(labelColumns)}${"left".padStart(valueColumns)}${"right".padStart(valueColumns)}  from .. to`;
  const all = list.flatMap((line, at): readonly Entry[] => {
    const group = groupOf(line);
    const previous = list[at - 1];
    const text = lineText(model, line, at === selected, missing);
    const entry: Entry = { group, line: at === selected ? [{ text, look: "marked" }] : text };
    return previous !== undefined && groupOf(previous) === group ? [entry] : [{ group, line: headingOf(group) }, entry];
  });
  const here = all.findIndex(({ line }) => typeof line !== "string" && line.some((piece) => isMarked(piece)));
  const { from, to } = windowOf(all.length, here, rows);
  // The first row always names the group of those below it.
  const lines = all.slice(from, to).map(({ group, line }, at) => (at === 0 && from !== here ? headingOf(group) : line));
  const title = heading(model, columns, `THE CAR'S FILE, ${selected + 1} of ${list.length} numbers`, "THE CAR'S FILE");
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

/** The sensible range: beyond it a file is refused. To whole units, since it is never met on the bench. */
function rangeWords(quantity: Quantity, { display }: Model): string {
  const { kind, low, high } = quantity;
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

/** Title, notes, and what else the file has that is not a number of the list, in as many lines as it takes up to `most`. */
function notesLines(model: Model, columns: number, most: number): readonly Line[] {
  const { bench } = model;
  const notes = notesOf(bench.car).split("\n").join(lineBreak);
  const sections = sectionNames.filter((name) => bench.car.sections[name] !== null);
  const also = sections.length === 0 ? "" : ` Also in the file: ${sections.join(", ")}.`;
  const text = `${labelsLine(model)}Notes: ${notes === "" ? "none, n writes them." : notes}${also}`;
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
