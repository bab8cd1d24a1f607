import { Box, Text } from "ink";
import { Fragment } from "react";
import type { Study } from "../../measures/study.ts";
import type { Length } from "../../output/words.ts";
import { gauge } from "./gauge.ts";
import { type Beside, type Cell, type ReadoutRow, readout } from "./readout.ts";
import { tones } from "./tone.ts";
import { fitting } from "./wrap.ts";

/** Columns kept for what the last change did, so that gauges do not move when it appears. */
const changeColumns = 7;
/** The same for a cell of two numbers with a change beside each, in a window that is wide enough for both. */
const wideChangeColumns = 13;
const wideCell = 50;
const shortestGauge = 7;
const longestGauge = 41;

interface Widths {
  readonly label: number;
  readonly cell: number;
}

/** The five numbers, left and right beside each other; where rows are few, only the numbers themselves. */
export function Numbers({
  study,
  before,
  pinned,
  length,
  cut,
  layout: widths,
}: {
  readonly study: Study;
  readonly before: Study | null;
  readonly pinned: boolean;
  readonly length: Length;
  readonly cut: (mm: number) => readonly [string, string];
  readonly layout: Widths & { readonly numberRows: number };
}) {
  const rows = readout(study, before, length, cut);
  const shown = rows.length > widths.numberRows ? rows.filter(({ label }) => label !== "") : rows;
  return (
    <>
      <Text bold wrap="truncate">
        {`${headOf(before, pinned).padEnd(widths.label)}${"LEFT".padEnd(widths.cell)}RIGHT`}
      </Text>
      {shown.map((row) => (
        <Row key={`${row.label} ${row.caption}`} row={row} widths={widths} />
      ))}
      {shown.length < widths.numberRows ? <Box height={widths.numberRows - shown.length} /> : null}
    </>
  );
}

/** What the changes are from: the pinned car, or the one before the last step, be that a change or one taken back. */
function headOf(before: Study | null, pinned: boolean): string {
  if (pinned) return " +- pinned";
  return before === null ? "" : " +-last step";
}

function Row({ row, widths }: { readonly row: ReadoutRow; readonly widths: Widths }) {
  const [first, second] = row.cells;
  return (
    <Text wrap="truncate">
      <Text bold={row.label !== ""}>{` ${row.label || row.caption}`.padEnd(widths.label)}</Text>
      <CellText cell={first} slot={row.slot} width={second === undefined ? 2 * widths.cell : widths.cell} />
      {second === undefined ? null : <CellText cell={second} slot={row.slot} width={widths.cell} />}
    </Text>
  );
}

/** What changed, if it fits: after a gauge's number in columns of its own, after other words where they end. */
function changeText({ change, gauge: shown, texts }: Cell, slot: number, width: number) {
  if (shown === null) {
    if (change === "") return { text: fitting(texts, width - 1), change: "" };
    const room = width - 2 - change.length;
    const text = texts.find((each) => each.length <= room);
    return text === undefined ? { text: fitting(texts, width - 1), change: "" } : { text, change: ` ${change}` };
  }
  const text = fitting(texts, width - 1).padEnd(slot);
  if (text.length + changeColumns >= width) return { text, change: "" };
  return { text, change: (change === "" ? "" : ` ${change}`).padEnd(changeColumns) };
}

/** Numbers with their own change beside each. */
function BesideText({ beside }: { readonly beside: readonly Beside[] }) {
  return beside.map(({ text, change }) => (
    <Fragment key={text}>
      {text}
      {change === "" ? null : <Text bold>{` ${change}`}</Text>}
    </Fragment>
  ));
}

const besideColumns = (beside: readonly Beside[]) =>
  beside.reduce((sum, { text, change }) => sum + text.length + (change === "" ? 0 : change.length + 1), 0);

function CellText({ cell, slot, width }: { readonly cell: Cell; readonly slot: number; readonly width: number }) {
  const beside = cell.beside !== undefined && width >= wideCell ? cell.beside : null;
  const { text, change } = changeText(cell, slot, width);
  const used = beside === null ? text.length + change.length : slot + wideChangeColumns;
  const room = Math.min(longestGauge, width - used - 1);
  const drawn =
    cell.gauge !== null && room >= shortestGauge ? gauge(room, cell.gauge.low, cell.gauge.high, cell.gauge.marks) : "";
  const rest = drawn.padEnd(width - used);
  if (beside !== null)
    return (
      <>
        <BesideText beside={beside} />
        {" ".repeat(Math.max(0, used - besideColumns(beside))) + rest}
      </>
    );
  // A style of its own costs a node of its own, and most cells need none.
  if (cell.tone === "plain" && change.trim() === "") return text + change + rest;
  return (
    <>
      <Text {...tones[cell.tone]}>{text}</Text>
      <Text bold>{change}</Text>
      {rest}
    </>
  );
}
