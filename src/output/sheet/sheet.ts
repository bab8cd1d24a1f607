import type { Study } from "../../measures/study.ts";
import type { CheckItem, State } from "../../solve/check/item.ts";
import type { ProofSpread } from "../../solve/tolerance/proofSpread.ts";
import { labelsOf } from "../../vehicle/labels.ts";
import { notesOf } from "../../vehicle/notes.ts";
import { beforeCutting, type Judged } from "../beforeCutting.ts";
import { countWords, itemBrief, itemWords } from "../check.ts";
import { type Block, list, mind, type Paper, type PaperPart, tableOf, words } from "../paper/paper.ts";
import { cautions } from "../words.ts";
import { missedAims } from "./aims.ts";
import { changePart } from "./changes.ts";
import { armPart, rodPart } from "./cut.ts";
import { framePart } from "./frame.ts";
import { jointPart } from "./joints.ts";
import { lacksOf } from "./lacks.ts";
import { rackPart, tabPart, uprightPart } from "./place.ts";
import { plotBlocks } from "./plots.ts";
import { proofPart } from "./proof.ts";
import { settingsPart } from "./settings.ts";
import type { Writing } from "./writing.ts";

/**
 * What a build sheet is made from: the car to build, its checks, the goals of its own search that it misses, how far ordinary
 * building moves what proves it, and the car as it is now, if there is one.
 */
export interface SheetReport extends Judged {
  /** Goals of its own search that its file says too little for, and the section that each lacks. */
  readonly unjudged: readonly { readonly name: string; readonly needs: string }[];
  /** Null where the car as drawn cannot be set. */
  readonly spread: ProofSpread | null;
  readonly from: Study | null;
}

/** What has to be put right, or known, before anything is cut. */
function firstPart(report: SheetReport, writing: Writing): PaperPart {
  return {
    heading: "Before anything is cut",
    blocks: [
      ...beforeCutting(report, writing, report.from).map(mind),
      words("Measure twice. Sizes are centre to centre, the car level at ride height, left and right the driver's."),
    ],
  };
}

function checkLines(report: SheetReport, state: State, { unit, length }: Writing): readonly string[] {
  const { study, checks } = report;
  const said = (item: CheckItem) => `${state.toUpperCase()}: ${itemWords(study, item, unit, length)}`;
  return checks.items.filter((item) => item.state === state).map(said);
}

/** How the car came through the checks: what is wrong in words, the rest by name. */
function checkPart(report: SheetReport, writing: Writing): PaperPart {
  const items = (["broken", "close"] as const).flatMap((state) => checkLines(report, state, writing));
  const passed = report.checks.items
    .filter(({ state }) => state === "pass")
    .map((item) => itemBrief(item, writing.unit, writing.length));
  const not = report.checks.items.filter(({ state }) => state === "not given").map(({ label }) => label);
  return {
    heading: "Checks",
    blocks: [
      words(`${countWords(report.checks)}.`),
      ...(items.length === 0 ? [] : [list(items)]),
      ...(passed.length === 0 ? [] : [words(`Passed: ${passed.join("; ")}.`)]),
      ...(not.length === 0 ? [] : [words(`Not checked, since the file does not say enough: ${not.join("; ")}.`)]),
    ],
  };
}

/** What is still open: a place that does not do what the file asks of it, and what the file does not say. */
function lackBlocks({ study, missed, unjudged }: SheetReport, writing: Writing): readonly PaperPart[] {
  const open = missedAims(missed, writing);
  const rows = [
    ...lacksOf(study).map(({ what, keys }) => [what, keys.join("; ")]),
    ...unjudged.map(({ name, needs }) => [`Judging the goal ${name}`, needs]),
  ];
  const blocks: readonly Block[] = [
    ...(open === null ? [] : [mind(`${open}.`)]),
    ...(rows.length === 0
      ? []
      : [
          words("Nothing is made up here. This sheet could say more if the car's file said:"),
          tableOf(["For", "its keys"], rows, [0, 1]),
        ]),
  ];
  return blocks.length === 0 ? [] : [{ heading: "Still to be decided", blocks }];
}

function signPart(): PaperPart {
  const rows = ["Built by", "Welds and hardware inspected by", "Proved by"].map((who) => [who, null, null]);
  return { heading: "Done", blocks: [tableOf(["", "name", "date"], rows)] };
}

/** A car's build sheet, in working order. */
export function sheetPaper(report: SheetReport, writing: Writing): Paper {
  const { study, from } = report;
  const { title: _, ...labels } = labelsOf(study.car);
  const notes = notesOf(study.car);
  const arms = armPart(study, writing);
  const joints = jointPart(study);
  const plots: readonly Block[] = plotBlocks(study, from, writing);
  return {
    title: `Build sheet: ${study.car.title}`,
    under: [
      ...Object.entries(labels).flatMap(([name, said]) => (said === "" ? [] : [`${name}: ${said}`])),
      ...(notes === "" ? [] : notes.split("\n").map((line) => `Note: ${line}`)),
    ],
    parts: [
      firstPart(report, writing),
      ...(from === null ? [] : [changePart(from, study, writing)]),
      rodPart(study, writing),
      ...(arms === null ? [] : [arms]),
      uprightPart(study, writing),
      framePart(study, writing),
      tabPart(study, writing),
      ...(joints === null ? [] : [joints]),
      rackPart(study, writing),
      settingsPart(study, writing),
      proofPart(study, report.spread, writing),
      { heading: "How it steers and travels", blocks: plots },
      checkPart(report, writing),
      ...lackBlocks(report, writing),
      signPart(),
    ],
    cautions,
  };
}
