import type { Model, Source } from "./model.ts";

/** The example that the guide goes through. */
export const guideCar: Source = { from: "preset", id: "cut-rods-off-middle" };

/** Words over an example that is opened first, until the next key: the way in for whoever has never seen this. */
export function greeted(model: Model): Model {
  const { origin, notice, focus } = model;
  if (origin.path !== null || notice !== null || focus.on !== "bench") return model;
  const text = "New here? g shows you round in five steps, ? explains every key.";
  return { ...model, notice: { text, tone: "done" } };
}

interface Step {
  /** What to see and what to press. */
  readonly words: string;
  /** Whether it was pressed. */
  readonly done: (model: Model) => boolean;
}

const steps: readonly Step[] = [
  {
    words: "LOCK above: the inner wheels do not turn alike, one way and the other. Press 2 to see how they balance.",
    done: ({ view }) => view === "Steer",
  },
  {
    words:
      "The mark leans to the lock that turns further. These rods were cut wrong, so the rack is off its middle when the wheels are straight. Press b: this is the car before.",
    done: ({ pin }) => pin !== null,
  },
  {
    words: "Press c: both rods are cut to fit. Watch LOCK and RODS.",
    done: ({ bench }) => bench.car.form.rods.left === "fit" && bench.car.form.rods.right === "fit",
  },
  {
    words:
      "The locks are equal, and each number shows its change. v swaps with the car before, and back. Then press 1.",
    done: ({ view }) => view === "Adjust",
  },
  {
    words: "RODS says what to cut. The arrows choose and change; S saves; ? explains every key.",
    done: () => false,
  },
];

/** Whether the guide is on: only its own car is gone through. */
function isOn({ guide, origin }: Model): boolean {
  const { source } = origin;
  return guide !== null && source.from === "preset" && guideCar.from === "preset" && source.id === guideCar.id;
}

/** The model with the guide a step further, where the present one is done. */
export function guided(model: Model): Model {
  if (model.guide === null || !isOn(model) || steps[model.guide]?.done(model) !== true) return model;
  return { ...model, guide: model.guide + 1 };
}

/** What the guide says just now; null while it is off. */
export function guideWords(model: Model): string | null {
  if (model.guide === null || !isOn(model)) return null;
  return `GUIDE ${model.guide + 1}/${steps.length} (Esc ends it). ${steps[model.guide]?.words ?? ""}`;
}
