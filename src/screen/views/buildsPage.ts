import { figureWords } from "../../output/numbers.ts";
import {
  briefLabel,
  carriedWords,
  carrierWords,
  endWords,
  heldWords,
  jigWords,
  judgedValue,
  judgeName,
  ofHundred,
  setAgainWords,
} from "../../output/toleranceWords.ts";
import type { Chance, FigureSpread, NoTolerance, Tolerance } from "../../solve/tolerance/result.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { windowOf } from "../view/AdjustList.tsx";
import type { Line } from "../view/Lines.tsx";
import { wrapped } from "../view/wrap.ts";
import { buildsPlotLines, buildsPlots } from "./buildsPlot.ts";
import type { Page } from "./page.ts";
import { spotOf, spotWithin } from "./spot.ts";
import { lateJob, progressWords } from "./work.ts";

const nameColumns = 26;
const cellColumns = 12;

/** What the cursor's columns show: the limits, what to hold, the plots, and every number. */
const limitsColumn = 0;
const holdColumn = 1;
const figuresColumn = 2 + buildsPlots.length;
const columnCount = 3 + buildsPlots.length;

function keyOf({ bench }: Model): string {
  return `builds\n${bench.car.text}`;
}

function resultOf(model: Model): Tolerance | NoTolerance | null {
  const { work } = model;
  return work?.key === keyOf(model) ? (work.result as Tolerance | NoTolerance | null) : null;
}

function toldOf(model: Model): Tolerance | null {
  const result = resultOf(model);
  return result === null || "refused" in result || result.tried === 0 ? null : result;
}

function figuresOf(result: Tolerance): readonly FigureSpread[] {
  return result.figures.filter(({ builds }) => builds !== null && builds.high - builds.low > 1e-9);
}

/** The page of how the car comes out when it is built to its tolerances, in the view of that name. */
export function buildsPage(view: string): Page {
  const columnOf = (model: Model) => Math.min(columnCount - 1, Math.max(0, spotOf(model, view).column));
  const size: Page["size"] = (model) => {
    const result = toldOf(model);
    const column = columnOf(model);
    const rows =
      result === null
        ? 0
        : column === limitsColumn
          ? result.chances.length
          : column === figuresColumn
            ? figuresOf(result).length
            : 1;
    return { rows, columns: columnCount };
  };
  const rowOf = (model: Model) => spotWithin(model, view, size).row;
  return {
    name: "as it is built",
    title: (model) => `AS IT IS BUILT ${columnOf(model) + 1}/${columnCount} ←→${progressWords(model.work)}`,
    size,
    lines: (model, columns, rows) => {
      const result = resultOf(model);
      if (result !== null && "refused" in result) return [` ${result.refused}`];
      const told = toldOf(model);
      if (told === null) return ["  Building the car, every size a little off ..."];
      const column = columnOf(model);
      if (column === limitsColumn) return limitLines(model, told, rowOf(model), rows);
      if (column === figuresColumn) return figureLines(model, told, rowOf(model), rows);
      if (column === holdColumn) return holdLines(told, columns);
      return buildsPlotLines(model, buildsPlots[column - 2], told, columns, rows);
    },
    explain: (model) => {
      const result = toldOf(model);
      if (result === null) return "";
      const column = columnOf(model);
      if (column === limitsColumn) return chanceExplained(result, result.chances[rowOf(model)]);
      if (column === figuresColumn) return figureExplained(figuresOf(result)[rowOf(model)]);
      if (column === holdColumn)
        return `Built to ${heldWords(result.held, result.study.car.form.units)}. The file's part tolerances: says other ones. ${setAgainWords(result)}`;
      return `${setAgainWords(result)} What is left is what cannot be set. ←→ for limits and numbers.`;
    },
    take: null,
    work: (model) => {
      const { study } = model.bench;
      if ("refused" in study) return null;
      return {
        key: keyOf(model),
        job: () =>
          lateJob(async () => {
            const { shownJob } = await import("../../solve/tolerance/shown.ts");
            return shownJob(study);
          }),
      };
    },
  };
}

function limitLines({ display }: Model, { chances, all, tried }: Tolerance, at: number, rows: number): readonly Line[] {
  const length = sayer(display);
  const { from, to } = windowOf(chances.length, at, Math.max(1, rows - 2));
  const row = (name: string, cells: readonly string[]) =>
    `${name.padEnd(nameColumns)}${cells.map((each) => each.padStart(cellColumns)).join("")}`;
  return [
    [{ text: `  ${row(`${tried} builds, of 100:`, ["set", "good", "are good", "keep limit"])}`, look: "strong" }],
    ...chances.slice(from, to).map((chance, i): Line => {
      const { judge, set, aim, limit } = chance;
      const isHere = from + i === at;
      const text = `${isHere ? ">" : " "} ${row(judgeName(judge), [
        judge.id === "range" ? "" : judgedValue(judge, set, length),
        endWords(judge, judge.aim, length),
        ofHundred(aim),
        ofHundred(limit),
      ])}`;
      return isHere ? [{ text, look: "marked" }] : text;
    }),
    `  ${row("all at once", ["", "", ofHundred(all.aim), ofHundred(all.limit)])}`,
  ];
}

function holdLines({ jig, study }: Tolerance, columns: number): readonly Line[] {
  const { units } = study.car.form;
  const lines = (words: string) => wrapped(words, columns - 2).map((line) => ` ${line}`);
  if (jig === null) return lines("Every build keeps what the car as drawn keeps.");
  const { before, after, carriers } = jig;
  const gain =
    after === null
      ? []
      : lines(
          `Held so, ${ofHundred(after)} of 100 builds keep all that the car keeps as drawn, instead of ${ofHundred(before)}.`,
        );
  return [
    [{ text: "  hold these best, and how much of what is missed each carries", look: "strong" }],
    ...carriers.flatMap((each, i) => lines(`${i + 1}. ${jigWords(each, units)} It carries ${carriedWords(each)}.`)),
    ...gain,
  ];
}

function chanceExplained(result: Tolerance, { judge, limit, carriers, missedAsDrawn }: Chance): string {
  const whose =
    judge.from === "the parts"
      ? ""
      : `What is good and what the limit is: ${judge.from === "file" ? "as the file says" : "common practice, no source"}. `;
  const drawn = missedAsDrawn ? "Past its limit as drawn: move parts, no jig helps. " : "";
  const hangs = carriers.length === 0 ? "" : `It hangs on ${carrierWords(carriers)}. `;
  const few = judge.dear ? `Held against ${limit.of} builds only. ` : "";
  return `${judgeName(judge)}: ${drawn}${hangs}${few}${whose}${setAgainWords(result)}`;
}

function figureLines({ display }: Model, result: Tolerance, at: number, rows: number): readonly Line[] {
  const length = sayer(display);
  const all = figuresOf(result);
  const { from, to } = windowOf(all.length, at, Math.max(1, rows - 1));
  const row = (name: string, cells: readonly string[]) =>
    `${name.slice(0, nameColumns - 1).padEnd(nameColumns)}${cells.map((each) => each.padStart(cellColumns)).join("")}`;
  return [
    [{ text: `  ${row("of 100 builds", ["set", "5 are below", "50", "95"])}`, look: "strong" }],
    ...all.slice(from, to).map(({ reading, set, builds, alike }, i): Line => {
      const isHere = from + i === at;
      const said = (value: number | null | undefined) => figureWords(value, reading.kind, display.unit, length);
      const text = `${isHere ? ">" : " "} ${row(briefLabel(reading), [set, builds?.low, builds?.middle, builds?.high].map(said))}${alike === false ? " !" : ""}`;
      return isHere ? [{ text, look: "marked" }] : text;
    }),
  ];
}

function figureExplained(figure: FigureSpread | undefined): string {
  if (figure === undefined) return "";
  const { reading, alike } = figure;
  const lines = alike === false ? "! straight lines do not tell it: it bends, or is the worse of two ends. " : "";
  const size = reading.bySize ? "By its size. " : "";
  return `${reading.label}: ${lines}${size}${reading.explanation}`;
}
