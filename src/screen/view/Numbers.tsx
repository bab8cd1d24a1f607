import { Box, Text } from "ink";
import type { Study } from "../../measures/study.ts";
import type { Length } from "../../output/words.ts";
import { gauge } from "./gauge.ts";
import { type Cell, type ReadoutRow, readout } from "./readout.ts";
import { tones } from "./tone.ts";
import { fitting } from "./wrap.ts";

/** Columns kept for what the last change did, so that gauges do not move when it appears. */
const changeColumns = 7;
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
  layout: widths,
}: {
  readonly study: Study;
  readonly before: Study | null;
  readonly pinned: boolean;
  readonly length: Length;
  readonly layout: Widths & { readonly numberRows: number };
}) {
  const rows = readout(study, before, length);
  const shown = rows.length > widths.numberRows ? rows.filter(({ label }) => label !== "") : rows;
  return (
    <>
      <Text bold wrap="truncate">
        {`${(pinned ? " +- pinned" : "").padEnd(widths.label)}${"LEFT".padEnd(widths.cell)}RIGHT`}
      </Text>
      {shown.map((row) => (
        <Row key={`${row.label} ${row.caption}`} row={row} widths={widths} />
      ))}
      {shown.length < widths.numberRows ? <Box height={widths.numberRows - shown.length} /> : null}
    </>
  );
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

function CellText({ cell, slot, width }: { readonly cell: Cell; readonly slot: number; readonly width: number }) {
  const text = fitting(cell.texts, width - 1).padEnd(slot);
  const change = cell.change === "" ? "" : ` ${cell.change}`;
  const changes = cell.gauge !== null && text.length + changeColumns < width ? change.padEnd(changeColumns) : "";
  const room = Math.min(longestGauge, width - text.length - changes.length - 1);
  const drawn =
    cell.gauge !== null && room >= shortestGauge ? gauge(room, cell.gauge.low, cell.gauge.high, cell.gauge.marks) : "";
  const rest = drawn.padEnd(width - text.length - changes.length);
  // A style of its own costs a node of its own, and most cells need none.
  if (cell.tone === "plain" && change === "") return text + changes + rest;
  return (
    <>
      <Text {...tones[cell.tone]}>{text}</Text>
      <Text bold>{changes}</Text>
      {rest}
    </>
  );
}
