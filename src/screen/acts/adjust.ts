import { bewareOf } from "../../output/beware.ts";
import type { Car } from "../../vehicle/car.ts";
import { cutRods, fitRods, setQuantity } from "../../vehicle/edit.ts";
import type { Quantity } from "../../vehicle/quantity.ts";
import { readCar } from "../../vehicle/read.ts";
import { sayLength } from "../../vehicle/units/format.ts";
import { adjustableOf, adjustables, quantitiesOn, valueNow } from "../adjust.ts";
import { changed } from "../bench.ts";
import { isChange, readFor } from "../entry.ts";
import { bareValue, bothValues, sayer } from "../lengths.ts";
import type { Bench, Model, Sides } from "../model.ts";
import { stepCount, stepped, stepsFor } from "../steps.ts";
import { type Act, type Turn, turn } from "../turn.ts";

const sidesInTurn: Readonly<Record<Sides, Sides>> = { both: "left", left: "right", right: "both" };

/** The next choice of both, left, right. */
export function nextSides(sides: Sides): Sides {
  return sidesInTurn[sides];
}

function selectBy(ways: number): Act {
  return (model) => {
    const list = adjustables(model.bench.car);
    const at = list.findIndex((each) => each.pair === model.selected);
    const next = list[Math.min(list.length - 1, Math.max(0, at + ways))];
    return turn({ ...model, selected: next?.pair ?? model.selected });
  };
}

/** The first line of the next group of the list, or of the one before. */
function groupBy(ways: 1 | -1): Act {
  return (model) => {
    const list = adjustables(model.bench.car);
    const firsts = list.flatMap(({ group }, at) => (list[at - 1]?.group === group ? [] : [at]));
    const here = list.findIndex((each) => each.pair === model.selected);
    const next = ways > 0 ? firsts.find((at) => at > here) : firsts.findLast((at) => at < here);
    return turn({ ...model, selected: list[next ?? here]?.pair ?? model.selected });
  };
}

/** "Tie-rod tab, ahead, both sides": what is about to be changed. */
function subject(model: Model): string {
  const line = adjustableOf(model.bench.car, model.selected);
  if (line.quantities.length < 2) return line.label;
  return `${line.label}, ${model.sides === "both" ? "both sides" : `${model.sides} only`}`;
}

interface NewValue {
  readonly quantity: Quantity;
  readonly value: number;
}

/** A value as the file is to hold it: the builder's own text, or the unit that he sees where the file has another. */
function written(model: Model, { quantity, value }: NewValue, own: string | null): { as?: string } {
  const { unit } = model.display;
  if (quantity.kind === "length" && unit !== model.bench.car.form.units) {
    return { as: sayLength(value, unit === "in" ? { unit, exact: true } : { unit }) };
  }
  return own === null ? {} : { as: own.trim() };
}

/** The selected line changed to new values, each side by itself where they differ. */
function changeTo(model: Model, values: readonly NewValue[], what: string, own: string | null): Turn {
  const pair = model.selected;
  const [first, second] = values;
  if (first === undefined) return turn(model);
  if (second === undefined || second.value === first.value) {
    const sides = values.length === 2 ? "both" : (first.quantity.wheel ?? "both");
    return changed(
      model,
      setQuantity(model.bench.car, { pair, sides, value: first.value, ...written(model, first, own) }),
      what,
    );
  }
  let car: Car = model.bench.car;
  for (const each of values) {
    const text = setQuantity(car, {
      pair,
      sides: each.quantity.wheel ?? "both",
      value: each.value,
      ...written(model, each, own),
    });
    const read = readCar(text);
    if ("complaints" in read) return changed(model, text, what);
    car = read;
  }
  return changed(model, car.text, what);
}

function stepBy(ways: number): Act {
  return (model) => {
    const { bench, display } = model;
    const values = quantitiesOn(adjustableOf(bench.car, model.selected), model.sides).map((quantity) => {
      const from = valueNow(bench, quantity) ?? 0;
      return { quantity, from, value: stepped(from, ways, quantity.kind, display) };
    });
    const [first] = values;
    if (first === undefined) return turn(model);
    const steps = stepsFor(first.quantity.kind, display);
    const { size, words } = steps[display.step] ?? steps[0];
    // A value that was between marks moves by a little more or less than the step.
    const isWhole = values.every(({ from, value }) => Math.abs(Math.abs(value - from) - size) < 1e-6 * size);
    const landing = isWhole ? "" : `, to the nearest ${steps[0].words},`;
    const way = ways > 0 ? "+" : "-";
    return changeTo(
      model,
      values,
      `${subject(model)}: ${way}${words}${landing} to ${bothValues(values, model.display)}`,
      null,
    );
  };
}

const type: Act = (model) => turn({ ...model, focus: { on: "entry", text: "" } });

/** The values of both sides, in words, where one value would go over two that do not look alike; else null. */
function unlikeNow({ bench, selected, sides, display }: Model): string | null {
  const values = quantitiesOn(adjustableOf(bench.car, selected), sides).flatMap((quantity) => {
    const value = valueNow(bench, quantity);
    return value === null ? [] : [{ quantity, value }];
  });
  const [first, second] = values.map(({ quantity, value }) => bareValue(value, quantity, display));
  return second === undefined || first === second ? null : bothValues(values, display);
}

/** Takes what was typed, if it is a value; else the field stays, with the complaint below it. */
export const acceptEntry: Act = (model) => {
  const { focus, bench } = model;
  if (focus.on !== "entry") return turn(model);
  if (focus.text.trim() === "") return turn({ ...model, focus: { on: "bench" } });
  const values: NewValue[] = [];
  for (const quantity of quantitiesOn(adjustableOf(bench.car, model.selected), model.sides)) {
    const reading = readFor(focus.text, quantity, valueNow(bench, quantity), model);
    if ("complaint" in reading) return turn(model);
    values.push({ quantity, value: reading.value });
  }
  const unlike = isChange(focus.text) ? null : unlikeNow(model);
  if (unlike !== null && focus.unlike !== true) {
    const text = `${unlike} now: Enter again sets both.`;
    return turn({ ...model, focus: { ...focus, unlike: true }, notice: { text, tone: "wrong" } });
  }
  const own = isChange(focus.text) ? null : focus.text;
  return changeTo(model, values, `${subject(model)}: set to ${bothValues(values, model.display)}`, own);
};

function sizeBy(ways: number): Act {
  return (model) => {
    const step = Math.min(stepCount - 1, Math.max(0, model.display.step + ways));
    return turn({ ...model, display: { ...model.display, step } });
  };
}

const sides: Act = (model) => turn({ ...model, sides: nextSides(model.sides) });

/** Rods cut to fit, and what that makes worse: it is a cure only where the rack is on its middle with the wheels straight. */
function fitted(model: Model, before: Bench["study"]): Turn {
  const next = changed(model, fitRods(model.bench.car), "Rods: cut to fit, their length follows");
  const after = next.model.bench.study;
  if ("refused" in before || "refused" in after) return next;
  const worse = bewareOf(before, after, sayer(model.display));
  if (worse.length === 0) return next;
  const notice = { text: `Rods: cut to fit, and now ${worse.join("; ")}. u takes it back.`, tone: "wrong" } as const;
  return { ...next, model: { ...next.model, notice } };
}

const rods: Act = (model) => {
  const { car, study } = model.bench;
  const { left, right } = car.form.rods;
  if (left === "cut" || right === "cut") return fitted(model, study);
  if ("refused" in study) return turn(model);
  return changed(model, cutRods(car, study.rodLengths), "Rods: as cut, their length stays");
};

export const adjustActs = {
  previousGroup: groupBy(-1),
  nextGroup: groupBy(1),
  previous: selectBy(-1),
  next: selectBy(1),
  less: stepBy(-1),
  more: stepBy(1),
  type,
  smallerStep: sizeBy(-1),
  largerStep: sizeBy(1),
  sides,
  rods,
} satisfies Record<string, Act>;
