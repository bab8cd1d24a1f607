import { Box, Text, Transform } from "ink";
import TextInput from "ink-text-input";
import { fieldWindow } from "../../terminal/cursor.ts";
import type { Answers, Focus, Model } from "../model.ts";
import { beforeMaking, crossCheck, echoOfRow, type TapeRow, tapeRows } from "../tape.ts";
import { windowOf } from "./AdjustList.tsx";
import type { Typed } from "./Bottom.tsx";
import { filled, type Line, Lines } from "./Lines.tsx";
import { fitting, wrapped } from "./wrap.ts";

const nameColumns = 31;
const valueColumns = 23;

/** Rows below the list: the question, how to answer it, and what the readings make so far. */
const belowRows = 9;

const samples = {
  length: "Type it as the tape shows it: 14 3/8, or 365 mm.",
  angle: "Degrees, 6 1/2; or two readings over a board or plumb line: 50 1/8, 50 1/4 over 24.",
  number: "Type a plain number, such as 2 1/2.",
  way: "Type left or right.",
} as const;

/** A new car from readings with a tape: a list of fields, and below it what is asked and what the readings make. */
export function TapePage({
  model,
  focus,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly focus: Focus & { on: "tape" };
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const { columns } = model;
  const answers = model.tape ?? {};
  const here = tapeRows[focus.cursor];
  const page = here?.page ?? 1;
  const listed = tapeRows.filter((each) => each.page === page);
  const cursor = here === undefined ? 0 : listed.indexOf(here);
  const below = belowOf(model, here, focus.complaint);
  // What is said before the car is made is longer than any question.
  const room = rows - 1 - Math.min(rows - 4, Math.max(belowRows, below.length));
  const { from, to } = windowOf(listed.length, cursor, room);
  const shown = listed.slice(Math.max(0, from), to);
  const at = cursor - Math.max(0, from);
  const isMore = (index: number) =>
    (index === 0 && from > 0 && "↑") || (index === shown.length - 1 && to < listed.length && "↓") || " ";
  const lines = shown.map((row, index) => rowLine(row, answers, isMore(index)));
  return (
    <Box flexDirection="column" width={columns} height={rows}>
      <Text bold wrap="truncate">
        {titleOf(page, columns)}
      </Text>
      {at > 0 ? <Lines columns={columns} lines={lines.slice(0, at)} /> : null}
      {here === undefined ? null : <FieldRow row={here} text={focus.text} columns={columns} onTyped={onTyped} />}
      <Lines columns={columns} lines={filled(lines.slice(at + 1), room - at - 1)} />
      <Lines columns={columns} lines={filled(below, rows - 1 - room)} />
    </Box>
  );
}

function titleOf(page: 1 | 2, columns: number): string {
  const words = [
    page === 1
      ? "A NEW CAR FROM THE TAPE, page 1: on stands, at ride height, wheels straight"
      : "A NEW CAR FROM THE TAPE, page 2: arms and travel, for bump steer",
    `A NEW CAR FROM THE TAPE, page ${page}`,
  ];
  const said = fitting(words, columns - 2);
  return ` ${said} ${"─".repeat(Math.max(0, columns - said.length - 2))}`;
}

/** The row with the cursor: its field takes all that is left of the line. */
function FieldRow({
  row,
  text,
  columns,
  onTyped,
}: {
  readonly row: TapeRow;
  readonly text: string;
  readonly columns: number;
  readonly onTyped: Typed;
}) {
  const label = `> ${row.name.padEnd(nameColumns)}`;
  if (row.is === "make") return <Text bold inverse wrap="truncate">{`${label} Enter`}</Text>;
  return (
    <Text wrap="truncate">
      <Text bold>{label} </Text>
      <Transform transform={fieldWindow(columns - label.length - 2)}>
        <TextInput key={row.key} value={text} onChange={onTyped} />
      </Transform>
    </Text>
  );
}

function rowLine(row: TapeRow, answers: Answers, mark: string): Line {
  const text = (answers[row.key] ?? "").trim();
  const { text: echo, good } = echoOfRow(row, answers);
  const isEmpty = row.is !== "make" && text === "" && echo === "";
  const value = row.is === "make" ? "" : isEmpty ? "..." : fitting([text], valueColumns - 1);
  const start = `${mark} ${row.name.padEnd(nameColumns)} ${value.padEnd(valueColumns)}`;
  return good ? `${start}${echo}` : [start, { text: echo, look: "bad" }];
}

/** What is asked, how to answer it, what was read; and what all readings make together. */
function belowOf(model: Model, row: TapeRow | undefined, complaint: string | null): readonly Line[] {
  const answers = model.tape ?? {};
  const width = model.columns - 2;
  const indent = (words: string): Line[] => wrapped(words, width).map((line) => ` ${line}`);
  const loud = (words: string): Line[] =>
    wrapped(words, width).map((line): Line => [{ text: ` ${line}`, look: "bad" }]);
  const rule: Line = "─".repeat(model.columns);
  if (row === undefined) return [rule];
  const said = complaint === null ? [] : loud(complaint);
  const kept = model.notice === null ? [] : indent(model.notice.text);
  const checked = crossCheck(answers);
  const check = (checked?.words ?? []).flatMap(checked?.agree ? indent : loud);
  if (row.is === "make") return [rule, ...said, ...check, ...indent(beforeMaking(answers))];
  const sample = row.is === "reading" ? samples[row.reading.kind] : "";
  const { text: echo, good } = echoOfRow(row, answers);
  const read = said.length > 0 ? said : good ? indent(/^=/.test(echo) ? echo : sample) : [` ${sample}`];
  return [rule, ...indent(row.ask), ...read, ...kept, ...check];
}
