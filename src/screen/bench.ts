import { type Study, studyOf } from "../measures/study.ts";
import type { Car } from "../vehicle/car.ts";
import { readCar } from "../vehicle/read.ts";
import { adjustableOf } from "./adjust.ts";
import type { Bench, Model, Place } from "./model.ts";
import { type Turn, turn } from "./turn.ts";

/** A car put on the bench, with nothing done to it yet. */
export function benchOf(car: Car): Bench {
  return { car, study: studyOf(car), before: null, undo: [], redo: [] };
}

/** Where the wheels stand when a car is first shown: straight ahead, at ride height. */
export function startingPlace({ study }: Bench): Place {
  return { input: "refused" in study ? 0 : (study.zero ?? study.straightAhead), left: 0, right: 0 };
}

function clamp(value: number, low: number, high: number): number {
  return Math.min(high, Math.max(low, value));
}

/** A place brought within the travel of the car on the bench. */
export function placeWithin({ study }: Bench, place: Place): Place {
  if ("refused" in study) return place;
  const { furthestInput, wheelTravel } = study;
  return {
    input: clamp(place.input, -furthestInput.right, furthestInput.left),
    left: clamp(place.left, -wheelTravel.droop, wheelTravel.bump),
    right: clamp(place.right, -wheelTravel.droop, wheelTravel.bump),
  };
}

/** The bench with another text of the same car, or the complaint of a text that is no car. */
function withText(bench: Bench, text: string): Bench | string {
  const car = readCar(text);
  if ("complaints" in car) return car.complaints[0]?.message ?? "this is no car";
  const before = "refused" in bench.study ? null : bench.study;
  return { ...bench, car, study: studyOf(car), before };
}

/**
 * The car changed to another text, as a turn that can be taken back. A text that is no car changes nothing and is
 * complained of; one whose front end does not go together is taken, since only so can it be mended.
 */
export function changed(model: Model, text: string, what: string): Turn {
  const { bench } = model;
  if (text === bench.car.text) return turn({ ...model, focus: { on: "bench" } });
  const next = withText(bench, text);
  if (typeof next === "string") return turn({ ...model, notice: { text: `Not done: ${next}.`, tone: "wrong" } });
  const undo = [...bench.undo, { text: bench.car.text, what }];
  return onBench(model, { ...next, undo, redo: [] }, what);
}

/** The last change taken back. */
export function undone(model: Model): Turn {
  const { bench } = model;
  const last = bench.undo.at(-1);
  if (last === undefined) return turn(model);
  const next = withText(bench, last.text);
  if (typeof next === "string") return turn(model);
  const redo = [...bench.redo, { text: bench.car.text, what: last.what }];
  return onBench(model, { ...next, undo: bench.undo.slice(0, -1), redo }, `Taken back: ${last.what}`);
}

/** The last change that was taken back, done again. */
export function redone(model: Model): Turn {
  const { bench } = model;
  const last = bench.redo.at(-1);
  if (last === undefined) return turn(model);
  const next = withText(bench, last.text);
  if (typeof next === "string") return turn(model);
  const undo = [...bench.undo, { text: bench.car.text, what: last.what }];
  return onBench(model, { ...next, undo, redo: bench.redo.slice(0, -1) }, `Done again: ${last.what}`);
}

/** Wheels that stood straight stay straight on the changed car, though its rack or column may then be elsewhere. */
function placeOn(model: Model, bench: Bench): Place {
  const wasStraight = model.place.input === startingPlace(model.bench).input;
  // A place of the rack is none of a column.
  if (model.bench.car.form.mechanism !== bench.car.form.mechanism) return startingPlace(bench);
  return placeWithin(bench, wasStraight ? { ...model.place, input: startingPlace(bench).input } : model.place);
}

function onBench(model: Model, bench: Bench, what: string): Turn {
  return turn(
    {
      ...model,
      bench,
      selected: adjustableOf(bench.car, model.selected).pair,
      place: placeOn(model, bench),
      focus: { on: "bench" },
      notice: { text: what, tone: "change" },
    },
    { do: "journal", what, settles: null },
  );
}

/** What numbers show their change from: the pinned car, else the car before the last change; null where there is none. */
export function comparedWith({ bench, pin }: Pick<Model, "bench" | "pin">): Study | null {
  if (pin === null) return bench.before;
  return "refused" in pin.study ? null : pin.study;
}

/** True when the car on the bench differs from what is on disk. */
export function isUnsaved({ bench, origin }: Pick<Model, "bench" | "origin">): boolean {
  return bench.car.text !== origin.saved;
}
