import { changeWords, chiefWords, quantityWords, shareWords, stepWords } from "../../output/sensitivity.ts";
import type { Change, SensitivityRow, Way } from "../../solve/sensitivity/sensitivity.ts";
import { sayer } from "../lengths.ts";
import type { Model } from "../model.ts";
import { turn } from "../turn.ts";
import { windowOf } from "../view/AdjustList.tsx";
import { heading } from "../view/heading.ts";
import { filled, type Line } from "../view/Lines.tsx";
import { cursorMoves, type MapPage } from "./mapPage.ts";
import { spotOf, spotWithin, withSpot } from "./spot.ts";
import { lateJob, progressWords, waitingWords } from "./work.ts";

/** The cursor along the list; its page is the number that is looked at, 0 for what the targets judge. */
const spotName = "Map: sensitivity";

const nameColumns = 33;
const stepColumns = 9;

function keyOf({ bench, display }: Model): string {
  return `${spotName}\n${display.unit}\n${bench.car.text}`;
}

function allRows(model: Model): readonly SensitivityRow[] {
  const { work } = model;
  return work?.key === keyOf(model) ? ((work.result as readonly SensitivityRow[] | null) ?? []) : [];
}

/** The number that is looked at alone, by its place in the list of readings; null while all are ranked together. */
function figureAt(model: Model): number | null {
  const { page } = spotOf(model, spotName);
  return page === 0 ? null : page - 1;
}

/** Rows in the order in which they are shown: those that matter most first. */
function rowsOf(model: Model): readonly SensitivityRow[] {
  const at = figureAt(model);
  const rows = allRows(model);
  if (at === null) return rows;
  const size = (row: SensitivityRow) => Math.abs(row.changes[at]?.worse?.change ?? 0);
  return [...rows].sort((a, b) => size(b) - size(a));
}

const size = (model: Model) => ({ rows: allRows(model).length, columns: 1 });

/** Short names of what the targets judge. */
const brief: Readonly<Record<string, string>> = {
  lockDifferenceInner: "inner locks L-R",
  leftLockAckermann: "Ackermann L",
  rightLockAckermann: "Ackermann R",
  worstToeAcrossTyreLeft: "toe L",
  worstToeAcrossTyreRight: "toe R",
  worstBounceSteer: "bounce steer",
};

const holdWords = { tight: "HOLD TIGHTLY", watch: "watch", free: "does not matter" } as const;

function here(model: Model): SensitivityRow | undefined {
  return rowsOf(model)[spotWithin(model, spotName, size).row];
}

/** What 1/16 in of each size does: what must be held tightly, and what does not matter. */
export const sensitivityPage: MapPage = {
  name: "what to hold tightly",
  title: () => "WHAT TO HOLD TIGHTLY",
  size,
  lines,
  explain: (model) => {
    const row = here(model);
    if (row === undefined) return "";
    const { unit } = model.display;
    const length = sayer(model.display);
    const at = figureAt(model);
    const held = `${shareWords(row)} of what a target allows: ${holdWords[row.hold]} (from 25 % and from 5 %; targets in the file or common practice).`;
    if (at === null) return `${quantityWords(row)}, ${chiefWords(row, unit, length)}. ${held}`;
    const { reading } = row.changes[at];
    const both = (["more", "less"] as const).map(
      (way) => `${stepWords(row, unit)} ${way}: ${said(model, row.changes[at], way)}`,
    );
    return `${quantityWords(row)}, ${both.join(", ")}. ${reading.explanation}`;
  },
  take: null,
  move: cursorMoves(spotName, size),
  other: (ways) => (model) => {
    const count = 1 + (allRows(model)[0]?.changes.length ?? 0);
    return turn(withSpot(model, spotName, { page: (spotOf(model, spotName).page + ways + count) % count, row: 0 }));
  },
  work: (model) => {
    const { study } = model.bench;
    if ("refused" in study) return null;
    const { unit } = model.display;
    return {
      key: keyOf(model),
      job: () =>
        lateJob(async () => {
          const { sensitivityJob } = await import("../../solve/sensitivity/sensitivity.ts");
          return sensitivityJob(study, unit);
        }),
    };
  },
};

function lines(model: Model, columns: number, rows: number): readonly Line[] {
  const at = figureAt(model);
  const all = rowsOf(model);
  const label = at === null ? "HOLD TIGHTLY what stands first" : (all[0]?.changes[at]?.reading.label ?? "");
  const progress = progressWords(model.work);
  const row = spotWithin(model, spotName, size).row;
  const { from, to } = windowOf(all.length, row, Math.max(1, rows - 2));
  const head = at === null ? "of a target: what it does" : "does, more and less";
  return [
    heading(model, columns, `${label}${progress}`, `HOLD TIGHTLY${progress}`),
    ...filled(
      [
        [{ text: `  ${"one step of".padEnd(nameColumns)}${"step".padEnd(stepColumns)}${head}`, look: "strong" }],
        ...(all.length === 0 ? [`  ${waitingWords(model.work, "Working out what each size does ...")}`] : []),
        ...all.slice(from, to).map((each, i): Line => {
          const isHere = from + i === row;
          const more = (i === 0 && from > 0 && "↑") || (from + i === to - 1 && to < all.length && "↓") || " ";
          const text = `${isHere ? ">" : more} ${lineOf(model, each, at)}`.slice(0, columns);
          return isHere ? [{ text, look: "marked" }] : text;
        }),
      ],
      rows - 1,
    ),
  ];
}

function lineOf(model: Model, row: SensitivityRow, at: number | null): string {
  const { unit } = model.display;
  const length = sayer(model.display);
  const name = quantityWords(row)
    .slice(0, nameColumns - 1)
    .padEnd(nameColumns);
  const step = stepWords(row, unit).padEnd(stepColumns);
  if (at !== null)
    return `${name}${step}${said(model, row.changes[at], "more").padEnd(14)}${said(model, row.changes[at], "less")}`;
  const { chief } = row;
  const share = shareWords(row).padStart(6);
  if (!chief?.worse) return `${name}${step}${share}`;
  const { id, label } = chief.reading;
  return `${name}${step}${share} ${brief[id] ?? label} ${changeWords(chief, chief.worse.change, unit, length)}`;
}

/** What a step does to a figure one way; "nothing" where it is too little to be shown. */
function said({ display }: Model, change: Change, way: Way): string {
  const value = change[way];
  if (value === null) return "-";
  const words = (of: number) => changeWords(change, of, display.unit, sayer(display));
  return words(value).replace(/^[+-]/, "") === words(0).replace(/^[+-]/, "") ? "nothing" : words(value);
}
