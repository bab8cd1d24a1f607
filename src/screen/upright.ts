import { type Study, studyOf } from "../measures/study.ts";
import { changesOf, moveWords, uprightValue } from "../output/upright.ts";
import { degrees } from "../output/words.ts";
import { readBenchAngle } from "../vehicle/from-tape/angle.ts";
import { type UprightChange, withUpright } from "../vehicle/hang.ts";
import { readCar } from "../vehicle/read.ts";
import { readLength } from "../vehicle/units/length.ts";
import { type UprightField, uprightFields } from "../vehicle/upright-fields.ts";
import { sayer } from "./lengths.ts";
import type { Answers, Model } from "./model.ts";

/** Where the form's cursor stands after all fields: on the line that hangs the upright. */
export const hangRow = uprightFields.length;

/** An angle of one wheel, by degrees or by two readings over a board. */
const alone = { shared: false, diameter: null, along: "board" } as const;

/** What was typed for a measure, mm or rad, or what is wrong with it; null where nothing was: it stays. */
export function typedFor(
  { kind, key }: UprightField,
  answers: Answers,
  { display }: Pick<Model, "display">,
): number | { readonly complaint: string } | null {
  const text = (answers[key] ?? "").trim();
  if (text === "") return null;
  const read = kind === "angle" ? readBenchAngle(text, display.unit, alone) : readLength(text, display.unit);
  if ("complaint" in read) return { complaint: `"${text}" is ${read.complaint}` };
  return "rad" in read ? read.rad : read.mm;
}

/** A measure as it is shown, with its unit. */
export function saidOf({ kind }: UprightField, value: number, model: Pick<Model, "display">): string {
  return kind === "angle" ? degrees(value, 2) : sayer(model.display)(value);
}

/** What a measure is now: of both wheels where they are not alike and both are meant. */
export function nowOf(model: Pick<Model, "bench" | "sides" | "display">, field: UprightField): string {
  const wheels = model.sides === "both" ? (["left", "right"] as const) : ([model.sides] as const);
  const said = wheels.map((wheel) => saidOf(field, uprightValue(model.bench, wheel, field), model));
  const [first = "", second = first] = said;
  return first === second ? first : `${first}, right ${second}`;
}

/** What the fields change; or the first that is none. */
function changeFrom(
  model: Pick<Model, "display">,
  answers: Answers,
): UprightChange | { readonly cursor: number; readonly complaint: string } {
  const change: Record<string, number> = {};
  for (const [cursor, field] of uprightFields.entries()) {
    const typed = typedFor(field, answers, model);
    if (typed !== null && typeof typed === "object") return { cursor, complaint: `${field.name}: ${typed.complaint}.` };
    if (typed !== null) change[field.key] = typed;
  }
  return change;
}

/** The car with the upright as typed, its study, and the words for the change; or why it cannot be. */
export type HungCar =
  | { readonly text: string; readonly what: string; readonly after: Study }
  | { readonly cursor: number; readonly complaint: string };

/** The car on the bench with what was typed. */
export function hungCar(model: Pick<Model, "bench" | "sides" | "display">, answers: Answers): HungCar {
  const { bench, sides } = model;
  const change = changeFrom(model, answers);
  if ("complaint" in change) return change;
  const made = withUpright(bench.car, sides, change);
  if ("complaint" in made) return { cursor: hangRow, complaint: made.complaint };
  const car = readCar(made.text);
  if ("complaints" in car) {
    const [first] = car.complaints;
    return { cursor: hangRow, complaint: `That makes no car: ${first?.part ?? ""}: ${first?.message ?? ""}.` };
  }
  const after = studyOf(car);
  if ("refused" in after) return { cursor: hangRow, complaint: `That makes no car. ${after.refused}` };
  const said = uprightFields.flatMap((field) => {
    const value = change[field.key];
    return value === undefined ? [] : [`${field.name.toLowerCase()} ${saidOf(field, value, model)}`];
  });
  const side = sides === "both" ? "Uprights, both sides" : `Upright, ${sides} only`;
  return { text: made.text, what: `${side}: ${said.join(", ")}`, after };
}

/** What hanging it so does, in words; "" where nothing was typed that does anything. */
export function whatItDoes(model: Pick<Model, "bench" | "sides" | "display">, answers: Answers): string {
  const made = hungCar(model, answers);
  const { study } = model.bench;
  if ("complaint" in made || "refused" in study) return "";
  const changes = changesOf(study, made.after, model.display.unit);
  const moves = moveWords(study, made.after, sayer(model.display));
  return changes.length === 0 ? "" : `It does: ${changes.join("; ")}.${moves === null ? "" : ` ${moves}`}`;
}
