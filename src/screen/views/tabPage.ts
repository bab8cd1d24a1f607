import { carFigures } from "../../measures/carFigures.ts";
import type { FigureKind } from "../../measures/figure.ts";
import { placeOf } from "../../measures/span.ts";
import { fixed } from "../../output/words.ts";
import type { TabMapOf } from "../../solve/tab-map/tabMap.ts";
import { type NoGo, noGos, standIn, type TabCell, type TabMap, tabsAt } from "../../solve/tab-map/tabPlane.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { setValues } from "../../vehicle/edits/values.ts";
import { indexOf } from "../../vehicle/quantities.ts";
import { formatLength } from "../../vehicle/units/format.ts";
import { changed } from "../bench.ts";
import { figureSayer, sayer, styleOf } from "../lengths.ts";
import type { Model } from "../model.ts";
import { stepsFor } from "../steps.ts";
import { type Act, turn } from "../turn.ts";
import { heading } from "../view/heading.ts";
import { beside, filled, type Line, type Piece } from "../view/Lines.tsx";
import { spaceFor } from "../view/space.ts";
import { fitting } from "../view/wrap.ts";
import { type MapPage, odd } from "./mapPage.ts";
import { shades } from "./rangePage.ts";
import { spotOf, withSpot } from "./spot.ts";
import { lateJob, progressWords } from "./work.ts";

/** The cursor, from the tab's own place: rows toward the front or up, columns outboard. Its page is the number mapped. */
const spotName = "Map: tab";
/** Its page is 1 where the plane is out by up. */
const planeName = "Map: plane";

const labelColumns = 9;
const panelColumns = 29;
const mostColumns = 41;
const mostRows = 21;
/** Below the map: its ends, a row more of the cursor's numbers, its scale, its no-go areas. */
const wordRows = 4;
/** A column is so many steps wide, and a row twice that, as characters are twice as high as wide. */
const stepsAcross = 2;
const stepsDown = 4;

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

const noGoWords: Readonly<Record<NoGo, string>> = {
  "does not close": "does not reach all steering and travel",
  "dead point": "dead point: rod-to-arm angle too small",
  rim: "the rod meets the rim",
  tyre: "the rod meets the tyre",
  shock: "the rod meets the shock",
  arm: "the rod meets an arm",
  "frame tube": "the rod meets a frame tube",
};

/** A number that can be mapped, in the order of the job's values. */
interface Choice {
  readonly label: string;
  readonly kind: FigureKind | "score";
  readonly explanation: string;
  /** True where only its size counts: the nearer to nothing, the better. */
  readonly bySize: boolean;
}

const score: Choice = {
  label: "Total score",
  kind: "score",
  explanation:
    "What all goals miss together, by the file's find, targets and limits or else common practice: lower is better, and a must that is missed costs most by far.",
  bySize: false,
};

const choices: readonly Choice[] = [
  score,
  ...carFigures.map(({ id, label, kind, explanation }) => ({
    label,
    kind,
    explanation,
    bySize: /^(worst|lockDifference|zero)/.test(id),
  })),
];

function chosen(model: Model): { readonly choice: Choice; readonly at: number } {
  const at = spotOf(model, spotName).page % choices.length;
  return { choice: choices[at] ?? score, at };
}

/** What is mapped: the tabs of the sides that a change acts on, about where they stand. */
function planeOf(model: Model): Omit<TabMapOf, "read"> {
  const { columns, rows } = spaceFor(model, false).room;
  const steps = stepsFor("length", model.display);
  const step = (steps[model.display.step] ?? steps[0]).size;
  const span = (count: number, size: number, way: 1 | -1) => {
    const half = ((odd(count) - 1) / 2) * size;
    return { from: -way * half, to: way * half, rows: odd(count) };
  };
  return {
    wheels: model.sides === "both" ? ["left", "right"] : [model.sides],
    plane: spotOf(model, planeName).page === 1 ? "up" : "ahead",
    outs: span(Math.min(mostColumns, columns - labelColumns - panelColumns - 1), stepsAcross * step, 1),
    others: span(Math.min(mostRows, rows - 1 - wordRows), stepsDown * step, -1),
  };
}

/** Where the cursor stands: its row and column on the map. */
function cursorOf(model: Model): { readonly row: number; readonly column: number } {
  const { outs, others } = planeOf(model);
  const { row, column } = spotOf(model, spotName);
  const within = (at: number, rows: number) => Math.min(rows - 1, Math.max(0, (rows - 1) / 2 + at));
  return { row: within(row, others.rows), column: within(column, outs.rows) };
}

/** How far the cursor is from where the tab stands, mm. */
function deltaOf(model: Model): { readonly out: number; readonly other: number } {
  const { outs, others } = planeOf(model);
  const { row, column } = cursorOf(model);
  return { out: placeOf(outs, column), other: placeOf(others, row) };
}

function mapNow({ work }: Model): TabMap | null {
  return (work?.result ?? null) as TabMap | null;
}

function cellHere(model: Model): TabCell | undefined {
  const { row, column } = cursorOf(model);
  return mapNow(model)?.cells[row * planeOf(model).outs.rows + column];
}

/** Why Enter does not move the tab. */
export function whyTabStays(model: Model): string | null {
  if ("refused" in model.bench.study) return "The front end does not go together: there is no map.";
  const { out, other } = deltaOf(model);
  return out === 0 && other === 0 ? "The tab is there already." : null;
}

export function whyPlaneStays(model: Model): string | null {
  return "refused" in model.bench.study ? "The front end does not go together: there is no map." : null;
}

/** The tab moved to the cursor, as one change; the map is then about its new place. */
const put: Act = (model) => {
  const asked = planeOf(model);
  const { out, other } = deltaOf(model);
  const { car } = model.bench;
  const values = tabsAt(car, asked, out, other);
  const sides = model.sides === "both" ? "both sides" : `${model.sides} only`;
  const where = placeWords(model, asked.wheels[0], values);
  const done = changed(model, setValues(car, values), `Tie-rod tab, ${sides}: moved to ${where}`);
  return done.model.bench.car === car
    ? done
    : { ...done, model: withSpot(done.model, spotName, { row: 0, column: 0 }) };
};

/** "19 3/4 in out, 4 1/2 in behind the axle": where the tab of a wheel is with these values. */
function placeWords(
  { bench: { car }, display }: Model,
  wheel: Wheel,
  values: Readonly<Record<string, number>>,
): string {
  const length = sayer(display);
  const [out, ahead, up] = ["out", "ahead", "up"].map((way) => {
    const id = `${wheel}.tie-rod.outer.${way}`;
    return values[id] ?? car.numbers[indexOf(id)];
  });
  const along = `${length(Math.abs(ahead))} ${ahead < 0 ? "behind" : "ahead of"} the axle`;
  return `${length(out)} out, ${along}, ${length(up)} up`;
}

const otherPlane: Act = (model) =>
  turn(
    withSpot(withSpot(model, spotName, { row: 0, column: 0 }), planeName, { page: 1 - spotOf(model, planeName).page }),
  );

const page: MapPage = {
  name: "where may the tie-rod tab go",
  title: (model) => chosen(model).choice.label,
  size: (model) => ({ rows: planeOf(model).others.rows, columns: planeOf(model).outs.rows }),
  lines,
  explain,
  take: null,
  move: (down, right) => (model) => {
    const { outs, others } = planeOf(model);
    const { row, column } = cursorOf(model);
    const from = (at: number, rows: number) => Math.min(rows - 1, Math.max(0, at)) - (rows - 1) / 2;
    return turn(
      withSpot(model, spotName, { row: from(row + down, others.rows), column: from(column + right, outs.rows) }),
    );
  },
  other: (ways) => (model) =>
    turn(withSpot(model, spotName, { page: (chosen(model).at + ways + choices.length) % choices.length })),
  work: (model) => {
    const { study, car } = model.bench;
    if ("refused" in study) return null;
    const asked = planeOf(model);
    const { wheels, plane, outs, others } = asked;
    return {
      key: [spotName, wheels.join(), plane, outs.rows, outs.to, others.rows, others.from, car.text].join("\n"),
      job: () =>
        lateJob(async () => {
          const [{ tabMapJob }, { tabNumbers }] = await Promise.all([
            import("../../solve/tab-map/tabMap.ts"),
            import("../../solve/tab-map/tabNumbers.ts"),
          ]);
          return tabMapJob(study, { ...asked, read: tabNumbers(study) });
        }),
    };
  },
};

/** The page of the tab, and what its own keys do. */
export const tabPage = { page, put, plane: otherPlane } as const;

/** Writes the number that is mapped; a score has no unit. */
function choiceSayer(display: Model["display"], { kind }: Choice): (value: number | null | undefined) => string {
  const say = figureSayer(display);
  return (value) => {
    if (kind !== "score") return say(value, kind);
    return value === null || value === undefined ? "-" : fixed(value, value >= 100 ? 0 : 2);
  };
}

function explain(model: Model): string {
  const { study, car } = model.bench;
  if ("refused" in study) return "";
  const asked = planeOf(model);
  const { out, other } = deltaOf(model);
  const { choice, at } = chosen(model);
  const cell = cellHere(model);
  const place = placeWords(model, asked.wheels[0], tabsAt(car, asked, out, other));
  const value = cell === undefined ? "is being worked out" : choiceSayer(model.display, choice)(cell.values[at]);
  const noGo = cell?.noGo ? ` NO GO: ${noGoWords[cell.noGo]}.` : "";
  const lacks = mapNow(model)?.lacks ?? [];
  const unseen = lacks.length === 0 ? "" : ` Clearances need in the file: ${lacks.join("; ")}.`;
  const what = whyTabStays(model) === null ? " Enter moves it there, u takes that back; the checks then decide." : "";
  const tabs = model.sides === "both" ? "Both tabs" : model.sides === "left" ? "Left tab" : "Right tab";
  return `${tabs} at ${place}: ${choice.label} ${value}.${noGo}${what} ${choice.explanation}${unseen}`;
}

function readingOf({ choice, at }: { readonly choice: Choice; readonly at: number }, cell: TabCell | undefined) {
  const value = cell?.values[at] ?? null;
  return value !== null && choice.bySize ? Math.abs(value) : value;
}

/** Where one shade ends and the next begins: alike many places in each, so that one bad place does not hide the rest. */
function endsOf(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return shades.map((_, i) => sorted[Math.ceil(((i + 1) * sorted.length) / shades.length) - 1] ?? 0);
}

function lines(model: Model, columns: number, rows: number): readonly Line[] {
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
