import { poseFigures, wheelFigures } from "../../measures/figures.ts";
import { placeOf } from "../../measures/span.ts";
import type { Study } from "../../measures/study.ts";
import { inputPlace, travelPlace } from "../../output/words.ts";
import { type Cell, type Cells, cellAt, type MapOf, mapJob } from "../../solve/map.ts";
import { formatLength } from "../../vehicle/units/format.ts";
import { type FigureSayer, figureSayer, sayer, styleOf } from "../lengths.ts";
import type { Model, Spot } from "../model.ts";
import { turn } from "../turn.ts";
import { heading } from "../view/heading.ts";
import { filled, type Line, type Piece } from "../view/Lines.tsx";
import { spaceFor } from "../view/space.ts";
import { fitting } from "../view/wrap.ts";
import { cursorMoves, type MapPage, odd } from "./mapPage.ts";
import { spotOf, spotWithin, withSpot } from "./spot.ts";
import { progressWords } from "./work.ts";

/** The cursor over the map, and which number is mapped. */
const name = "Map";
const choiceName = "Map: number";
const labelColumns = 10;
const mostColumns = 101;
const mostRows = 31;
/** Rows beside the map: heading, ends of the steering, scale. */
const otherRows = 3;

/** From the least to the most; each is another character where only ASCII can be shown. */
export const shades = ["·", "░", "▒", "█"] as const;
const nothing = " ";
const open = "x";
const wheelsGlyph = "o";

/** What can be mapped: every figure of a wheel, left and right, and every figure of both. */
const choices: readonly Pick<MapOf, "figure" | "wheel">[] = [
  ...wheelFigures.flatMap((figure) => (["left", "right"] as const).map((wheel) => ({ figure, wheel }))),
  ...poseFigures.map((figure) => ({ figure, wheel: "left" as const })),
];

function chosen(model: Model): Pick<MapOf, "figure" | "wheel"> {
  return choices[spotOf(model, choiceName).page % choices.length] ?? choices[0];
}

/** The driver's left on the left, bump at the top. */
function mapOf(model: Model, study: Study): MapOf {
  const { columns, rows } = spaceFor(model, false).room;
  const { furthestInput, wheelTravel } = study;
  return {
    ...chosen(model),
    inputs: {
      from: furthestInput.left,
      to: -furthestInput.right,
      rows: odd(Math.min(mostColumns, columns - labelColumns - 1)),
    },
    travels: {
      from: wheelTravel.bump,
      to: -wheelTravel.droop,
      rows: study.suspended ? odd(Math.min(mostRows, rows - otherRows)) : 1,
    },
  };
}

const size = (model: Model) => {
  const { study } = model.bench;
  if ("refused" in study) return { rows: 1, columns: 1 };
  const { inputs, travels } = mapOf(model, study);
  return { rows: travels.rows, columns: inputs.rows };
};

/** Any number over all of steering and travel, as shades. */
export const rangePage: MapPage = {
  name: "any number over steering and travel",
  title: (model) => labelOf(chosen(model)),
  size,
  lines: (model, columns, rows) => body(model, columns, rows),
  explain,
  take: null,
  move: cursorMoves(name, size),
  other: (ways) => (model) => {
    const page = (spotOf(model, choiceName).page + ways + choices.length) % choices.length;
    return turn(withSpot(model, choiceName, { page }));
  },
  work: (model) => {
    const { study, car } = model.bench;
    if ("refused" in study) return null;
    const asked = mapOf(model, study);
    const { figure, wheel, inputs, travels } = asked;
    return {
      key: [name, figure.id, wheel, inputs.rows, travels.rows, car.text].join("\n"),
      job: () => mapJob(study, asked),
    };
  },
};

function labelOf({ figure, wheel }: Pick<MapOf, "figure" | "wheel">): string {
  return figure.of === "wheel" ? `${figure.label}, ${wheel} wheel` : figure.label;
}

/** Where the cursor is, on the grid of the map. */
function placeHere(model: Model, asked: MapOf): { readonly input: number; readonly travel: number } {
  const spot = spotWithin(model, name, size);
  return { input: placeOf(asked.inputs, spot.column), travel: placeOf(asked.travels, spot.row) };
}

function explain(model: Model): string {
  const { study } = model.bench;
  if ("refused" in study) return "";
  const asked = mapOf(model, study);
  const { input, travel } = placeHere(model, asked);
  const length = sayer(model.display);
  const cell = cellAt(study, asked, input, travel);
  const value = cellText(asked, cell, figureSayer(model.display));
  const { sign, explanation } = asked.figure;
  const where = `${inputPlace(study, input, length).replace(" of its middle", "")}, ${travelPlace(travel, length)}`;
  return `${labelOf(asked)} at ${where}: ${value}${pinnedWords(model, study, asked, value)}${sign === "" ? "" : ` (${sign})`}. ${explanation}`;
}

function cellText({ figure }: MapOf, cell: Cell, say: FigureSayer): string {
  return cell === "open" ? "does not reach" : cell === null ? "says nothing here" : say(cell, figure.kind);
}

/** What the pinned car has at the same place: ", pinned 3.1°"; "" where none is pinned, or it has the same. */
function pinnedWords(model: Model, study: Study, asked: MapOf, value: string): string {
  const was = model.pin?.study;
  if (was === undefined || "refused" in was || was.inputKind !== study.inputKind) return "";
  const { input, travel } = placeHere(model, asked);
  const words = cellText(asked, cellAt(was, asked, input, travel), figureSayer(model.display));
  return words === value ? "" : `, pinned ${words}`;
}

/** Where the wheels stand now, on the grid of the map. */
function wheelsOn({ place }: Model, { inputs, travels, wheel }: MapOf): Pick<Spot, "row" | "column"> {
  const nearest = (value: number, { from, to, rows }: MapOf["inputs"]) =>
    rows < 2 || from === to ? 0 : Math.round(((value - from) / (to - from)) * (rows - 1));
  return { row: nearest(place[wheel], travels), column: nearest(place.input, inputs) };
}

function body(model: Model, columns: number, rows: number): readonly Line[] {
  const { study } = model.bench;
  if ("refused" in study) return [heading(model, columns, "MAP")];
  const asked = mapOf(model, study);
  const cells = (model.work?.result ?? []) as Cells;
  const label = labelOf(asked);
  return [
    heading(model, columns, `${label}${progressWords(model.work)}`, label),
    ...filled([...shaded(model, study, asked, cells), ...ends(study, asked), scale(model, asked, cells)], rows - 1),
  ];
}

/** The least and the most of the cells; null while there is none. */
function range(cells: Cells): readonly [number, number] | null {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const cell of cells) {
    if (typeof cell !== "number") continue;
    low = Math.min(low, cell);
    high = Math.max(high, cell);
  }
  return low <= high ? [low, high] : null;
}

function shadeOf(cell: Cell | undefined, span: readonly [number, number] | null): string {
  if (cell === undefined || cell === null || span === null) return nothing;
  if (cell === "open") return open;
  const [low, high] = span;
  const share = high > low ? (cell - low) / (high - low) : 0;
  return shades[Math.min(shades.length - 1, Math.floor(share * shades.length))] ?? nothing;
}

function shaded(model: Model, study: Study, asked: MapOf, cells: Cells): readonly Line[] {
  const { inputs, travels } = asked;
  const spot = spotWithin(model, name, size);
  const span = range(cells);
  const style = styleOf(model.display);
  const wheels = wheelsOn(model, asked);
  return Array.from({ length: travels.rows }, (_, row): Line => {
    const all = Array.from({ length: inputs.rows }, (__, column) => shadeOf(cells[row * inputs.rows + column], span));
    const travel = placeOf(travels, row);
    const isNamed = row === 0 || row === travels.rows - 1 || 2 * row === travels.rows - 1;
    const label = isNamed && study.suspended ? formatLength(travel, style) : "";
    const head = `${label.padStart(labelColumns - 1)}|`;
    if (row === wheels.row) all[wheels.column] = wheelsGlyph;
    if (row !== spot.row) return head + all.join("");
    const cursor: Piece = { text: "◆", look: "marked" };
    return [head, all.slice(0, spot.column).join(""), cursor, all.slice(spot.column + 1).join("")];
  });
}

function ends({ inputKind }: Study, { inputs }: MapOf): readonly Line[] {
  const [left, right] = [`${inputKind} full left`, "full right"];
  const middle = `${wheelsGlyph} the wheels now`;
  const room = inputs.rows - left.length - right.length;
  const before = Math.max(1, Math.floor((room - middle.length) / 2));
  const between = `${" ".repeat(before)}${middle}`.padEnd(room);
  return [`${" ".repeat(labelColumns)}${left}${between}${right}`];
}

/** What each shade stands for. */
function scale(model: Model, asked: MapOf, cells: Cells): Line {
  const span = range(cells);
  if (span === null) return cells.length === 0 ? "" : " This number says nothing anywhere here.";
  const [low, high] = span;
  const say = figureSayer(model.display);
  const { kind } = asked.figure;
  const ends = shades.map((_, index) => say(low + ((high - low) * (index + 1)) / shades.length, kind));
  const from = say(low, kind);
  const bands = shades.map((shade, index) => `${shade} to ${ends[index]}`);
  const known = `from ${from}: ${bands.join("  ")}`;
  return ` ${fitting([`${known}  ${open} does not reach`, known, `${from} to ${ends.at(-1)}`], model.columns - 2)}`;
}
