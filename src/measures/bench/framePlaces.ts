import type { Wheel } from "../../vehicle/car.ts";
import { linkageOf } from "../../vehicle/linkages.ts";
import { axisEnds } from "../../vehicle/starting/steering-axis.ts";
import { pointAt } from "../drawn/places.ts";
import type { Study } from "../study.ts";
import { placeName } from "./armLengths.ts";

/** A place on the frame that a bracket, a mount or a king pin goes to, mm: ahead of the axle line, out from the centreline, above the ground. */
export interface FramePlace {
  readonly label: string;
  readonly ahead: number;
  readonly out: number;
  readonly up: number;
}

const words: Readonly<Record<string, string>> = {
  "strut.top": "strut, top mount",
  "king-pin.lower": "king pin, lower end",
  "king-pin.upper": "king pin, upper end",
};

/** Where what carries a wheel is fixed to the frame: pivots of arms and beams, a strut's top, king pins, the shock's eye. */
export function framePlaces({ car }: Pick<Study, "car">, wheel: Wheel): readonly FramePlace[] {
  const { linkage } = car.form;
  const pivots = linkageOf(linkage).bodies.flatMap(({ label, moves }) => {
    if (moves === "with the upright") return [];
    const ids = "across" in moves ? [moves.across] : [...moves.about].reverse();
    return ids.map((id) => ({ id, label: `${label}, ${placeName(id)}` }));
  });
  const fixed = linkage === "strut" ? ["strut.top"] : linkage === "fixed-kingpin" ? axisEnds[linkage] : [];
  const drawn = [...pivots, ...fixed.map((id) => ({ id, label: words[id] ?? id }))].map(({ id, label }) => {
    const { x, y, z } = pointAt(`${wheel}.${id}`)(car.numbers);
    return { label, ahead: x, out: y, up: z };
  });
  const shock = car.sections.shock?.[wheel] ?? null;
  return shock === null ? drawn : [...drawn, { label: "shock, eye on the frame", ...shock.top }];
}
