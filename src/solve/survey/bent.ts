import type { Car, Wheel } from "../../vehicle/car.ts";
import { cornersOf, diagonalsOf } from "../../vehicle/survey/diagonals.ts";
import { placeIn } from "../../vehicle/survey/drawing.ts";
import type { SurveyForm } from "../../vehicle/survey/points.ts";
import type { Survey } from "../../vehicle/survey/survey.ts";
import { deviationsHolding } from "../least-squares/chance.ts";

/** A diagonal as it was built and as it is read now, mm. */
export interface Diagonal {
  readonly ends: readonly [string, string];
  readonly built: number;
  /** The mean of what was read; null where the sheet has none. */
  readonly now: number | null;
  /** Whether it is longer or shorter than two tapes can differ. */
  readonly changed: boolean;
}

/** What of a front end is no longer where it was built. */
export interface Bent {
  readonly diagonals: readonly Diagonal[];
  /**
   * The fewest places whose moving explains what changed, each set as good as the others: none where nothing changed, several
   * where the diagonals cannot tell.
   */
  readonly moved: readonly (readonly string[])[];
  /** The one side that all of them are on; null where there is none. */
  readonly corner: Wheel | null;
}

/** The chance that a car that is as it was built has a diagonal called changed. */
const falseAlarm = 0.05;

/**
 * A sheet's diagonals beside those of the car as it was built. Both were read with a tape that is as good as the sheet says,
 * so that a difference is off by √2 times a reading; six are looked at, so that each may be off by more than one alone
 * (Šidák). Every place is the end of two diagonals: where one moved both change, unless it moved square to one of them.
 */
export function bentOf(survey: Survey, { numbers }: Pick<Car, "numbers">): Bent {
  const form: SurveyForm = survey.form;
  const drawing = { numbers, form };
  const index = new Map(survey.points.map((point, i) => [point.name, i]));
  const diagonals = diagonalsOf(form).map((ends): Diagonal => {
    const [a, b] = ends.map((name) => index.get(name) ?? -1);
    const [from, to] = [a, b].map((point) => placeIn(drawing, survey.points[point]) ?? [0, 0, 0]);
    const built = Math.hypot(from[0] - to[0], from[1] - to[1], from[2] - to[2]);
    const readings = survey.readings.filter(
      ({ kind, points }) => kind === "distance" && points.includes(a) && points.includes(b),
    );
    if (readings.length === 0) return { ends, built, now: null, changed: false };
    const now = readings.reduce((sum, { value }) => sum + value, 0) / readings.length;
    const sigma = Math.max(...readings.map((reading) => reading.sigma));
    const most = deviationsHolding((1 - falseAlarm) ** (1 / 6)) * Math.SQRT2 * sigma;
    return { ends, built, now, changed: Math.abs(now - built) > most };
  });
  const moved = movedIn(form, diagonals);
  const sides = (["left", "right"] as const).filter((wheel) =>
    moved.some((places) => places.some((place) => place.startsWith(wheel))),
  );
  return { diagonals, moved, corner: sides.length === 1 ? sides[0] : null };
}

/** The smallest sets of places at which every changed diagonal ends; of those the ones at which fewest unchanged ones end. */
function movedIn(form: SurveyForm, diagonals: readonly Diagonal[]): readonly (readonly string[])[] {
  const changed = diagonals.filter((each) => each.changed);
  if (changed.length === 0) return [];
  const places = cornersOf(form).flatMap((path) => [`left ${path}`, `right ${path}`]);
  const sets = Array.from({ length: 2 ** places.length }, (_, bits) => places.filter((_, i) => (bits >> i) % 2 === 1));
  const touches = (set: readonly string[], { ends }: Diagonal) => ends.some((end) => set.includes(end));
  const covers = sets.filter((set) => changed.every((each) => touches(set, each)));
  const fewest = Math.min(...covers.map((set) => set.length));
  const still = (set: readonly string[]) =>
    diagonals.filter((each) => each.now !== null && !each.changed && touches(set, each)).length;
  const smallest = covers.filter((set) => set.length === fewest);
  const least = Math.min(...smallest.map(still));
  return smallest.filter((set) => still(set) === least);
}
