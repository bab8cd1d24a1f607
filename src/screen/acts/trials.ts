import { studyOf } from "../../measures/study.ts";
import { readCar } from "../../vehicle/read.ts";
import { changed, redone, undone } from "../bench.ts";
import type { Model, Trial } from "../model.ts";
import { type Act, type Turn, turn } from "../turn.ts";

/** The car on the bench as a trial of that name. */
export function trialOf({ bench }: Pick<Model, "bench">, name: string): Trial {
  return { name, car: bench.car, study: bench.study };
}

const said = (model: Model, text: string): Turn => turn({ ...model, notice: { text, tone: "done" } });

/** Pins the car as it is now; the pinned car itself is let go. */
const pin: Act = (model) =>
  model.pin !== null && model.pin.car.text === model.bench.car.text
    ? said({ ...model, pin: null }, "Let go: numbers show what the last change did.")
    : said(
        { ...model, pin: trialOf(model, "pinned") },
        "Pinned: every number now shows its change from here. v swaps the two.",
      );

/** The car as its file has it, or as it was opened, is pinned: numbers show what all unsaved changes do together. */
const pinSaved: Act = (model) => {
  const car = readCar(model.origin.saved);
  if ("complaints" in car) return turn(model);
  return said(
    { ...model, pin: { name: "saved", car, study: studyOf(car) } },
    "The saved car is pinned: every number now shows what the unsaved changes do. v swaps the two.",
  );
};

/** The pinned car comes on the bench, and the one that was there is pinned. */
const swap: Act = (model) => {
  if (model.pin === null) return turn(model);
  return pinningWhatWas(model, changed(model, model.pin.car.text, swapped));
};

const swapped = "Swapped with the pinned car";

function pinningWhatWas(model: Model, { model: next, effects }: Turn): Turn {
  return turn({ ...next, pin: trialOf(model, "pinned") }, ...effects);
}

const undo: Act = (model) => {
  const wasSwap = model.pin !== null && model.bench.undo.at(-1)?.what === swapped;
  return wasSwap ? pinningWhatWas(model, undone(model)) : undone(model);
};

const redo: Act = (model) => {
  const isSwap = model.pin !== null && model.bench.redo.at(-1)?.what === swapped;
  return isSwap ? pinningWhatWas(model, redone(model)) : redone(model);
};

export const trialActs = { pin, pinSaved, swap, undo, redo } satisfies Record<string, Act>;
