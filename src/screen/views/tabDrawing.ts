import { carFigures } from "../../measures/carFigures.ts";
import { placeOf } from "../../measures/span.ts";
import type { TabMapOf } from "../../solve/tab-map/tabMap.ts";
import { type NoGo, noGos, standIn, type TabCell, type TabMap } from "../../solve/tab-map/tabPlane.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { formatLength } from "../../vehicle/units/format.ts";
import { figureSayer, sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, type Piece } from "../view/Lines.tsx";
import { fitting } from "../view/wrap.ts";
import { shades } from "./rangePage.ts";
import {
  type Choice,
  cellHere,
  choiceSayer,
  chosen,
  cursorOf,
  deltaOf,
  labelColumns,
  mapNow,
  planeOf,
  score,
} from "./tabPlan.ts";
import { progressWords } from "./work.ts";

/** How each no-go area is hatched; each is told in words below the map. */
const hatches: Readonly<Record<NoGo, string>> = {
  "does not close": "x",
  "dead point": "!",
  rim: "/",
  tyre: "=",
  shock: "$",
  arm: "%",
  "frame tube": "#",
};

function readingOf({ choice, at }: { readonly choice: Choice; readonly at: number }, cell: TabCell | undefined) {
  const value = cell?.values[at] ?? null;
  return value !== null && choice.bySize ? Math.abs(value) : value;
}

/** Where one shade ends and the next begins: alike many places in each, so that one bad place does not hide the rest. */
function endsOf(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return shades.map((_, i) => sorted[Math.ceil(((i + 1) * sorted.length) / shades.length) - 1] ?? 0);
}

export function lines(model: Model, columns: number, rows: number): readonly Line[] {
  const { study } = model.bench;
  if ("refused" in study) return [heading(model, columns, "TIE-ROD TAB")];
  const asked = planeOf(model);
  const map = mapNow(model);
  const { choice } = chosen(model);
  const sides = model.sides === "both" ? "both tabs" : `${model.sides} tab`;
  const title = `${choice.label}, ${sides} (Tab)`;
  const progress = progressWords(model.work);
  const cells = map?.cells ?? [];
  const values = cells.flatMap((cell) => {
    const value = cell?.noGo === null ? readingOf(chosen(model), cell) : null;
    return value === null ? [] : [value];
  });
  const ends = endsOf(values);
  const drawn = drawing(model, asked, cells, values.length === 0 ? [] : ends);
  const mapColumns = labelColumns + asked.outs.rows + 1;
  return [
    heading(model, columns, `${title}${progress}`, `${choice.label}${progress}`, `TAB${progress}`),
    ...filled(
      [
        ...beside([...drawn, axis(model, asked)], mapColumns, panel(model)),
        scale(model, choice, values, ends),
        legend(cells, columns),
      ],
      rows - 1,
    ),
  ];
}

function drawing(
  model: Model,
  { plane, wheels, outs, others }: Omit<TabMapOf, "read">,
  cells: TabMap["cells"],
  ends: readonly number[],
): readonly Line[] {
  const here = cursorOf(model);
  const style = styleOf(model.display);
  const from = model.bench.car.numbers[indexOf(`${wheels[0]}.tie-rod.outer.${plane}`)];
  const best = bestOf(model, cells);
  const glyph = (at: number): string => {
    const cell = cells[at] ?? cells[standIn(at, outs.rows)];
    if (cell === undefined) return " ";
    if (cell.noGo !== null) return hatches[cell.noGo];
    const value = readingOf(chosen(model), cell);
    if (value === null) return " ";
    if (at === best) return "*";
    const shade = ends.findIndex((end) => value <= end);
    return shades[shade < 0 ? shades.length - 1 : shade] ?? " ";
  };
  return Array.from({ length: others.rows }, (_, row): Line => {
    const all = Array.from({ length: outs.rows }, (__, column) => glyph(row * outs.rows + column));
    if (2 * row === others.rows - 1) all[(outs.rows - 1) / 2] = "o";
    const isNamed = row === 0 || row === others.rows - 1 || 2 * row === others.rows - 1;
    const label = isNamed ? formatLength(from + placeOf(others, row), style) : "";
    const head = `${label.padStart(labelColumns - 1)}|`;
    if (row !== here.row) return head + all.join("");
    const cursor: Piece = { text: "◆", look: "marked" };
    return [head, all.slice(0, here.column).join(""), cursor, all.slice(here.column + 1).join("")];
  });
}

/** The cell of the best value, of a number that is best at its least and once all are known; null where there is none. */
function bestOf(model: Model, cells: TabMap["cells"]): number | null {
  const now = chosen(model);
  if (model.work?.state !== "done" || !(now.choice.bySize || now.choice.kind === "score")) return null;
  let best: { readonly at: number; readonly value: number } | null = null;
  for (const [at, cell] of cells.entries()) {
    const value = cell?.noGo === null ? readingOf(now, cell) : null;
    if (value !== null && (best === null || value < best.value)) best = { at, value };
  }
  return best?.at ?? null;
}

/** What the numbers are called beside the map: the ends of their ids, for left and right. */
const told: readonly (readonly [name: string, left: string, right: string | null])[] = [
  ["Acker", "leftLockAckermann", "rightLockAckermann"],
  ["lock L-R", "lockDifferenceInner", null],
  ["toe", "worstToeAcrossTyreLeft", "worstToeAcrossTyreRight"],
  ["bounce", "worstBounceSteer", null],
  ["dead pt", "leastRodAngleLeft", "leastRodAngleRight"],
];

/** The cursor's numbers. */
function panel(model: Model): readonly Line[] {
  const length = sayer(model.display);
  const say = figureSayer(model.display);
  const cell = cellHere(model);
  const { out, other } = deltaOf(model);
  const { plane } = planeOf(model);
  const value = (id: string | null) => {
    const at = id === null ? -1 : carFigures.findIndex((each) => each.id === id);
    const figure = carFigures[at];
    // The score comes first.
    return figure === undefined ? "" : say(cell?.values[at + 1], figure.kind);
  };
  const by = (mm: number, more: string, less: string) =>
    mm === 0 ? "as is" : `${length(Math.abs(mm))} ${mm > 0 ? more : less}`;
  return [
    ` ${by(out, "out", "in")}, ${plane === "up" ? by(other, "up", "down") : by(other, "ahead", "back")}`,
    cell?.noGo
      ? [{ text: ` NO GO: ${cell.noGo}`, look: "bad" }]
      : ` score ${choiceSayer(model.display, score)(cell?.values[0])}, low is good`,
    ...told.map(([name, left, right]) => ` ${name.padEnd(8)} ${value(left).padEnd(9)} ${value(right)}`.trimEnd()),
  ];
}

function axis(model: Model, { plane, wheels, outs }: Omit<TabMapOf, "read">): Line {
  const style = styleOf(model.display);
  const from = model.bench.car.numbers[indexOf(`${wheels[0]}.tie-rod.outer.out`)];
  const [inner, outer] = [`${formatLength(from + outs.from, style)} out`, formatLength(from + outs.to, style)];
  const middle = "o the tab now";
  const room = outs.rows - inner.length - outer.length;
  const before = Math.max(1, Math.floor((room - middle.length) / 2));
  const between = `${" ".repeat(before)}${middle}`.padEnd(Math.max(middle.length + 2, room));
  return `${(plane === "up" ? "up ^" : "ahead ^").padStart(labelColumns - 1)} ${inner}${between}${outer} >`;
}

function scale(model: Model, choice: Choice, values: readonly number[], ends: readonly number[]): Line {
  if (values.length === 0) return model.work?.state === "done" ? " No place here is free of no-go." : "";
  const say = choiceSayer(model.display, choice);
  const from = say(Math.min(...values));
  const bands = ends.map((end, i) => `${shades[i]} to ${say(end)}`);
  const isDone = model.work?.state === "done";
  const best = isDone && (choice.bySize || choice.kind === "score") ? "  * best" : "";
  const known = `from ${from}: ${bands.join("  ")}`;
  return ` ${fitting([known + best, known, `${from} to ${say(ends.at(-1))}`], model.columns - 2)}`;
}

/** What each hatch that is seen stands for. */
function legend(cells: TabMap["cells"], columns: number): Line {
  const seen = new Set(cells.map((cell) => cell?.noGo));
  const words = noGos.filter((each) => seen.has(each)).map((each) => `${hatches[each]} ${each}`);
  const said = words.length === 0 ? [] : [` no go: ${words.join("  ")}`, ` ${words.join("  ")}`];
  return fitting([...said, ""], columns - 1);
}
