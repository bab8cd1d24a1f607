import type { Car, Wheel } from "../../vehicle/car.ts";
import type { Edit } from "../../vehicle/edit.ts";
import { notesOf, withNotes } from "../../vehicle/notes.ts";
import { both, type Cure, no, onMiddle, remedy } from "./cure.ts";
import { edited, numberOf } from "./trial.ts";

/** The edits that bring the inner eyes' midpoint by so much, mm, to the driver's left; null where nothing can be shifted. */
function shifted(car: Car, by: number): readonly Edit[] | null {
  if (car.form.mechanism === "rack") return [both("rack.offset", numberOf(car, "rack.offset") + by)];
  if (car.form.mechanism !== "centre-rack") return null;
  return [
    { pair: "rack.eye.out", sides: "left", value: numberOf(car, "left.rack.eye.out") + by },
    { pair: "rack.eye.out", sides: "right", value: numberOf(car, "right.rack.eye.out") - by },
  ];
}

/** How far the rack's eyes are off the centreline, mm, to the left positive; null where there is no rack. */
function offOf(car: Car): number | null {
  if (car.form.mechanism === "rack") return numberOf(car, "rack.offset");
  if (car.form.mechanism !== "centre-rack") return null;
  return (numberOf(car, "left.rack.eye.out") - numberOf(car, "right.rack.eye.out")) / 2;
}

/** The rack's housing shifted toward the middle of the car: wholly, or half way. */
export function housing(share: 1 | 0.5): Cure {
  const key = share === 1 ? "shift" : "shift-half";
  const name = share === 1 ? "The rack shifted to the middle" : "The rack shifted half way";
  return ({ car }) => {
    const off = offOf(car);
    if (off === null) return no(key, name, "there is no rack to shift");
    if (Math.abs(off) < 0.05) return no(key, name, "the rack's eyes are on the middle of the car already");
    const edits = shifted(car, -off * share) ?? [];
    return remedy(name, {
      key,
      title: (say) =>
        `Shift the rack ${say(Math.abs(off * share))} to the driver's ${off > 0 ? "right" : "left"}${share === 1 ? ", its eyes alike about the middle" : ", half of its offset"}, rods cut to fit`,
      tradeOff:
        share === 1
          ? "The only clean cure: it takes bounce steer away as well. The steering column has to follow."
          : "Half of the bounce steer goes with half of the work on the column.",
      caution: "The column's joints must stay within their angle, and the new mount as stiff as the old.",
      needs: "column",
      text: edited(car, [...onMiddle(car), ...edits], true),
    });
  };
}

/** What is to be said wherever a rack gets a longer bar. */
export const barBends =
  "CAUTION: a longer overhang bends the rack's bar, which can snap and leave the car without steering. Have it looked at by someone qualified.";

/** A text whose notes go on to tell what its numbers alone would hide. */
function warned(text: string, what: string): string {
  const notes = notesOf({ text });
  return withNotes({ text }, `${notes === "" ? "" : `${notes}\n`}${what}. ${barBends}`);
}

/** The eyes brought to the middle with the housing where it is: an extender on one end, or a bracket in on the other. */
export function eyesMoved(kind: "extender" | "bracket"): Cure {
  const name = kind === "extender" ? "An extender on one end of the rack" : "A bracket inboard of one end of the rack";
  return ({ car }) => {
    if (car.form.mechanism !== "rack") return no(kind, name, "it is for a rack with a tie rod at each end");
    const off = numberOf(car, "rack.offset");
    if (Math.abs(off) < 0.05) return no(kind, name, "the rack's eyes are on the middle of the car already");
    const between = numberOf(car, "rack.eye-to-eye");
    const apart = between + (kind === "extender" ? 2 : -2) * Math.abs(off);
    if (apart < 0) return no(kind, name, "the rack is too short for it");
    const near: Wheel = off < 0 ? "left" : "right";
    const end = kind === "extender" ? near : near === "left" ? "right" : "left";
    return remedy(name, {
      key: kind,
      title: (say) =>
        kind === "extender"
          ? `Extend the rack's ${end} end by ${say(2 * Math.abs(off))}, its housing where it is, rods cut to fit`
          : `Take the ${end} rod from a bracket ${say(2 * Math.abs(off))} inboard of the rack's end, rods cut to fit`,
      tradeOff: "Bounce steer goes with the column where it is, at the price of a side load on the rack's bar.",
      caution: barBends,
      needs: null,
      text: warned(edited(car, [...onMiddle(car), both("rack.eye-to-eye", apart), both("rack.offset", 0)], true), name),
    });
  };
}
