import { carFigures } from "../../measures/carFigures.ts";
import type { FigureKind } from "../../measures/figure.ts";
import { placeOf } from "../../measures/span.ts";
import { fixed } from "../../output/words.ts";
import type { TabMapOf } from "../../solve/tab-map/tabMap.ts";
import type { TabCell, TabMap } from "../../solve/tab-map/tabPlane.ts";
import { figureSayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { stepsFor } from "../steps.ts";
import { spaceFor } from "../view/space.ts";
import { odd } from "./mapPage.ts";
import { spotOf } from "./spot.ts";

/** The cursor, from the tab's own place: rows toward the front or up, columns outboard. Its page is the number mapped. */
export const spotName = "Map: tab";
/** Its page is 1 where the plane is out by up. */
export const planeName = "Map: plane";

export const labelColumns = 9;
const panelColumns = 29;
const mostColumns = 41;
const mostRows = 21;
/** Below the map: its ends, a row more of the cursor's numbers, its scale, its no-go areas. */
const wordRows = 4;
/** A column is so many steps wide, and a row twice that, as characters are twice as high as wide. */
const stepsAcross = 2;
const stepsDown = 4;

/** A number that can be mapped, in the order of the job's values. */
export interface Choice {
  readonly label: string;
  readonly kind: FigureKind | "score";
  readonly explanation: string;
  /** True where only its size counts: the nearer to nothing, the better. */
  readonly bySize: boolean;
}

export const score: Choice = {
  label: "Total score",
  kind: "score",
  explanation:
    "What all goals miss together, by the file's find, targets and limits or else common practice: lower is better, and a must that is missed costs most by far.",
  bySize: false,
};

export const choices: readonly Choice[] = [
  score,
  ...carFigures.map(({ id, label, kind, explanation }) => ({
    label,
    kind,
    explanation,
    bySize: /^(worst|lockDifference|zero)/.test(id),
  })),
];

export function chosen(model: Model): { readonly choice: Choice; readonly at: number } {
  const at = spotOf(model, spotName).page % choices.length;
  return { choice: choices[at] ?? score, at };
}

/** What is mapped: the tabs of the sides that a change acts on, about where they stand. */
export function planeOf(model: Model): Omit<TabMapOf, "read"> {
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
export function cursorOf(model: Model): { readonly row: number; readonly column: number } {
  const { outs, others } = planeOf(model);
  const { row, column } = spotOf(model, spotName);
  const within = (at: number, rows: number) => Math.min(rows - 1, Math.max(0, (rows - 1) / 2 + at));
  return { row: within(row, others.rows), column: within(column, outs.rows) };
}

/** How far the cursor is from where the tab stands, mm. */
export function deltaOf(model: Model): { readonly out: number; readonly other: number } {
  const { outs, others } = planeOf(model);
  const { row, column } = cursorOf(model);
  return { out: placeOf(outs, column), other: placeOf(others, row) };
}

export function mapNow({ work }: Model): TabMap | null {
  return (work?.result ?? null) as TabMap | null;
}

export function cellHere(model: Model): TabCell | undefined {
  const { row, column } = cursorOf(model);
  return mapNow(model)?.cells[row * planeOf(model).outs.rows + column];
}

/** Writes the number that is mapped; a score has no unit. */
export function choiceSayer(display: Model["display"], { kind }: Choice): (value: number | null | undefined) => string {
  const say = figureSayer(display);
  return (value) => {
    if (kind !== "score") return say(value, kind);
    return value === null || value === undefined ? "-" : fixed(value, value >= 100 ? 0 : 2);
  };
}
