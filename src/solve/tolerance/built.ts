import { type Study, studyOf } from "../../measures/study.ts";
import type { Car } from "../../vehicle/car.ts";
import { quantitiesOf } from "../../vehicle/quantities.ts";
import { heldAt } from "../adjusters/adjusters.ts";
import type { Held } from "./held.ts";
import { armsSet, setCornerOf } from "./setAgain.ts";

/** A car as it is built and set: `errors[i]` is by how much held[i] is off, mm or rad; null where it does not go together. */
export type Build = (errors: Float64Array) => Study | null;

/** What is set again once all is welded. */
export interface SetAgain {
  /** What at the arms, and by what; null where nothing is. */
  readonly arms: { readonly what: string; readonly by: string } | null;
  /** Tie rods that the file gives lengths for are set to the drawn toe with the steering where the wheels are straight now. */
  readonly rodsWereCut: boolean;
}

/** What is set again on a car once all is welded: toe by the tie rods, and what the linkage and the file leave to the arms. */
export function setAgainOn({ form, sections }: Pick<Car, "form" | "sections">): SetAgain {
  return {
    arms: sections.tolerances?.arms === "welded" ? null : armsSet[form.linkage],
    rodsWereCut: form.rods.left === "cut" || form.rods.right === "cut",
  };
}

/**
 * How a car is built with errors and set again. A build is compiled from numbers alone; its range is looked over as coarsely
 * as a search does it, which tells the worst toe to a hundredth of itself.
 */
export function buildOf(study: Study, held: readonly Held[]): Build {
  const { car } = study;
  const { arms, rodsWereCut } = setAgainOn(car);
  const drawn = Float64Array.from(car.numbers);
  if (rodsWereCut)
    for (const { pair, index } of quantitiesOf(car.form))
      if (pair.endsWith(".straight-ahead")) drawn[index] = heldAt(study);
  const form: Car["form"] = { ...car.form, rods: { left: "fit", right: "fit" } };
  const corners = (["left", "right"] as const).map((wheel) =>
    setCornerOf({ numbers: drawn, form }, wheel, arms !== null),
  );
  return (errors) => {
    const numbers = Float64Array.from(drawn);
    for (let i = 0; i < held.length; i++) for (const place of held[i].places) numbers[place] += errors[i];
    for (const set of corners) if (!set(numbers)) return null;
    const built = studyOf({ ...car, numbers, form }, "coarse");
    return "refused" in built ? null : built;
  };
}
