import type { Study } from "../../measures/study.ts";
import { curbCircle, overallWidth, wallCircle } from "../../measures/turningCircle.ts";
import type { Wheel } from "../../vehicle/car.ts";
import type { CheckItem, Fact } from "./item.ts";

const wheels: readonly Wheel[] = ["left", "right"];

/** Sizes that no limit decides: told for whoever has to meet a rule or a gate. */
function told(id: string, label: string, value: number | null, facts: readonly Fact[], lacks: string): CheckItem {
  return {
    id,
    part: "size",
    label,
    state: value === null ? "not given" : "pass",
    kind: "length",
    value,
    limit: null,
    wheel: null,
    where: null,
    facts,
    cautions: value === null ? [lacks] : [],
  };
}

/** Turning circles and width. */
export function sizeItems(study: Study): readonly CheckItem[] {
  const circle = (lock: Wheel) =>
    told(
      `turning-circle.${lock}`,
      `Turning circle to the ${lock}, curb to curb`,
      curbCircle(study, lock),
      [{ id: "wallToWall", label: "wall to wall", kind: "length", value: wallCircle(study, lock) }],
      "The wheels do not turn enough that way to say.",
    );
  return [
    ...wheels.map(circle),
    told(
      "overall-width",
      "Overall width at the front tyres",
      overallWidth(study),
      [],
      "Needs in the file: tire: width.",
    ),
  ];
}
