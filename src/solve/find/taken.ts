import { rebuiltText } from "../adjusters/rebuilt.ts";
import type { Placed, Quest } from "./place.ts";

/** The car's text with a place taken: the moved values are spliced in, and all else stays as it is written. */
export function answerText({ study: { car, rodLengths }, variables, rods }: Quest, { study }: Placed): string {
  const moved = variables.flatMap(({ quantities }) => quantities);
  const values = Object.fromEntries(moved.map(({ id, index }) => [id, study.car.numbers[index]]));
  const isCut = car.form.rods.left === "cut" || car.form.rods.right === "cut";
  const alike = rods === "keep" ? car.form.rods.left === "cut" && car.form.rods.right === "cut" : !isCut;
  return rebuiltText(car, { values, rods: alike ? "as they are" : rods === "keep" ? rodLengths : "fit" });
}
