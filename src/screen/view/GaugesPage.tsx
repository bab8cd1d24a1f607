import type { Study } from "../../measures/study.ts";
import { countRead, type GaugeLine, gaugeLines, unitsOf } from "../gauges.ts";
import { askOf, besideWords, doesWords, echoOfLine, legends, nameOf } from "../gaugeWords.ts";
import type { Answers, Focus, Model } from "../model.ts";
import type { Typed } from "./Field.tsx";
import { Form, type FormRow } from "./Form.tsx";
import { type Line, paragraph } from "./Lines.tsx";
import { fitting } from "./wrap.ts";

/** From this width on an echo has room for all its words. */
const wide = 76;
const widths = { wide: { name: 37, value: 12 }, narrow: { name: 34, value: 9 } };

/** Readings on the built car: a list of fields with what the car on the bench gives, and below it what is asked. */
export function GaugesPage({
  model,
  focus,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly focus: Focus & { on: "gauges" };
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const { columns, gauges } = model;
  const { study } = model.bench;
  if (gauges === null || "refused" in study) return null;
  const { answers } = gauges;
  const lines = gaugeLines(model, answers);
  const here = lines[focus.cursor];
  const isWide = columns >= wide;
  const all = lines.filter(({ is }) => is === "reading").length;
  const read = countRead(lines, answers);
  return (
    <Form
      titles={[
        `READ ON THE BUILT CAR, ${read} of ${all}: typed, this car gives, read more or less`,
        `READ, ${read} of ${all}: typed, car gives, more or less`,
      ]}
      list={lines.map((line) => formRow(line, study, answers, isWide))}
      cursor={focus.cursor}
      field={focus}
      below={here === undefined ? [] : belowOf(model, study, here, focus)}
      columns={columns}
      rows={rows}
      widths={isWide ? widths.wide : widths.narrow}
      onTyped={onTyped}
    />
  );
}

const names = {
  match: "MATCH THE CAR: what is off?",
  file: "Name of the readings' file",
  write: "WRITE THE READINGS",
  from: "Open a file of readings",
} as const;

function formRow(line: GaugeLine, study: Study, answers: Answers, isWide: boolean): FormRow {
  const units = unitsOf(answers);
  if (line.is !== "reading") {
    const text = line.is === "match" || line.is === "write" ? null : (answers[line.key] ?? "");
    return { key: line.key, name: names[line.is], text, echo: "", good: true };
  }
  const echo = echoOfLine(study, line, answers, isWide);
  const name = nameOf(line, study.inputKind, units);
  return { key: line.key, name, text: answers[line.key] ?? "", echo: echo.text, good: echo.good };
}

/** What is asked and how to answer it; what was read beside what the car gives. */
function belowOf(
  { columns, notice, gauges }: Model,
  study: Study,
  line: GaugeLine,
  { complaint }: Focus & { on: "gauges" },
): readonly Line[] {
  const rule: Line = "─".repeat(columns);
  const say = (words: string) => (words === "" ? [] : paragraph(words, columns));
  const loud = (words: string) => paragraph(words, columns, "bad");
  const kept = notice === null ? [] : (notice.tone === "wrong" ? loud : say)(notice.text);
  const wrong = complaint === null ? [] : loud(complaint.replace(/^found/, "Found"));
  const answers = gauges?.answers ?? {};
  const legend = ` ${fitting(legends, columns - 2)}`;
  if (line.is !== "reading") return [rule, ...wrong, ...kept, ...say(doesWords(line.is)), legend];
  const beside = besideWords(study, line, answers);
  const said = wrong.length > 0 ? wrong : (beside.good ? say : loud)(beside.text);
  return [rule, ...said, ...say(askOf(line, study, answers)), ...kept, legend];
}
