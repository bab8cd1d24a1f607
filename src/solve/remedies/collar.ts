import type { Wheel } from "../../vehicle/car.ts";
import { rootNearNothing } from "../root.ts";
import { type Cure, EQUAL, no, remedy } from "./cure.ts";
import { differenceOf, edited, numberOf, settable, trial } from "./trial.ts";

/** A collar on the rack, or a stop for the column, at the longer lock. */
export const collar: Cure = ({ study, car }) => {
  const name = "A collar at the longer lock's end of the rack";
  if (study.inputKind !== "rack")
    return no("collar", name, "there is no rack: put a stop on the longer side of the steering arm or the upright");
  const { difference } = study.locks;
  const longer: Wheel = (difference.inner ?? 0) > 0 ? "left" : "right";
  if (difference.inner === null || study.inputLeftTurns === null)
    return no("collar", name, "both locks have to be known");
  if (Math.abs(difference.inner) < EQUAL) return no("collar", name, "the inner locks are equal");
  const end: Wheel = study.inputLeftTurns === "left" ? longer : longer === "left" ? "right" : "left";
  const id = `${end}.stops.collar`;
  const there = numberOf(car, id);
  const room = study.inputTravel[end] * 0.9;
  const ends = { left: numberOf(car, "left.rack.travel"), right: numberOf(car, "right.rack.travel") };
  const now = ends[end] - study.acting[end].at;
  const differ = (more: number) => (more < 0 ? null : differenceOf(trial(car, { [id]: now + more }), "inner"));
  const found = rootNearNothing(differ, room, 24);
  if (found === null) return no("collar", name, "no length of it makes the inner locks equal");
  const value = settable(now + found, "length", car.form.units);
  return remedy(name, {
    key: "collar",
    title: (say) =>
      `Put a collar${there > 0 ? "" : " or spacer"} of ${say(value)} inside the rack's end to the driver's ${end}: it stops the ${longer} lock sooner`,
    tradeOff: "Cheap and quick, but it only takes lock away: the longer lock comes down to the shorter one.",
    caution: "A collar takes the whole force at full lock: it must be fixed so that it cannot shift or jam the rack.",
    needs: null,
    text: edited(car, [{ pair: "stops.collar", sides: end, value }]),
  });
};
