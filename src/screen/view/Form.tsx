import { Box, Text } from "ink";
import { TextField } from "../../terminal/TextField.tsx";
import { typedInto } from "../typing.ts";
import { windowOf } from "./AdjustList.tsx";
import type { Typed } from "./Field.tsx";
import { filled, type Line, Lines } from "./Lines.tsx";
import { fitting } from "./wrap.ts";

/** A line of a form: a field, or what is done with all of them. */
export interface FormRow {
  readonly key: string;
  readonly name: string;
  /** What was typed; null for the line that does something. */
  readonly text: string | null;
  /** What it was read as, or what stands there without it. */
  readonly echo: string;
  readonly good: boolean;
}

type FieldHere = Parameters<typeof typedInto>[0];

/** Columns of the fields' names, and of what was typed where there is no cursor. */
export interface FormWidths {
  readonly name: number;
  readonly value: number;
}

/** Columns that an echo has at least: where there is none, what was typed may take them. */
const echoColumns = 9;

const usual: FormWidths = { name: 31, value: 23 };

/** Rows below the list at least: the question, how to answer it, and what all answers make. */
const belowRows = 9;

/** Rows below the list where there is no more to say than a form mostly has. */
export function formRoom(rows: number): number {
  return Math.max(3, Math.min(rows - 4, Math.max(belowRows, Math.floor(rows / 3))));
}

/** Fields in a list with a cursor, the one under it to be typed in, and words below. */
export function Form({
  titles,
  list,
  cursor,
  field,
  below,
  columns,
  rows,
  widths = usual,
  onTyped,
}: {
  /** Of these the first that fits. */
  readonly titles: readonly string[];
  readonly list: readonly FormRow[];
  readonly cursor: number;
  /** What the field under the cursor holds, and how it stands. */
  readonly field: FieldHere;
  readonly below: readonly Line[];
  readonly columns: number;
  readonly rows: number;
  readonly widths?: FormWidths;
  readonly onTyped: Typed;
}) {
  const room = rows - 1 - Math.min(rows - 4, Math.max(belowRows, below.length));
  const { from, to } = windowOf(list.length, cursor, room);
  const shown = list.slice(from, to);
  const at = cursor - from;
  const isMore = (index: number) =>
    (index === 0 && from > 0 && "↑") || (index === shown.length - 1 && to < list.length && "↓") || " ";
  const lines = shown.map((row, index) => rowLine(row, isMore(index), widths));
  const here = list[cursor];
  return (
    <Box flexDirection="column" width={columns} height={rows}>
      <Text bold wrap="truncate">
        {titleLine(titles, columns)}
      </Text>
      {at > 0 ? <Lines columns={columns} lines={lines.slice(0, at)} /> : null}
      {here === undefined ? null : (
        <FieldRow row={here} field={field} columns={columns} widths={widths} onTyped={onTyped} />
      )}
      <Lines columns={columns} lines={filled(lines.slice(at + 1), room - at - 1)} />
      <Lines columns={columns} lines={filled(below, rows - 1 - room)} />
    </Box>
  );
}

function titleLine(titles: readonly string[], columns: number): string {
  const said = fitting(titles, columns - 2);
  return ` ${said} ${"─".repeat(Math.max(0, columns - said.length - 2))}`;
}

/** The row with the cursor: its field takes all that is left of the line. */
function FieldRow({
  row,
  field,
  columns,
  widths,
  onTyped,
}: {
  readonly row: FormRow;
  readonly field: FieldHere;
  readonly columns: number;
  readonly widths: FormWidths;
  readonly onTyped: Typed;
}) {
  const label = `> ${nameIn(row, widths)}`;
  if (row.text === null) return <Text bold inverse wrap="truncate">{`${label} Enter`}</Text>;
  return (
    <Text wrap="truncate">
      <Text bold>{label} </Text>
      <TextField
        key={row.key}
        columns={columns - label.length - 2}
        text={field.text}
        onTyped={(now, atEnd) => onTyped(typedInto(field, now, atEnd))}
      />
    </Text>
  );
}

function nameIn({ name }: FormRow, { name: columns }: FormWidths): string {
  return fitting([name], columns).padEnd(columns);
}

function rowLine(row: FormRow, mark: string, widths: FormWidths): Line {
  const { text, echo, good } = row;
  const isEmpty = text?.trim() === "" && echo === "";
  const room = echo === "" ? widths.value + echoColumns : widths.value - 1;
  const value = text === null ? "" : isEmpty ? "..." : fitting([text.trim()], room);
  const start = `${mark} ${nameIn(row, widths)} ${value.padEnd(widths.value)}`;
  return good ? `${start}${echo}` : [start, { text: echo, look: "bad" }];
}
