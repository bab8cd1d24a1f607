import { ways } from "../../vehicle/survey/readings.ts";
import type { Focus, Model, SheetOnBench } from "../model.ts";
import { settledOf } from "../sheetState.ts";
import { countOf, linesOf, type SurveyLine, type SurveyLines, textOn } from "../survey.ts";
import { echoOfLine, legends, nearnessOf, saidOfLine, verdictOf } from "../surveyWords.ts";
import type { Typed } from "./Field.tsx";
import { Form, type FormRow, formRoom } from "./Form.tsx";
import { type Line, paragraph } from "./Lines.tsx";
import { fitting, wholeSentences } from "./wrap.ts";

/** From this width on names stand in full, and there is room for a reading that was taken twice. */
const wide = 76;
const widths = { wide: { name: 46, value: 20 }, narrow: { name: 38, value: 9 } };

/** Readings between all points of a front end: a list of fields with what each is off, and below it what they come to. */
export function SurveyPage({
  model,
  focus,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly focus: Focus & { on: "survey" };
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const { sheet, columns } = model;
  const form = sheet === null ? null : linesOf(sheet.text);
  const here = form?.lines[focus.cursor];
  if (sheet === null || form === null || here === undefined) return null;
  const isWide = columns >= wide;
  return (
    <Form
      titles={titlesOf(here, form)}
      list={form.lines.map((line) => formRow(line, sheet, form, isWide))}
      cursor={focus.cursor}
      field={focus}
      below={belowOf(model, sheet, form, here, focus, formRoom(rows))}
      columns={columns}
      rows={rows}
      widths={isWide ? widths.wide : widths.narrow}
      onTyped={onTyped}
    />
  );
}

function titlesOf(line: SurveyLine, { sheet }: SurveyLines): readonly string[] {
  if (line.is !== "reading") {
    const counts = ways.map(({ group }) => countOf(sheet, group));
    const read = counts.reduce((sum, each) => sum + each.read, 0);
    const all = counts.reduce((sum, each) => sum + each.all, 0);
    return [`EVERY POINT, FROM THE TAPE: ${read} of ${all} readings`, `EVERY POINT: ${read} of ${all} read`];
  }
  const { group } = line.way;
  const { read, all } = countOf(sheet, group);
  const name = group.toUpperCase();
  return [
    `EVERY POINT, FROM THE TAPE: ${name}, ${read} of ${all} read`,
    `EVERY POINT: ${name}, ${read} of ${all} read`,
  ];
}

function formRow(line: SurveyLine, sheet: SheetOnBench, form: SurveyLines, isWide: boolean): FormRow {
  const { text: echo, good } = echoOfLine(line, sheet, form);
  const name = "brief" in line && !(isWide && line.name.length <= widths.wide.name) ? line.brief : line.name;
  return { key: line.key, name, text: textOn(line, sheet), echo, good };
}

/** What is asked, what was typed, what the others say, how near its points are known; and what all come to. */
function belowOf(
  { columns, notice }: Model,
  sheet: SheetOnBench,
  form: SurveyLines,
  line: SurveyLine,
  { text, complaint }: Focus & { on: "survey" },
  room: number,
): readonly Line[] {
  const say = (words: string) => paragraph(words, columns);
  const loud = (words: string) => paragraph(words, columns, "bad");
  const settled = settledOf(sheet);
  const { words, isLoud } = saidOfLine(line, form, sheet, text);
  const said = complaint !== null ? loud(complaint) : (isLoud ? loud : say)(words);
  const kept = notice === null ? [] : (notice.tone === "wrong" ? loud : say)(notice.text);
  const rule: Line = "─".repeat(columns);
  const ask = line.is === "reading" ? say(line.ask) : [];
  const above = [rule, ...ask, ...said, ...kept];
  const verdict = verdictOf(sheet);
  const near =
    line.is === "reading" && settled !== null
      ? nearnessOf(line, settled, columns < wide).map((words) => ` ${fitting([words], columns - 2)}`)
      : [];
  const last = settled === null ? [] : [` ${fitting(legends, columns - 2)}`];
  const forVerdict = Math.max(2, room - above.length - near.length - last.length);
  const lines = wholeSentences(verdict.text, columns - 2, forVerdict, "(Ctrl-P tells all)");
  const shown = lines.map((each): Line => (verdict.isWrong ? [{ text: ` ${each}`, look: "warn" }] : ` ${each}`));
  return [...above, ...near.slice(0, Math.max(0, room - above.length - shown.length)), ...shown, ...last].slice(
    0,
    room,
  );
}
