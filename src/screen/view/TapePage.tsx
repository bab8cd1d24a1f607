import type { Reading } from "../../vehicle/from-tape/readings.ts";
import { kingPinSketch } from "../../vehicle/from-tape/sketch.ts";
import type { Focus, Model } from "../model.ts";
import { beforeMaking, crossCheck, echoOfRow, type TapeRow, tapeRows } from "../tape.ts";
import type { Typed } from "./Field.tsx";
import { Form, type FormRow } from "./Form.tsx";
import { type Line, paragraph } from "./Lines.tsx";

const samples = {
  length: "Type it as the tape shows it: 14 3/8, or 365 mm.",
  angle: "Degrees, 6 1/2; or two readings and their distance: 1/4, 2 over 14.",
  number: "Type a plain number, such as 2 1/2.",
} as const;

function sampleOf({ key, kind, words }: Reading): string {
  if (kind === "word") return `Type ${words.join(" or ")}.`;
  return key === "toe"
    ? "Type 45 7/8 front, 46 rear; or 1/8 total; or 50 1/8, 50 1/4 over 24; or 0.2 deg."
    : samples[kind];
}

/** Rows of a window in which the sketch leaves the list enough of them, and the readings that it shows. */
const rowsForSketch = 34;
const byKingPin = ["king-pins-apart", "tab-back", "tab-in", "tab-height"];

const titles = {
  1: ["A NEW CAR FROM THE TAPE, page 1: on stands, at ride height, wheels straight", "A NEW CAR FROM THE TAPE, page 1"],
  2: ["A NEW CAR FROM THE TAPE, page 2: arms and travel, for bump steer", "A NEW CAR FROM THE TAPE, page 2"],
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
  const here = tapeRows[focus.cursor];
  const page = here?.page ?? 1;
  const listed = tapeRows.filter((each) => each.page === page);
  return (
    <Form
      titles={titles[page]}
      list={listed.map((row) => formRow(row, model))}
      cursor={here === undefined ? 0 : listed.indexOf(here)}
      field={focus}
      below={here === undefined ? [] : belowOf(model, here, focus.complaint)}
      columns={model.columns}
      rows={rows}
      onTyped={onTyped}
    />
  );
}

function formRow(row: TapeRow, { tape }: Model): FormRow {
  const answers = tape ?? {};
  const { text: echo, good } = echoOfRow(row, answers);
  return { key: row.key, name: row.name, text: row.is === "make" ? null : (answers[row.key] ?? ""), echo, good };
}

/** What is asked, how to answer it, what was read; and what all readings make together. */
function belowOf({ tape, notice, columns, rows }: Model, row: TapeRow, complaint: string | null): readonly Line[] {
  const answers = tape ?? {};
  const say = (words: string) => paragraph(words, columns);
  const loud = (words: string) => paragraph(words, columns, "bad");
  const rule: Line = "─".repeat(columns);
  const said = complaint === null ? [] : loud(complaint);
  const kept = notice === null ? [] : say(notice.text);
  const checked = crossCheck(answers);
  const check = (checked?.words ?? []).flatMap(checked?.agree ? say : loud);
  if (row.is === "make") return [rule, ...said, ...check, ...say(beforeMaking(answers))];
  const sample = row.is === "reading" ? sampleOf(row.reading) : "";
  const { text: echo, good } = echoOfRow(row, answers);
  const read = said.length > 0 ? said : say(good && echo.startsWith("=") ? echo : sample);
  const sketch = rows >= rowsForSketch && byKingPin.includes(row.key) ? kingPinSketch.map((line) => ` ${line}`) : [];
  return [rule, ...say(row.ask), ...read, ...kept, ...check, ...sketch];
}
