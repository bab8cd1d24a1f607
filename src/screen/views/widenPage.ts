import { type Compared, compared, comparedCell, isWidened } from "../../output/widen.ts";
import { type Widening, widenJob } from "../../solve/widen/widen.ts";
import { amountsOf } from "../amounts.ts";
import { changed } from "../bench.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { turn } from "../turn.ts";
import type { Line } from "../view/Lines.tsx";
import { wrapped } from "../view/wrap.ts";
import type { Page } from "./page.ts";
import { spotWithin } from "./spot.ts";
import { waitingWords } from "./work.ts";

/** How many times the amount a front end is made wider at most, along the cursor's columns. */
const mostSteps = 12;

/** More than this a side is another car, mm. */
const mostWider = 600;
const nameColumns = 10;

/** What the ways are compared by where there is little room: a heading in two lines, the figure, and its width. */
const seen: readonly (readonly [head: readonly [string, string], id: string, width: number])[] = [
  [["", "track"], "track", 8],
  [["scrub", "L"], "scrubRadiusLeft", 7],
  [["inner", "lock L"], "leftLockInner", 7],
  [["", "R"], "rightLockInner", 6],
  [["Acker", "L"], "leftLockAckermann", 7],
  [["-mann", "R"], "rightLockAckermann", 6],
  [["worst", "toe L"], "worstToeAcrossTyreLeft", 7],
  [["", "R"], "worstToeAcrossTyreRight", 7],
  [["dead", "pt L"], "leastRodAngleLeft", 6],
  [["", "R"], "leastRodAngleRight", 6],
];

const none: readonly Widening[] = [];

function figure(id: string): Compared | undefined {
  return compared.find((each) => each.id === id);
}

/** The page of wider front ends, in the view of that name; the cursor's column is by how much. */
export function widenPage(view: string): Page {
  const size: Page["size"] = (model) => ({ rows: waysOf(model).length, columns: stepsOf(model) });
  const stepsOf = (model: Model) => Math.min(mostSteps, Math.floor(mostWider / amountsOf(model).widen));
  const columnOf = (model: Model) => spotWithin(model, view, () => ({ rows: 1, columns: stepsOf(model) })).column;
  const byOf = (model: Model) => amountsOf(model).widen * (columnOf(model) + 1);
  const keyOf = (model: Model) => `widen\0${byOf(model)}\0${model.bench.car.text}`;
  const waysOf = (model: Model): readonly Widening[] => {
    const { work } = model;
    return work?.key === keyOf(model) ? ((work.result as readonly Widening[] | null) ?? none) : none;
  };
  const here = (model: Model) => waysOf(model)[spotWithin(model, view, size).row];
  return {
    name: "widen",
    title: (model) => `WIDER BY ${sayer(model.display)(byOf(model))} A SIDE (Enter, ←→)`,
    size,
    lines: (model, columns) => {
      const way = here(model);
      const what =
        way === undefined ? waitingWords(model.work, "Working out what each way does ...") : `${titleOf(way, model)}.`;
      return [
        ...table(model, waysOf(model), spotWithin(model, view, size).row),
        ...wrapped(what, columns - 2).map((line) => ` ${line}`),
      ];
    },
    explain: (model) => {
      const way = here(model);
      if (way === undefined) return "";
      return isWidened(way) ? `${way.caution} ${way.tradeOff}` : `${way.name}, not here: ${way.why}.`;
    },
    take: {
      act: (model) => {
        const way = here(model);
        return way === undefined || !isWidened(way) ? turn(model) : changed(model, way.text(), titleOf(way, model));
      },
      off: (model) => {
        const way = here(model);
        if (way === undefined) return "It is still worked out what each way does.";
        return isWidened(way) ? null : `${way.name}: ${way.why}.`;
      },
    },
    amount: () => "widen",
    work: (model) => {
      const { study } = model.bench;
      const by = byOf(model);
      return "refused" in study ? null : { key: keyOf(model), job: () => widenJob(study, by) };
    },
  };
}

function titleOf(way: Widening, { display }: Model): string {
  return way.title(sayer(display));
}

function table(model: Model, ways: readonly Widening[], at: number): readonly Line[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { unit } = model.display;
  const units = ["°, Acker %", `lengths ${unit}`];
  const head = (line: 0 | 1) =>
    `  ${units[line]}`.padEnd(nameColumns + 2) + seen.map(([words, , width]) => words[line].padStart(width)).join("");
  const cells = (of: typeof study) =>
    seen
      .map(([, id, width]) => {
        const each = figure(id);
        return (each === undefined ? "-" : comparedCell(each, of, unit)).padStart(width);
      })
      .join("");
  return [
    head(0),
    head(1),
    `  ${"as it is".padEnd(nameColumns)}${cells(study)}`,
    ...ways.map((way, i): Line => {
      const text = `${i === at ? ">" : " "} ${way.key.padEnd(nameColumns)}${isWidened(way) ? cells(way.after) : "  not here: see below"}`;
      return i === at ? [{ text, look: "marked" }] : text;
    }),
  ];
}
