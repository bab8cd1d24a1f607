import { rootNearNothing } from "../root.ts";
import { type Cure, equalAlready, isMended, no, onMiddle, remedy } from "./cure.ts";
import { differenceOf, edited, numberOf, settable, trial } from "./trial.ts";

/** How far a tab may be moved to be called moved and not made anew, mm. */
const TAB_REACH = 40;

/** One tab moved: the smallest move of either tab, ahead or out, that makes the inner locks equal. */
export const oneTab: Cure = ({ car, mended }) => {
  const name = "One tie-rod tab moved";
  if (isMended(mended, "inner")) return no("tab", name, equalAlready);
  const candidates = (["left", "right"] as const).flatMap((wheel) =>
    (["ahead", "out"] as const).flatMap((way) => {
      const id = `${wheel}.tie-rod.outer.${way}`;
      const from = numberOf(car, id);
      const move = rootNearNothing(
        (more) => differenceOf(trial(mended, { [id]: from + more }), "inner"),
        TAB_REACH,
        10,
      );
      return move === null ? [] : [{ wheel, way, from, move }];
    }),
  );
  const best = candidates.sort((a, b) => Math.abs(a.move) - Math.abs(b.move))[0];
  if (best === undefined) return no("tab", name, "no move of one tab that is worth making does it");
  const move = settable(best.move, "length", car.form.units);
  const way = best.way === "ahead" ? (move > 0 ? "forward" : "back") : move > 0 ? "out" : "in";
  return remedy(name, {
    key: "tab",
    title: (say) => `Move the ${best.wheel} tab ${say(Math.abs(move))} ${way}, rods cut to fit`,
    tradeOff: "The uprights become handed and cannot be exchanged; the two wheels' bump steer and effort differ.",
    caution: null,
    needs: "uprights",
    text: edited(
      car,
      [...onMiddle(car), { pair: `tie-rod.outer.${best.way}`, sides: best.wheel, value: best.from + move }],
      true,
    ),
  });
};
