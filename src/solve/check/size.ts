import type { Study } from "../../measures/study.ts";
import { curbCircle, overallWidth, wallCircle } from "../../measures/turningCircle.ts";
import type { Wheel } from "../../vehicle/car.ts";
import { type CheckItem, notGiven } from "./item.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** Sizes that no limit decides: told for whoever has to meet a rule or a gate. */
function told(id: string, label: string, value: number | null, lacks: string): CheckItem {
  return {
    id,
    part: "size",
    label,
    state: value === null ? "not given" : "pass",
    kind: "length",
    value,
    limit: null,
    sides: null,
    wheel: null,
    where: null,
    facts: [],
    cautions: value === null ? [lacks] : [],
  };
}

/** Turning circles and width. */
export function sizeItems(study: Study): readonly CheckItem[] {
  const tooLittle = "The wheels do not turn enough that way to say.";
  const curb = (lock: Wheel) =>
    told(`curb-circle.${lock}`, `Turning circle to the ${lock}, curb to curb`, curbCircle(study, lock), tooLittle);
  const wall = (lock: Wheel) =>
    told(`wall-circle.${lock}`, `Turning circle to the ${lock}, wall to wall`, wallCircle(study, lock), tooLittle);
  return [
    ...wheels.map(curb),
    ...(study.car.sections.body === null
      ? [notGiven("size", "Turning circles, wall to wall", ["body"])]
      : wheels.map(wall)),
    told("overall-width", "Overall width at the front tyres", overallWidth(study), "Needs in the file: tire: width."),
  ];
}
