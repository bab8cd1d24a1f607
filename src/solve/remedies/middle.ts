import { rootNearNothing } from "../root.ts";
import { both, type Cure, equalAlready, isMended, no, onMiddle, remedy } from "./cure.ts";
import type { Say } from "./remedy.ts";
import { differenceOf, edited, numberOf, settable, straightAheadId, trial } from "./trial.ts";

/** Rods recut with the steering on its middle. */
export const recut: Cure = ({ study, car }) => {
  const name = "Recut the rods with the steering on its middle";
  const id = straightAheadId(car);
  const off = Math.max(Math.abs(study.zero ?? 0), Math.abs(numberOf(car, id)));
  const input = study.inputKind;
  if (off < (input === "rack" ? 0.05 : 0.001))
    return no("recut", name, `the ${input} stands on its middle with the wheels straight already`);
  return remedy(name, {
    key: "recut",
    title: () => `Set the ${input} on its middle, wheels straight, and recut or screw the rods to fit`,
    tradeOff: "Free, and the first thing to do: it costs nothing else.",
    caution: null,
    needs: null,
    text: edited(car, onMiddle(car), true),
  });
};

/** The steering set up off its middle, so that one thing is equal. */
export function offMiddle(measure: "inner" | "turnRadius"): Cure {
  const what = measure === "inner" ? "inner locks" : "turning circles";
  const key = measure === "inner" ? "off-middle" : "off-middle-circles";
  const name = `Straight ahead off the middle, for equal ${what}`;
  return ({ study, car, mended }) => {
    if (isMended(mended, measure)) return no(key, name, equalAlready);
    const id = straightAheadId(car);
    const reach = Math.min(study.inputTravel.left, study.inputTravel.right) / 3;
    const found = rootNearNothing((value) => differenceOf(trial(mended, { [id]: value }), measure), reach, 12);
    if (found === null) return no(key, name, "no place of the steering within a third of its travel makes them equal");
    const kind = study.inputKind === "rack" ? "length" : "angle";
    const value = settable(found, kind, car.form.units);
    const place = (say: Say) => (kind === "length" ? say(Math.abs(value)) : degreesOf(Math.abs(value)));
    return remedy(name, {
      key,
      title: (say) =>
        `Set the ${study.inputKind} ${place(say)} to the ${value > 0 ? "left" : "right"} of its middle with the wheels straight, rods cut to fit: equal ${what}`,
      tradeOff:
        "Free, but it makes this one thing equal and others not; not on a variable-ratio rack, whose slow part must stay in the middle.",
      caution: null,
      needs: null,
      text: edited(car, [both(id, value)], true),
    });
  };
}

function degreesOf(angle: number): string {
  return `${((angle * 180) / Math.PI).toFixed(1)}°`;
}
