import { uprightFields } from "../../vehicle/upright-fields.ts";
import type { Focus, Model } from "../model.ts";
import { hangRow, nowOf, saidOf, typedFor, whatItDoes } from "../upright.ts";
import type { Typed } from "./Field.tsx";
import { Form, type FormRow } from "./Form.tsx";
import { type Line, paragraph } from "./Lines.tsx";

/** The upright as a part on the bench: its measures, how it is to hang, and what that does to the car. */
export function UprightPage({
  model,
  focus,
  rows,
  onTyped,
}: {
  readonly model: Model;
  readonly focus: Focus & { on: "upright" };
  readonly rows: number;
  readonly onTyped: Typed;
}) {
  const fields = uprightFields.map((field): FormRow => {
    const text = focus.answers[field.key] ?? "";
    const typed = typedFor(field, focus.answers, model);
    const good = typed === null || typeof typed === "number";
    const echo = !good
      ? "not understood"
      : typed === null
        ? `now ${nowOf(model, field)}`
        : `= ${saidOf(field, typed, model)}`;
    return { key: field.key, name: field.name, text, echo, good };
  });
  const hang: FormRow = { key: "hang", name: "HANG IT SO", text: null, echo: "", good: true };
  const sides = model.sides === "both" ? "both sides" : `${model.sides} side`;
  return (
    <Form
      titles={[
        `THE UPRIGHT ON THE BENCH, ${sides}: its king-pin line held upright`,
        `THE UPRIGHT ON THE BENCH, ${sides}`,
      ]}
      list={[...fields, hang]}
      cursor={focus.cursor}
      field={focus}
      below={belowOf(model, focus)}
      columns={model.columns}
      rows={rows}
      onTyped={onTyped}
    />
  );
}

/** What is asked and what stands there now; and what hanging it so does. */
function belowOf(model: Model, { cursor, answers, complaint }: Focus & { on: "upright" }): readonly Line[] {
  const say = (words: string) => (words === "" ? [] : paragraph(words, model.columns));
  const rule: Line = "─".repeat(model.columns);
  const field = uprightFields[cursor];
  const said = complaint === null ? [] : paragraph(complaint, model.columns, "bad");
  const ask =
    field === undefined
      ? "Enter hangs it so: lower joints and toe stay, upper joint, wheel and tie-rod hole go where that puts them. One change; u takes it back."
      : `${field.name}: ${field.help}. Now ${nowOf(model, field)}; left empty it stays.`;
  return [
    rule,
    ...say(ask),
    ...said,
    ...say(model.notice?.text ?? ""),
    ...say(cursor === hangRow || complaint === null ? whatItDoes(model, answers) : ""),
  ];
}
