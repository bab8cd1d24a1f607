import type { Guide, Model, Source } from "./model.ts";

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
  /** What to see and what to press, as the bench stands just now. */
  readonly words: (model: Model) => string;
  /** Whether it was done, by the key that it names or another way. */
  readonly done: (model: Model) => boolean;
}

function isFitted({ bench }: Model): boolean {
  return bench.car.form.rods.left === "fit" && bench.car.form.rods.right === "fit";
}

function equalWords(model: Model): string {
  if (!isFitted(model)) {
    const back = model.bench.redo.length > 0 ? "r fits them again." : "v swaps back.";
    return `This is the car before, its rods cut wrong. ${back}`;
  }
  return model.pin === null
    ? "The locks are equal. u takes that back, r does it again: compare LOCK and RODS."
    : "The locks are equal, and each number shows its change. v swaps with the car before, and back.";
}

const steps: readonly Step[] = [
  {
    words: () =>
      "LOCK above: the inner wheels do not turn alike, one way and the other. Press 2 to see how they balance.",
    done: (model) => model.view !== "Adjust" || model.pin !== null || isFitted(model),
  },
  {
    words: ({ view }) =>
      `${view === "Steer" ? "The mark leans to the lock that turns further. " : ""}These rods were cut wrong, so the rack is off its middle when the wheels are straight. Press b: this is the car before.`,
    done: (model) => model.pin !== null || isFitted(model),
  },
  { words: () => "Press c: both rods are cut to fit. Watch LOCK and RODS.", done: isFitted },
  {
    words: (model) => `${equalWords(model)} Then press 1.`,
    done: (model) => model.view === "Adjust" && isFitted(model),
  },
  {
    words: () =>
      "RODS says what to cut. Arrows choose and change, S saves, ? tells all. 6, then Space: where the tab may go, what to hold tightly.",
    done: ({ view }) => view === "Map",
  },
];

/** The step at which the builder may look about before anything else is done. */
const looking = 3;

/**
 * The model with the guide past the steps that are done, but never past the sight of equal locks with the same key; off
 * after its last step, so that what is under the cursor is told again.
 */
export function guided(model: Model): Model {
  let { guide } = model;
  if (typeof guide !== "number") return model;
  const last = guide < looking ? looking : steps.length;
  while (guide < last && steps[guide]?.done(model) === true) guide++;
  return guide === model.guide ? model : { ...model, guide: guide === steps.length ? null : guide };
}

/** The guide once a car is opened: it begins with its own car, where it was asked for. */
export function guideOf(asked: Guide, source: Source): Guide {
  const isItsCar = source.from === "preset" && guideCar.from === "preset" && source.id === guideCar.id;
  return asked === "asked" && isItsCar ? 0 : null;
}

/** The guide once the car is saved: nothing is left to show after its last step. */
export function guideAfterSave(guide: Guide): Guide {
  return guide === steps.length - 1 ? null : guide;
}

/** What the guide says just now, after what must not be overlooked; null while it is off. */
export function guideWords(model: Model): string | null {
  const { guide, notice } = model;
  if (typeof guide !== "number") return null;
  const first = notice?.tone === "wrong" ? `${notice.text} ` : "";
  return `${first}GUIDE ${guide + 1}/${steps.length} (Esc ends it). ${steps[guide]?.words(model) ?? ""}`;
}
