import { Box, Text } from "ink";
import type { BumpRow } from "../../measures/bumpTable.ts";
import type { SteerRow } from "../../measures/steerTable.ts";
import type { Study } from "../../measures/study.ts";
import { acrossTyre } from "../../measures/worstToe.ts";
import { degrees, fixed, type Length, percentsTell } from "../../output/words.ts";
import type { LengthUnit } from "../../vehicle/car.ts";
import { inch } from "../../vehicle/units/length.ts";
import { roundSpan } from "./roundSpan.ts";

/** The columns that one table needs, and the rows of its heading. */
export const tableColumns = 58;
export const tableHeading = 2;

/** A column of fixed width, so that nothing moves as the numbers change. */
interface Column<Row> {
  readonly head: string;
  readonly width: number;
  /** Null where there is no value. */
  readonly say: (row: Row) => string | null;
}

function steerColumns(study: Study, length: Length, unit: LengthUnit): readonly Column<SteerRow>[] {
  const place = (input: number) => (study.inputKind === "rack" ? length(input) : degrees(input));
  return [
    { head: study.inputKind, width: 12, say: (row) => place(row.input) },
    { head: "left", width: 8, say: (row) => angle(row.left.steer) },
    { head: "right", width: 8, say: (row) => angle(row.right.steer) },
    { head: "ideal", width: 8, say: (row) => angle(row.idealInner) },
    { head: "Acker.", width: 8, say: (row) => (percentsTell(row) ? percent(row.ackermann) : null) },
    { head: "turn radius", width: 13, say: (row) => (row.turnRadius === null ? null : roughly(row.turnRadius, unit)) },
  ];
}

function bumpColumns(study: Study, length: Length): readonly Column<BumpRow>[] {
  const toe = (change: number | null) => (change === null ? null : length(acrossTyre(change, study.tireRadius)));
  return [
    { head: "travel", width: 12, say: (row) => length(row.travel) },
    { head: "left toe", width: 12, say: (row) => toe(row.left.toeChange) },
    { head: "right toe", width: 12, say: (row) => toe(row.right.toeChange) },
    { head: "both steer", width: 12, say: (row) => sideways(row.bounceSteer) },
  ];
}

/** To a whole inch or centimetre: a turning circle is not measured closer. */
function roughly(size: number, unit: LengthUnit): string {
  return unit === "in" ? `${Math.round(size / inch)} in` : `${Math.round(size / 10) * 10} mm`;
}

function angle(value: number | null): string | null {
  return value === null ? null : degrees(value);
}

function percent(value: number | null): string | null {
  return value === null ? null : `${fixed(value, 0)} %`;
}

function sideways(value: number | null): string | null {
  if (value === null) return null;
  const size = degrees(Math.abs(value), 2);
  return size === degrees(0, 2) ? size : `${size} ${value > 0 ? "left" : "right"}`;
}

function lines<Row>(columns: readonly Column<Row>[], rows: readonly Row[]): readonly string[] {
  const heading = columns.map(({ head, width }) => head.padStart(width)).join("");
  return [heading, ...rows.map((row) => columns.map(({ say, width }) => (say(row) ?? "-").padStart(width)).join(""))];
}

/** Lock to lock, and full droop to full bump with the wheels straight, for terminals that have the room. */
export function Tables({
  study,
  length,
  unit,
  rows,
  count,
}: {
  readonly study: Study;
  readonly length: Length;
  readonly unit: LengthUnit;
  readonly rows: number;
  readonly count: 1 | 2;
}) {
  const { inputKind, inputTravel, wheelTravel } = study;
  const steer = study.steerTable(
    roundSpan({ from: -inputTravel.right, to: inputTravel.left, rows }, inputKind === "rack" ? unit : "degrees"),
  );
  const straight = study.zero ?? study.straightAhead;
  const bump = study.bumpTable(straight, roundSpan({ from: wheelTravel.bump, to: -wheelTravel.droop, rows }, unit));
  return (
    <Box>
      <Table title="LOCK TO LOCK at ride height" lines={lines(steerColumns(study, length, unit), steer.rows)} />
      {count === 2 && bump !== null ? (
        <Table
          title="BUMP TO DROOP straight ahead, toe-in across tyre"
          lines={lines(bumpColumns(study, length), bump.rows)}
        />
      ) : null}
    </Box>
  );
}

function Table({ title, lines: [heading, ...rest] }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <Box flexDirection="column" width={tableColumns + 1}>
      <Text bold wrap="truncate">{` ${title}`}</Text>
      <Text bold wrap="truncate">
        {heading}
      </Text>
      <Text wrap="truncate">{rest.join("\n")}</Text>
    </Box>
  );
}
