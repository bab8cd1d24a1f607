import { blameWords } from "../measures/blame.ts";
import type { InputKind } from "../measures/front.ts";
import type { Locks } from "../measures/locks.ts";
import type { SteerRow, SteerTable } from "../measures/steerTable.ts";
import type { Study } from "../measures/study.ts";
import { shortOfIdeal } from "../measures/turning.ts";
import type { LengthUnit, Wheel } from "../vehicle/car.ts";
import { type Column, columnOf, figureColumn, inputColumn, inputFigure } from "./column.ts";
import { csv } from "./csv.ts";
import { type Json, jsonRow } from "./json.ts";
import { stopsWords } from "./lockWords.ts";
import { inUnits, unitsOf, written } from "./numbers.ts";
import { type Headed, readerTable, signs } from "./readerTable.ts";
import { WIDTH, wrap } from "./table.ts";
import {
  ackermannOf,
  inputOffMiddle,
  type Length,
  lockSaid,
  percentsTell,
  tightestTurn,
  unequalLocks,
} from "./words.ts";

const wheelColumns: readonly Column<SteerRow>[] = [
  figureColumn(["left", "steer"], (row) => row.left.steer),
  figureColumn(["right", "steer"], (row) => row.right.steer),
  { path: ["turn"], kind: "word", sign: "", read: (row) => row.turn },
  figureColumn(["inner"], (row) => row.inner),
  figureColumn(["outer"], (row) => row.outer),
  figureColumn(["idealInner"], (row) => row.idealInner),
  figureColumn(["percentOfIdealInner"], (row) => row.percentOfIdealInner),
  figureColumn(["ackermann"], (row) => row.ackermann),
  figureColumn(["turnRadius"], (row) => row.turnRadius),
];

/** The columns of a row: the key of its input says what it is. */
function steerColumns(kind: InputKind): readonly Column<SteerRow>[] {
  return [inputColumn(kind), ...wheelColumns];
}

const headedWheels: readonly Headed<SteerRow>[] = [
  { head: ["left", "wheel"], column: columnOf(wheelColumns, "left.steer") },
  { head: ["right", "wheel"], column: columnOf(wheelColumns, "right.steer") },
  { head: ["turn"], column: columnOf(wheelColumns, "turn") },
  { head: ["inner"], column: columnOf(wheelColumns, "inner") },
  { head: ["outer"], column: columnOf(wheelColumns, "outer") },
  {
    head: ["Acker-", "mann"],
    column: figureColumn(["ackermann"], (row) => (percentsTell(row) ? row.ackermann : null)),
  },
  {
    head: ["% of", "ideal"],
    column: figureColumn(["percentOfIdealInner"], (row) => (percentsTell(row) ? row.percentOfIdealInner : null)),
  },
  { head: ["short of", "ideal"], column: figureColumn(["innerShortOfIdeal"], shortOfIdeal) },
  { head: ["turn", "radius"], column: columnOf(wheelColumns, "turnRadius") },
];

function headedOf(kind: InputKind): readonly Headed<SteerRow>[] {
  return [{ head: [kind], column: inputColumn(kind) }, ...headedWheels];
}

/** The steer table as JSON. */
export function steerJson(study: Study, { rows }: SteerTable, unit: LengthUnit): Json {
  const columns = steerColumns(study.inputKind);
  return {
    units: unitsOf(unit),
    wheelbase: inUnits(study.wheelbase, "length", unit),
    track: inUnits(study.track, "length", unit),
    zero: study.zero === null ? null : inUnits(study.zero, inputFigure(study.inputKind), unit),
    rows: rows.map((row) => jsonRow(columns, row, unit)),
    locks: locksJson(study, unit),
  };
}

const differenceColumns: readonly Column<Locks["difference"]>[] = [
  figureColumn(["inner"], (difference) => difference.inner),
  figureColumn(["outer"], (difference) => difference.outer),
  figureColumn(["turnRadius"], (difference) => difference.turnRadius),
];

function locksJson(study: Study, unit: LengthUnit): Json {
  const { left, right, difference } = study.locks;
  const columns = steerColumns(study.inputKind);
  return {
    left: left === null ? null : jsonRow(columns, left, unit),
    right: right === null ? null : jsonRow(columns, right, unit),
    difference: jsonRow(differenceColumns, difference, unit),
  };
}

/** The steer table's rows as CSV. */
export function steerCsv(study: Study, { rows }: SteerTable, unit: LengthUnit): string {
  return csv(steerColumns(study.inputKind), rows, unit);
}

/** The steer table for reading. */
export function steerText(study: Study, { rows }: SteerTable, unit: LengthUnit, length: Length): string[] {
  const headed = headedOf(study.inputKind);
  return [
    study.car.title,
    `Steering at ride height. Wheelbase ${written(study.wheelbase, "length", unit)} ${unit}, track ${written(study.track, "length", unit)} ${unit}.`,
    "",
    ...readerTable(headed, rows, unit, (row) => (row.blame === null ? null : blameWords(row.blame, length))),
    "",
    ...signs(headed).map((line) => `  ${line}`),
    "  inner, outer: from where the wheels are straight; a dash: too little to tell",
    "  ideal: no tyre scrubs; 100 % Ackermann reaches it, 0 % is parallel steer",
    "  no percents where ideal inner and outer differ by less than 0.5°: a turn plate",
    "  reads no closer, and they would mislead",
    "",
    ...lockLines(study, unit, length),
  ];
}

const MARGIN = " ".repeat("Right lock".length);

/** Both locks, how unequal they are, and how far the steering is off its middle. */
function lockLines(study: Study, unit: LengthUnit, length: Length): string[] {
  const { locks } = study;
  return [
    ...lockWords(study, "left", length).map((words, i) => `${i === 0 ? "Left lock " : MARGIN}  ${words}`),
    ...lockWords(study, "right", length).map((words, i) => `${i === 0 ? "Right lock" : MARGIN}  ${words}`),
    ...[unequalLocks(locks), stopsWords(study), tightestTurn(locks, unit), inputOffMiddle(study, length)].flatMap(
      (words) => (words === null ? [] : wrap(words, WIDTH, `${MARGIN}  `, MARGIN.length + 4)),
    ),
  ];
}

function lockWords(study: Study, wheel: Wheel, length: Length): string[] {
  const row = study.locks[wheel];
  if (row === null) return ["not known: the wheels do not turn"];
  if (row.blame !== null) return [`out of reach: ${blameWords(row.blame, length)}`];
  const ackermann = row.turn === wheel ? ackermannOf(row) : null;
  const angles = lockSaid(study, row, wheel);
  return ackermann === null ? [angles] : [angles, `Ackermann ${ackermann}`];
}
