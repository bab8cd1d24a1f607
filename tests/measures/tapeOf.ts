import { numberAt, pointAt } from "../../src/measures/drawn/places.ts";
import type { Study } from "../../src/measures/study.ts";
import type { Tape } from "../../src/vehicle/from-tape/readings.ts";
import { steeringAxisOf } from "../../src/vehicle/starting/steering-axis.ts";

/**
 * What a builder would read with a tape on a car that is known whole: page 1, without error. Of two sides that are not
 * alike the left one's tab is read; the car's own linkage does not matter.
 */
export function tapeOf(study: Study): Tape {
  const { numbers, form } = study.car;
  const number = (id: string) => numberAt(id)(numbers);
  const tab = pointAt("left.tie-rod.outer")(numbers);
  const lineAt = (wheel: "left" | "right", up: number) => {
    const { lower, upper } = steeringAxisOf(numbers, form.linkage, wheel);
    const share = (up - lower.up) / (upper.up - lower.up);
    return {
      ahead: lower.ahead + share * (upper.ahead - lower.ahead),
      out: lower.side + share * (upper.side - lower.side),
    };
  };
  const line = lineAt("left", tab.z);
  const centre = form.mechanism === "centre-rack";
  const eyes = centre
    ? { left: number("left.rack.eye.out"), right: number("right.rack.eye.out") }
    : {
        left: number("rack.eye-to-eye") / 2 + number("rack.offset"),
        right: number("rack.eye-to-eye") / 2 - number("rack.offset"),
      };
  const eye = centre
    ? { ahead: number("left.rack.eye.ahead"), up: number("left.rack.eye.up") }
    : { ahead: number("rack.ahead"), up: number("rack.up") };
  const travel = { left: number("left.rack.travel"), right: number("right.rack.travel") };
  return {
    title: study.car.title,
    units: form.units,
    rodsAsCut: false,
    shockOn: null,
    rackGoes: form.wheelLeftMoves ?? "right",
    numbers: new Map([
      ["wheelbase", study.wheelbase],
      ["hub-height", number("left.wheel.center.up")],
      ["over-tyres", 2 * number("left.wheel.center.out") + number("tire.width")],
      ["tyre-width", number("tire.width")],
      ["king-pins-apart", line.out + lineAt("right", tab.z).out],
      ["tab-back", line.ahead - tab.x],
      ["tab-in", line.out - tab.y],
      ["tab-height", tab.z],
      ["left-eye", eyes.left],
      ["right-eye", eyes.right],
      ["eye-height", eye.up],
      ["eye-behind", tab.x - eye.ahead],
      ["stroke", travel.left + travel.right],
      ["left-stop", travel.left - (study.zero ?? 0)],
      ["left-rod", study.rodLengths.left],
      ["right-rod", study.rodLengths.right],
    ]),
  };
}
