import { blameWords } from "../measures/blame.ts";
import type { BumpRow, BumpTable } from "../measures/bumpTable.ts";
import type { Study } from "../measures/study.ts";
import { acrossTyre } from "../measures/worstToe.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { type Column, columnOf, figureColumn, inputFigure } from "./column.ts";
import { csv } from "./csv.ts";
import { type Json, jsonRow } from "./json.ts";
import { inUnits, unitName, unitsOf, written } from "./numbers.ts";
import { type Headed, readerTable, signs } from "./readerTable.ts";
import { bounce, degrees, inputPlace, type Length } from "./words.ts";

const side = (wheel: Wheel): readonly Column<BumpRow>[] => [
  figureColumn([wheel, "toe"], (row) => row[wheel].toe),
  figureColumn([wheel, "toeChange"], (row) => row[wheel].toeChange),
  figureColumn([wheel, "camber"], (row) => row[wheel].camber),
  figureColumn([wheel, "caster"], (row) => row[wheel].caster),
  figureColumn([wheel, "trackChange"], (row) => row[wheel].trackChange),
];

const bumpColumns: readonly Column<BumpRow>[] = [
  { path: ["travel"], kind: "length", sign: "bump positive", read: (row) => row.travel },
  ...side("left"),
  ...side("right"),
  figureColumn(["bounceSteer"], (row) => row.bounceSteer),
];

const headedSide = (wheel: Wheel): readonly Headed<BumpRow>[] => [
  { head: [wheel, "toe"], column: columnOf(bumpColumns, `${wheel}.toe`) },
  { head: [wheel, "change"], column: columnOf(bumpColumns, `${wheel}.toeChange`) },
  { head: [wheel, "camber"], column: columnOf(bumpColumns, `${wheel}.camber`) },
  { head: [wheel, "track"], column: columnOf(bumpColumns, `${wheel}.trackChange`) },
];

const headed: readonly Headed<BumpRow>[] = [
  { head: ["travel"], column: columnOf(bumpColumns, "travel") },
  ...headedSide("left"),
  ...headedSide("right"),
  { head: ["bounce", "steer"], column: columnOf(bumpColumns, "bounceSteer") },
];

const summaryColumns: readonly Column<BumpTable["summary"]>[] = [
  figureColumn(["bumpSteer", "left"], (summary) => summary.bumpSteer.left, "bumpSteer"),
  figureColumn(["bumpSteer", "right"], (summary) => summary.bumpSteer.right, "bumpSteer"),
  figureColumn(["worstToeChange"], (summary) => summary.worstToeChange, "toeChange"),
  figureColumn(["worstBounceSteer"], (summary) => summary.worstBounceSteer),
];

/** The bump table as JSON. */
export function bumpJson({ inputKind }: Study, table: BumpTable, unit: LengthUnit): Json {
  return {
    units: unitsOf(unit),
    [inputKind]: inUnits(table.input, inputFigure(inputKind), unit),
    rows: table.rows.map((row) => jsonRow(bumpColumns, row, unit)),
    summary: jsonRow(summaryColumns, table.summary, unit),
  };
}

/** The bump table's rows as CSV. */
export function bumpCsv({ rows }: BumpTable, unit: LengthUnit): string {
  return csv(bumpColumns, rows, unit);
}

/** The bump table for reading. */
export function bumpText(study: Study, table: BumpTable, unit: LengthUnit, length: Length): string[] {
  return [
    study.car.title,
    `Both wheels up and down together, ${inputPlace(study, table.input, length)}.`,
    "",
    ...readerTable(headed, table.rows, unit, (row) => (row.blame === null ? null : blameWords(row.blame, length))),
    "",
    ...signs(headed).map((line) => `  ${line}`),
    "  change, track and bounce steer: from travel 0",
    "",
    ...summaryLines(study, table, unit, length),
  ];
}

function summaryLines(study: Study, { rows, summary }: BumpTable, unit: LengthUnit, length: Length): string[] {
  const { left, right } = summary.bumpSteer;
  const rate = (value: number | null) => (value === null ? "-" : written(value, "angle-per-length", unit));
  const most = summary.worstToeChange;
  const across = most === null ? null : length(acrossTyre(most, study.tireRadius));
  const bounced = rows.find((row) => row.bounceSteer !== null && row.bounceSteer === summary.worstBounceSteer);
  return [
    `Bump steer at ride height: left ${rate(left)}, right ${rate(right)} ${unitName("angle-per-length", unit)}`,
    `Most toe change: ${most === null ? "-" : `${degrees(most, 2)}, ${across} across the tyre`}`,
    `Bounce steer: ${
      bounced === undefined || bounced.bounceSteer === null
        ? "-"
        : bounce({ bounceSteer: bounced.bounceSteer, travel: bounced.travel }, length)
    }`,
  ];
}
