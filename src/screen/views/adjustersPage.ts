import { type AdjusterLine, linesOfSides, settingCells, settingColumns } from "../../output/adjusters.ts";
import { type AdjusterRow, type Amounts, adjustersJob, settingsNow } from "../../solve/adjusters/adjusters.ts";
import { amountsOf } from "../amounts.ts";
import { changed } from "../bench.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { turn } from "../turn.ts";
import { windowOf } from "../view/AdjustList.tsx";
import type { Line } from "../view/Lines.tsx";
import type { Page } from "./page.ts";
import { spotWithin } from "./spot.ts";
import { waitingWords } from "./work.ts";

const wheels = ["left", "right"] as const;
const nameColumns = 37;
const cellColumns = 8;
const headRows = 3;

/** How many times an amount is turned, shimmed, raised or fitted, along the cursor's columns; once first. */
const times = [1, 2, 3, 4, 0.5, -0.5, -1, -2, -3, -4] as const;

function timesOf(model: Model, view: string): number {
  const { column } = spotWithin(model, view, () => ({ rows: 1, columns: times.length }));
  return times[column] ?? 1;
}

function amountsDone(model: Model, view: string): Amounts {
  const { turns, shim, rideHeight, tyre } = amountsOf(model);
  const by = timesOf(model, view);
  return { turns: turns * by, shim: shim * by, rideHeight: rideHeight * by, tyre: tyre * by };
}

function keyOf(model: Model, view: string): string {
  return `adjusters\0${Object.values(amountsDone(model, view)).join(" ")}\0${model.bench.car.text}`;
}

/** The adjusters as far as they are worked out. */
function linesOf(model: Model, view: string): readonly AdjusterLine[] {
  const { work, display } = model;
  const rows = work?.key === keyOf(model, view) ? ((work.result as readonly AdjusterRow[] | null) ?? []) : [];
  return linesOfSides(rows, display.unit, sayer(display));
}

/** The page of race day, in the view of that name. */
export function adjustersPage(view: string): Page {
  const size: Page["size"] = (model) => ({ rows: linesOf(model, view).length, columns: times.length });
  const here = (model: Model) => linesOf(model, view)[spotWithin(model, view, size).row];
  return {
    name: "adjusters",
    title: () => "ADJUSTERS: what each changes (Enter, ←→)",
    size,
    lines: (model, _columns, rows) => lines(model, linesOf(model, view), rows, spotWithin(model, view, size).row),
    explain: (model) => {
      const line = here(model);
      if (line === undefined) return "";
      const { row, name } = line;
      if ("why" in row) return `${name}: ${row.why}.`;
      const done = `${row.part}: ${row.done(sayer(model.display))}.`;
      return `${done.charAt(0).toUpperCase()}${done.slice(1)} t does it, u takes it back; the other side is its own. ${row.caution ?? ""}`;
    },
    take: {
      act: (model) => {
        const line = here(model);
        if (line === undefined || "why" in line.row) return turn(model);
        const side = line.row.wheel === null ? "" : `${line.row.wheel} `;
        return changed(
          model,
          line.row.text(),
          `Adjusted: ${side}${line.row.part}, ${line.row.done(sayer(model.display))}`,
        );
      },
      off: (model) => {
        const line = here(model);
        if (line === undefined) return "It is still worked out what the adjusters do.";
        return "why" in line.row ? `${line.row.part}: ${line.row.why}.` : null;
      },
    },
    amount: (model) => here(model)?.row.by ?? null,
    work: (model) => {
      const { study } = model.bench;
      if ("refused" in study) return null;
      return { key: keyOf(model, view), job: () => adjustersJob(study, amountsDone(model, view)) };
    },
  };
}

function lines(model: Model, all: readonly AdjusterLine[], rows: number, at: number): readonly Line[] {
  const { study } = model.bench;
  if ("refused" in study) return [];
  const { unit } = model.display;
  const row = (mark: string, name: string, cells: readonly string[]) =>
    `${mark} ${name.slice(0, nameColumns).padEnd(nameColumns)}${cells.map((cell) => cell.padStart(cellColumns)).join("")}`;
  const isLong = all.some(({ name }) => name.length > nameColumns);
  const heads = settingColumns.map(([head, , kind]) => (kind === "angle" ? `${head}°` : head));
  const now = settingsNow(study);
  const { from, to } = windowOf(all.length, at, Math.max(1, rows - headRows));
  const what = `toe across the tyre, ${unit}; in is +`;
  return [
    [{ text: row(" ", what, heads), look: "strong" }],
    ...wheels.map((wheel) => row(" ", `now, ${wheel} wheel`, settingCells(now[wheel], unit))),
    ...(all.length === 0 ? [`  ${waitingWords(model.work, "Working out what each of them does ...")}`] : []),
    ...all.slice(from, to).map(({ name, cells, row: adjuster }, i): Line => {
      const isHere = from + i === at;
      const more = (i === 0 && from > 0 && "↑") || (from + i === to - 1 && to < all.length && "↓") || " ";
      const brief = "why" in adjuster && adjuster.why.startsWith("not given") ? "   not given" : "   not here";
      const text = row(
        isHere ? ">" : more,
        isLong ? name.replace(/^(left|right)/, (side) => (side === "left" ? "L" : "R")) : name,
        cells ?? [brief],
      );
      return isHere ? [{ text, look: "marked" }] : text;
    }),
  ];
}
