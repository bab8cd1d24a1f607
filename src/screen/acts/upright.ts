import { uprightFields } from "../../vehicle/upright-fields.ts";
import { changed } from "../bench.ts";
import type { Answers, Focus, Model } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";
import { typingAt } from "../typing.ts";
import { hangRow, hungCar, typedFor } from "../upright.ts";

type OnUpright = Focus & { readonly on: "upright" };

function at(model: Model, answers: Answers, cursor: number, complaint: string | null = null): Turn {
  const row = Math.min(hangRow, Math.max(0, cursor));
  const text = answers[uprightFields[row]?.key ?? ""] ?? "";
  return turn({
    ...model,
    focus: { on: "upright", cursor: row, text, typing: typingAt(text, complaint), answers, complaint },
  });
}

/** A row up or down. */
export function moveOnUpright(model: Model, focus: OnUpright, ways: number): Turn {
  return at(model, focus.answers, focus.cursor + ways);
}

/** What was typed goes into the field's answer. */
export function typeOnUpright(model: Model, focus: OnUpright, text: string): Model {
  const field = uprightFields[focus.cursor];
  if (field === undefined) return model;
  const answers = { ...focus.answers, [field.key]: text };
  return { ...model, focus: { ...focus, text, typing: "typed", answers, complaint: null } };
}

/** Takes the field and goes on; on the last line, hangs the upright as one change of the car. */
export function acceptUpright(model: Model, focus: OnUpright): Turn {
  const { cursor, answers } = focus;
  const field = uprightFields[cursor];
  if (field !== undefined) {
    const typed = typedFor(field, answers, model);
    return typed !== null && typeof typed === "object"
      ? at(model, answers, cursor, `${typed.complaint}.`)
      : at(model, answers, cursor + 1);
  }
  const made = hungCar(model, answers);
  if ("complaint" in made) return at(model, answers, made.cursor, made.complaint);
  return changed(model, made.text, made.what);
}

export const uprightActs = {
  upright: (model) => at(model, {}, 0),
} satisfies Record<string, Act>;
