import { changed } from "../bench.ts";
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

/** The pinned car comes on the bench, and the one that was there is pinned. */
const swap: Act = (model) => {
  if (model.pin === null) return turn(model);
  const other = trialOf(model, "pinned");
  const next = changed(model, model.pin.car.text, "Swapped with the pinned car");
  return turn({ ...next.model, pin: other }, ...next.effects);
};

export const trialActs = { pin, swap } satisfies Record<string, Act>;
